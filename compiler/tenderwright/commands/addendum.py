"""`tenderwright addendum`: what changed from one commit to another, as yards need it, whole or not at all."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from tenderwright import __version__
from tenderwright.amending import Stated, amend, new_addenda, write_addendum
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.kept_parts import kept_parts
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.progress import progress
from tenderwright.commands.todos import stopped_by
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.model.tender import Addendum
from tenderwright.notices import Notice
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import compile_package, read, stamp_of
from tenderwright.reading.at_commit import NotAtCommit, package_at
from tenderwright.reading.format_version import format_said
from tenderwright.reading.issued import issued
from tenderwright.reading.layout import FORMAT
from tenderwright.reading.package import read_one


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the package, in git")
    parser.add_argument("before", metavar="FROM", help="the commit or tag that yards have")
    parser.add_argument("after", metavar="TO", help="the commit or tag with the changes, and the addendum listed")
    add_out(parser, "addendum-N/")


def run(arguments: Namespace) -> int:
    """Make the addendum from one commit to another."""
    need_typesetter()
    root = package_folder(arguments.folder)
    judge_out(root, arguments.out)
    try:
        return _between(root, arguments.before, arguments.after, arguments.out)
    except NotAtCommit as error:
        raise WrongUse(str(error)) from error


def _between(root: Path, earlier: str, later: str, out: Path) -> int:
    with package_at(root, earlier) as one, package_at(root, later) as other:
        judge_place(out, *(f"addendum-{number}" for number in _listed(other) - _listed(one)))
        with progress("reading and calculating both"):
            before, after = _stated(one), _stated(other)
        if _errors(before):
            _tell_before(root, before, earlier)
            return MISTAKES
        return make(before, after, out) if _sound(after, later) else MISTAKES


def _listed(folder: Path) -> set[int]:
    """Give the numbers of the addenda that a package lists, as far as they can be read without the rest of it."""
    source, _ = read_one(folder / "package.yaml")
    data = source.data if source is not None else None
    entries = data.get("addenda") if isinstance(data, dict) else None
    listed = entries if isinstance(entries, list) else []
    numbers = [entry.get("number") for entry in listed if isinstance(entry, dict)]
    return {number for number in numbers if isinstance(number, int)}


def _stated(folder: Path) -> Stated:
    compiled = compile_package(read(folder))
    return Stated(compiled, stamp_of(compiled))


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


def make(before: Stated, after: Stated, out: Path) -> int:
    """Compose, prove and write the addendum between two sound packages."""
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.outputs import write_outputs
    from tenderwright.writing.pdf import Typesetter

    entry = the_new_one(before, after)
    name = f"addendum-{entry.number}"
    judge_place(out, name)
    try:
        with progress("comparing, proving and typesetting the addendum"):
            amended = amend(before, after, entry)
            written = write_addendum(amended, Typesetter(kept_parts()), after.state)
        place = write_outputs(out, name, written.files)
    except (WritingError, OSError) as error:
        raise WrongUse(f"the addendum cannot be written: {error}") from error
    price = "can affect price" if amended.comparison.bears_on_price else "cannot affect price"
    print(f"{place}: {written.pages} pages, {len(written.files)} files, {after.state.label}")
    print(f"  {amended.comparison.proof.operations} changes, all told and proved; {price}")
    if written.uncovered:
        print(f"  characters that the faces do not hold: {written.uncovered}", file=sys.stderr)
    return CLEAN


def the_new_one(before: Stated, after: Stated) -> Addendum:
    """Give the one addendum that is new; raises WrongUse where there is none, or more than one."""
    if before.tender != after.tender:
        raise WrongUse(f"FROM is tender {before.tender} and TO is {after.tender}")
    listed = new_addenda(before, after)
    if len(listed) > 1:
        numbers = " and ".join(str(one.number) for one in listed)
        raise WrongUse(f"TO lists addenda {numbers} that FROM does not; make them one by one, each from its own commit")
    if not listed:
        number = max((one.number for one in after.addenda), default=0) + 1
        raise WrongUse(
            f"TO lists no addendum that FROM does not; add `- {{number: {number}, date: …, summary: …}}` to `addenda` "
            "in package.yaml and commit it"
        )
    return listed[0]
