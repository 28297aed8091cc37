"""`tenderwright issue`: compile the yard edition of what is committed, and record it in a tag, all or nothing."""

from __future__ import annotations

import hashlib
import shlex
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright import __version__
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.todos import counted, stopped_by
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.commands.yard_at import YardEdition, yard_at
from tenderwright.model.tender import Tender
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import read
from tenderwright.reading.git import Refused, repository_of
from tenderwright.reading.git_state import GitState, git_state, uncommitted
from tenderwright.reading.issued import Issued, issued, one_line, tag_message
from tenderwright.reading.issued_items import tender_number
from tenderwright.reading.package import Files
from tenderwright.starter.source import pinned_source
from tenderwright.writing.ours import manifest_in
from tenderwright.writing.tag import NoTag, is_tag, may_be_named, may_tag, tag_commit

if TYPE_CHECKING:
    from tenderwright.writing.edition_files import Written

FOLDER = "issued"
"""Where the issues go, below the folder of all that is built."""
_MOST_NAMED = 5


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", nargs="?", type=Path, default=None, metavar="DIR", help="the package (default: here)")
    parser.add_argument("--tag", required=True, metavar="NAME", help="the tag that records the issue, such as issue-1")
    add_out(parser, f"{FOLDER}/NAME/")


def run(arguments: Namespace) -> int:
    """Issue a tender."""
    try:
        return _issue(arguments)
    except (NoTag, Refused) as error:
        raise WrongUse(f"{error}; nothing was issued") from error


def _issue(arguments: Namespace) -> int:
    need_typesetter()
    root = package_folder(arguments.folder)
    may_be_named(arguments.tag)
    repository_of(root)
    place = arguments.out / FOLDER
    judge_out(root, arguments.out)
    judge_place(place, arguments.tag)
    files = read(root)
    state = _committed(root, files)
    earlier = [issue for issue in issued(root) if issue.tender == one_line(tender_number(files.sources))]
    again = next((issue for issue in earlier if (issue.tag, issue.commit) == (arguments.tag, state.commit)), None)
    if again is None:
        _not_issued(state, earlier)
        may_tag(root, arguments.tag)
    _not_of_another(place / arguments.tag, state)
    yard = yard_at(root, state.commit, files.issued)
    compiled = yard.compiled
    sys.stderr.write(as_text(compiled.notices, compiled.files.texts))
    if compiled.sound and stopped_by(compiled.package.todos, compiled.files):
        print(f"{counted(compiled.package.todos)} still `todo`; nothing was issued", file=sys.stderr)
        return MISTAKES
    if yard.edition is None or compiled.package.tender is None or yard.state.time is None:
        print(f"{summary(compiled.notices)}; nothing was issued", file=sys.stderr)
        return MISTAKES
    tender = compiled.package.tender
    for doubt in doubts(tender, date.today()):
        print(f"warning: {doubt}", file=sys.stderr)
    number = again.number if again is not None else 1 + max((issue.number for issue in earlier), default=0)
    issue = _record(arguments.tag, yard.edition, yard.state.commit, yard.state.time, tender, number)
    if again is not None and again.parcel_sha256 != issue.parcel_sha256:
        raise WrongUse(
            f"`{again.tag}` was issued by compiler {again.compiler} with another parcel, SHA-256 "
            f"{again.parcel_sha256}, than {__version__} makes; nothing was written"
        )
    title = None if again is not None else tender.tender.title
    _put_down(root, place, yard.edition.written, yard.state.label, issue, title)
    return CLEAN


def _committed(root: Path, files: Files) -> GitState:
    """Give the state of the package in git; raises WrongUse where it is not that of one whole commit."""
    paths = files.without_owner().paths
    state = git_state(root, paths)
    if state.state == "issued":
        return state
    if state.state == "no-git":
        raise WrongUse(f"only what is committed is issued, and `{root}` is not in git: `git init` and commit it first")
    if "shallow" in state.why:
        raise WrongUse(f"only a whole history is issued from: {state.why}; `git fetch --unshallow` brings it")
    changed = uncommitted(root, paths)
    more = f" and {len(changed) - _MOST_NAMED} more" if len(changed) > _MOST_NAMED else ""
    named = ", ".join(changed[:_MOST_NAMED])
    raise WrongUse(f"only what is committed is issued, and this is not: {named}{more}; commit it first")


def _not_of_another(folder: Path, state: GitState) -> None:
    """Raise WrongUse where an issue of another commit is in the way."""
    if folder.exists() and (commit := str(manifest_in(folder).get("commit", ""))) != state.commit:
        raise WrongUse(
            f"{folder} is there already, from commit {commit[:12]}, and what was issued is never written over; "
            "take another --tag, or delete that folder if it was never sent"
        )


def _not_issued(state: GitState, earlier: Sequence[Issued]) -> None:
    for issue in earlier:
        if issue.commit == state.commit:
            raise WrongUse(
                f"commit {state.commit[:12]} is issued already, as issue {issue.number} under the tag `{issue.tag}`, "
                "and the package has not changed since"
            )


def doubts(tender: Tender, today: date) -> list[str]:
    """List what is odd in the dates of a tender that is issued today."""
    dates = tender.dates
    found = []
    if dates.issued is not None and dates.issued > today:
        found.append(f"the package says that it is issued on {dates.issued}, which is not come yet")
    if dates.closing is not None and dates.closing < today:
        found.append(f"the package says that bids close on {dates.closing}, which is past")
    return found


def _record(tag: str, yard: YardEdition, commit: str, time: int, tender: Tender, number: int) -> Issued:
    files = yard.written.files
    return Issued(
        tag=tag,
        tender=one_line(tender.tender.number),
        number=number,
        commit=commit,
        date=datetime.fromtimestamp(time, UTC),
        edition_hash=yard.form.edition_hash,
        parcel=yard.parcel,
        parcel_sha256=hashlib.sha256(files[yard.parcel]).hexdigest(),
        manifest_sha256=hashlib.sha256(files["manifest.json"]).hexdigest(),
        compiler=__version__,
        source=pinned_source(),
        addendum=max((addendum.number for addendum in tender.addenda), default=None),
    )


def _put_down(root: Path, place: Path, written: Written, label: str, issue: Issued, title: str | None) -> None:
    """Put the files in place, then make the tag, which completes the issue; where git makes none the files go again.

    Killed between the two, the same command finds its own files there and goes on to the tag. No title: it is made.
    """
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.outputs import remove_outputs, write_outputs

    there = (place / issue.tag).exists()
    try:
        folder = write_outputs(place, issue.tag, written.files, replace=False)
    except (WritingError, OSError) as error:
        raise WrongUse(str(error)) from error
    if title is not None:
        try:
            tag_commit(root, issue.tag, issue.commit, tag_message(issue, title))
        except BaseException:
            if not there and not is_tag(root, issue.tag):
                remove_outputs(place, issue.tag)
            raise
    print(f"{folder}: {written.pages} pages, {len(written.files)} files, {label}")
    addendum = f", with addendum {issue.addendum}" if issue.addendum is not None else ""
    print(f"issue {issue.number} of {issue.tender}{addendum}: tag `{issue.tag}`, parcel SHA-256 {issue.parcel_sha256}")
    print(f"next: `git push origin {shlex.quote(issue.tag)}`, so that others can hold a parcel against it")
    if written.uncovered:
        print(f"  characters that the faces do not hold: {written.uncovered}", file=sys.stderr)
