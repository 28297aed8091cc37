"""`tenderwright addendum`: what changed from one commit to another, as yards need it, recorded in a tag, or nothing."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from pathlib import Path

from tenderwright import __version__
from tenderwright.amending import Stated
from tenderwright.commands.addendum_at import both_at, made, proved, the_new_one
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.not_raised import told_not_raised
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.recording import put_down, record_of, same_as_before, tell
from tenderwright.commands.todos import stopped_by
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.model.package import sound
from tenderwright.notices import Notice
from tenderwright.notices.render import as_text, summary
from tenderwright.reading.at_commit import NotAtCommit
from tenderwright.reading.format_version import format_said
from tenderwright.reading.git import Refused
from tenderwright.reading.issued import Issued, issued, one_line
from tenderwright.reading.layout import FORMAT
from tenderwright.reading.package import read_one
from tenderwright.writing.archive import parcel_name
from tenderwright.writing.tag import NoTag, may_be_named, may_tag


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the package, in git")
    parser.add_argument("before", metavar="FROM", help="the commit or tag that yards have")
    parser.add_argument("after", metavar="TO", help="the commit or tag with the changes, and the addendum listed")
    parser.add_argument(
        "--tag", default="", metavar="NAME", help="the tag that records it (default: NUMBER-addendum-N)"
    )
    add_out(parser, "addendum-N/")


def run(arguments: Namespace) -> int:
    """Make the addendum from one commit to another."""
    need_typesetter()
    root = package_folder(arguments.folder)
    judge_out(root, arguments.out)
    try:
        return _between(root, arguments)
    except NotAtCommit as error:
        raise WrongUse(str(error)) from error
    except (NoTag, Refused) as error:
        raise WrongUse(f"{error}; nothing was written") from error


def _between(root: Path, arguments: Namespace) -> int:
    earlier, later, out = arguments.before, arguments.after, arguments.out
    with both_at(root, earlier, later) as both:
        judge_place(out, *(f"addendum-{number}" for number in _listed(both.after) - _listed(both.before)))
        before, after = both.compiled()
        if _errors(before):
            _tell_before(root, before, earlier)
            return MISTAKES
        return _make(root, before, after, arguments) if _sound(after, later) else MISTAKES


def _make(root: Path, before: Stated, after: Stated, arguments: Namespace) -> int:
    """Compose, prove, write and record the addendum between two sound packages."""
    from tenderwright.writing.pdf import Typesetter

    entry = the_new_one(before, after)
    name = f"addendum-{entry.number}"
    tag = arguments.tag or parcel_name(after.tender, name)
    may_be_named(tag)
    recorded = [one for one in issued(root) if one.tender == one_line(after.tender)]
    again = next((one for one in recorded if one.amends and one.addendum == entry.number), None)
    if again is None:
        _follows(before, arguments.before, recorded)
        may_tag(root, tag)
    else:
        _not_another(again, before, after)
        tag = again.tag
    judge_place(arguments.out, name)
    amended, edition = made(before, after, Typesetter())
    if told_not_raised(amended.amendment.not_raised):
        return MISTAKES
    number = max((one.number for one in recorded), default=0) if again is None else again.number
    tender = sound(after.compiled.package.tender)
    record = record_of(tag, edition, after.state, tender, number, entry.number, before.state.commit)
    same_as_before(again, record)
    written = edition.written
    title = None if again is not None else entry.summary
    place = put_down(root, arguments.out, name, written, record, title, replace=True)
    print(f"{place}: {written.pages} pages, {len(written.files)} files, {after.state.label}")
    print(f"  {proved(amended.comparison)}")
    tell(record, f"addendum {entry.number} of {record.tender}", written)
    return CLEAN


def _follows(before: Stated, name: str, recorded: Sequence[Issued]) -> None:
    """Raise WrongUse where yards have something else by now than what the addendum would amend."""
    last = recorded[-1] if recorded else None
    if last is not None and last.commit != before.state.commit:
        raise WrongUse(
            f"yards have {last.what}, tag `{last.tag}`, and `{name}` is commit {before.state.commit[:12]}; "
            f"make the addendum from `{last.tag}`"
        )


def _not_another(again: Issued, before: Stated, after: Stated) -> None:
    """Raise WrongUse where an addendum of that number went out between other commits."""
    if (again.amends, again.commit) != (before.state.commit, after.state.commit):
        raise WrongUse(
            f"{again.what} went out already, from commit {again.amends[:12]} to {again.commit[:12]}, as tag "
            f"`{again.tag}` records; give this one the next number, or delete that tag if it was never sent"
        )


def _listed(folder: Path) -> set[int]:
    """Give the numbers of the addenda that a package lists, as far as they can be read without the rest of it."""
    source, _ = read_one(folder / "package.yaml")
    data = source.data if source is not None else None
    entries = data.get("addenda") if isinstance(data, dict) else None
    listed = entries if isinstance(entries, list) else []
    numbers = [entry.get("number") for entry in listed if isinstance(entry, dict)]
    return {number for number in numbers if isinstance(number, int)}


def _errors(stated: Stated) -> list[Notice]:
    return [notice for notice in stated.compiled.notices if notice.severity == "error"]


def _tell_before(root: Path, before: Stated, name: str) -> None:
    """Tell the mistakes of what yards have, or in one sentence that it is of another format, and what wrote it."""
    errors, files = _errors(before), before.compiled.files
    if format_said(files.sources) == FORMAT:
        sys.stderr.write(as_text(errors, files.texts))
        found = f"{name} has {summary(errors)}; nothing was written"
    else:
        first = f"{errors[0].place}: {errors[0].message}"
        found = f"{name} is not of the format that tenderwright {__version__} reads ({summary(errors)}, first {first})"
    wrote = next((issue for issue in issued(root) if issue.commit == before.state.commit), None)
    if wrote is None:
        cure = "no tag records which version wrote it: where it was sound then, make the addendum with that version"
    else:
        cure = f"tag `{wrote.tag}` records that tenderwright {wrote.compiler} issued it: make the addendum with that"
    print(f"{found}; {cure}", file=sys.stderr)


def _sound(stated: Stated, name: str) -> bool:
    errors = _errors(stated)
    if errors:
        sys.stderr.write(as_text(errors, stated.compiled.files.texts))
        print(f"{name} has {summary(errors)}; nothing was written", file=sys.stderr)
    elif stopped_by(stated.compiled.package.todos, stated.compiled.files):
        print(f"{name} has values that are still `todo`; nothing was written", file=sys.stderr)
        return False
    return not errors
