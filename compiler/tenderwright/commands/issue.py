"""`tenderwright issue`: compile the yard edition of what is committed, and record it in a tag, all or nothing."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from tenderwright.amending import revisions_due
from tenderwright.commands.addendum_at import both_at
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.held_up import issue_held_up
from tenderwright.commands.not_raised import told_not_raised
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.recording import put_down, record_of, same_as_before, tell
from tenderwright.commands.todos import counted, stopped_by
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.commands.yard_at import yard_at
from tenderwright.model.tender import Tender
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import compile_package, read
from tenderwright.reading.at_commit import NotAtCommit
from tenderwright.reading.git import Refused, repository_of
from tenderwright.reading.git_state import GitState, git_state, uncommitted
from tenderwright.reading.issued import Issued, issued, one_line
from tenderwright.reading.issued_items import tender_number
from tenderwright.reading.package import Files
from tenderwright.writing.ours import manifest_in
from tenderwright.writing.tag import NoTag, may_be_named, may_tag

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
    except (NoTag, NotAtCommit, Refused) as error:
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
    recorded = [issue for issue in issued(root) if issue.tender == one_line(tender_number(files.sources))]
    earlier = [issue for issue in recorded if not issue.amends]
    again = next((issue for issue in earlier if (issue.tag, issue.commit) == (arguments.tag, state.commit)), None)
    if again is None:
        _not_issued(state, earlier)
        may_tag(root, arguments.tag)
    _not_of_another(place / arguments.tag, state)
    if again is None and recorded and _revisions_due(root, recorded[-1], state):
        return MISTAKES
    if again is None and issue_held_up(files):
        return MISTAKES
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
    addendum = max((one.number for one in tender.addenda), default=None)
    issue = record_of(arguments.tag, yard.edition, yard.state, tender, number, addendum)
    same_as_before(again, issue)
    written = yard.edition.written
    title = None if again is not None else tender.tender.title
    folder = put_down(root, place, issue.tag, written, issue, title)
    print(f"{folder}: {written.pages} pages, {len(written.files)} files, {yard.state.label}")
    taken = f", with addendum {addendum}" if addendum is not None else ""
    tell(issue, f"issue {issue.number} of {issue.tender}{taken}", written)
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


def _revisions_due(root: Path, last: Issued, state: GitState) -> bool:
    """Tell which items are no longer what yards have and bear the same revision.

    Mistakes of the package are told of later. Where this compiler finds any in what yards have, it judges the items by
    their files alone.
    """
    with both_at(root, last.commit, state.commit) as both:
        before, after = both.compiled()
        if not after.compiled.sound or after.compiled.package.todos:
            return False
        if before.compiled.sound and not before.compiled.package.todos:
            return told_not_raised(revisions_due(before, after))
    print(
        f"warning: this compiler finds mistakes in what `{last.tag}` issued, so items are compared with its files "
        "alone, not with its figures",
        file=sys.stderr,
    )
    compiled = compile_package(read(root))
    found = [one for one in compiled.notices if one.code == "revision-not-raised"]
    sys.stderr.write(as_text(found, compiled.files.texts))
    return bool(found)


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
        found.append(f"the package says that it is issued on {dates.issued}, which has not come yet")
    if dates.closing is not None and dates.closing < today:
        found.append(f"the package says that bids close on {dates.closing}, which is past")
    return found
