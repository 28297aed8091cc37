"""`tenderwright diff`: what changed between two states of a package, before anything is issued."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from tenderwright.amending import Owners, Stated, differ, write_diff
from tenderwright.commands.addendum_at import proved
from tenderwright.commands.edition_outputs import no_estimate
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.kept_parts import kept_parts
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.progress import progress
from tenderwright.commands.todos import need
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import OwnersSide, compile_owner, compile_package, read, stamp_of
from tenderwright.reading.at_commit import NotAtCommit, package_at

NAMES = ("diff", "diff-owner")
"""The folder of the yard's side, and that of the owner's."""


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the package, in git")
    parser.add_argument("before", metavar="FROM", help="the commit or tag to begin from, such as the last issue")
    parser.add_argument(
        "after",
        nargs="?",
        default="",
        metavar="TO",
        help="the commit or tag to end with (default: the files as they are)",
    )
    parser.add_argument("--only", choices=("yard",), help="leave out what the owner's papers make of it")
    add_out(parser, f"{NAMES[0]}/ and {NAMES[1]}/")


def run(arguments: Namespace) -> int:
    """Write what changed, and where owner/ is there, what it does to cost and time."""
    need_typesetter()
    root = package_folder(arguments.folder)
    judge_out(root, arguments.out)
    judge_place(arguments.out, *NAMES)
    try:
        papers = arguments.only is None
        with package_at(root, arguments.before, owner=papers) as one, _later(root, arguments.after, papers) as other:
            with progress("reading and calculating both"):
                sides = [_stated(folder) for folder in (one, other)]
            for side, name in zip(sides, (arguments.before, arguments.after or "the package as it is"), strict=True):
                if not _sound(side, name):
                    return MISTAKES
            owners = _owners(root, (one, other), sides) if papers else None
            return _write(sides[0], sides[1], owners, arguments)
    except NotAtCommit as error:
        raise WrongUse(str(error)) from error


@contextmanager
def _later(root: Path, name: str, papers: bool) -> Iterator[Path]:
    """Give the package as it stood at a commit, or as it is."""
    if not name:
        yield root
        return
    with package_at(root, name, owner=papers) as folder:
        yield folder


def _stated(folder: Path) -> Stated:
    compiled = compile_package(read(folder))
    return Stated(compiled, stamp_of(compiled))


def _sound(side: Stated, name: str) -> bool:
    errors = [notice for notice in side.compiled.notices if notice.severity == "error"]
    if errors:
        sys.stderr.write(as_text(errors, side.compiled.files.texts))
        print(f"{name} has {summary(errors)}; nothing was written", file=sys.stderr)
        return False
    need(side.compiled)
    return True


def _write(before: Stated, after: Stated, owners: Owners | None, arguments: Namespace) -> int:
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.outputs import write_outputs
    from tenderwright.writing.pdf import Typesetter

    try:
        with progress("comparing, proving and typesetting what changed"):
            names = (_named(arguments.before, before), _named(arguments.after, after))
            differing = differ(before, after, owners, names)
            made = write_diff(differing, Typesetter(kept_parts()), after.state)
        for name, written in zip(NAMES, made, strict=False):
            place = write_outputs(arguments.out, name, written.files)
            pages = "1 page" if written.pages == 1 else f"{written.pages} pages"
            print(f"{place}: {pages}, {len(written.files)} files, {after.state.label}")
            if written.uncovered:
                print(f"  characters that the fonts do not have: {written.uncovered}", file=sys.stderr)
    except (WritingError, OSError) as error:
        raise WrongUse(f"what changed cannot be written: {error}") from error
    print(f"  {proved(differing.comparison)}")
    return CLEAN


def _named(name: str, side: Stated) -> str:
    """Name a side by what the user called it, and by how its pages are marked."""
    return f"{name}: {side.state.label}" if name else side.state.label


def _owners(root: Path, folders: tuple[Path, Path], sides: Sequence[Stated]) -> Owners | None:
    """Price both sides, with why one cannot be; None without any papers of the owner's.

    By the papers as they stood on each side; where one has none, as they are kept elsewhere, both by those of today.
    """
    held = [read(folder) for folder in folders]
    each = all(files.owner_only().sources for files in held)
    papers = held if each else [read(root)] * 2
    if not papers[0].owner_only().sources:
        return None
    made = [(one.compiled, compile_owner(files, one.compiled)) for one, files in zip(sides, papers, strict=True)]
    views = tuple(
        (owner, "" if owner.estimate is not None else _why(owner, no_estimate(one, owner))) for one, owner in made
    )
    return Owners(views, each)


def _why(owner: OwnersSide, otherwise: str) -> str:
    """Say why there is no estimate: by the lines that have no rate, where there are any."""
    found = next((notice for notice in owner.notices if notice.code == "unpriced-line"), None)
    return found.message if found is not None else otherwise
