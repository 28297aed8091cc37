"""`tenderwright build`: compile the editions, whole or not at all."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.progress import progress
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.notices import Notice, sort_notices
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import (
    Compiled,
    OwnersSide,
    compile_owner,
    compile_package,
    compose_owner,
    compose_yard,
    read,
    stamp_of,
    write,
)

if TYPE_CHECKING:
    from tenderwright.documents.edition import Edition
    from tenderwright.documents.price_form import PriceForm
    from tenderwright.writing.edition_files import Written
    from tenderwright.writing.pdf import Typesetter


EDITIONS = ("yard", "owner")
PREVIEW = "preview"
"""The folder of the page that `--watch` writes first."""


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", nargs="?", type=Path, default=None, metavar="DIR", help="the package (default: here)")
    add_out(parser, "each edition's folder")
    parser.add_argument("--only", choices=("yard", "owner"), help="compile only this edition")
    parser.add_argument("--watch", action="store_true", help="compile again on each save")


def run(arguments: Namespace) -> int:
    """Build the editions once, or again on each save."""
    need_typesetter()
    root = package_folder(arguments.folder)
    judge_out(root, arguments.out)
    names = [name for name in EDITIONS if arguments.only in (None, name)]
    judge_place(arguments.out, *names, *([PREVIEW] if arguments.watch else []))
    if arguments.watch:
        from tenderwright.commands.watch import watch

        return watch(root, arguments.out, arguments.only)
    from tenderwright.writing.pdf import Typesetter

    return build_once(root, arguments.out, arguments.only, Typesetter())


def build_once(root: Path, out: Path, only: str | None, typesetter: Typesetter) -> int:
    """Compile a package and write its editions."""
    with progress("reading and calculating"):
        files = read(root)
        compiled = compile_package(files)
        owner = compile_owner(files, compiled)
    notices = notices_for(compiled, owner, only)
    sys.stderr.write(as_text(notices, files.texts))
    if any(notice.severity == "error" for notice in notices):
        print(f"{summary(notices)}; nothing was written", file=sys.stderr)
        return MISTAKES
    write_editions(compiled, owner, out, only, typesetter)
    return CLEAN


def notices_for(compiled: Compiled, owner: OwnersSide, only: str | None) -> list[Notice]:
    """Give the notices that bear on what is built: the yard edition does not look at owner/."""
    return sort_notices(compiled.notices if only == "yard" else [*compiled.notices, *owner.notices])


def write_editions(
    compiled: Compiled,
    owner: OwnersSide,
    out: Path,
    only: str | None,
    typesetter: Typesetter,
    yard: tuple[Edition, PriceForm] | None = None,
) -> None:
    """Compose the editions asked for, put them in place once all of them stand, and say what was written.

    The yard edition may have been composed already.
    """
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.outputs import write_outputs

    state = stamp_of(compiled)
    wanted = [name for name in EDITIONS if only in (None, name)]
    if "owner" in wanted and owner.estimate is None:
        if only == "owner":
            raise WrongUse("there is no owner/rates.yaml, so there is no owner edition")
        wanted.remove("owner")
    try:
        made: dict[str, Written] = {}
        for name in wanted:
            with progress(f"composing and typesetting the {name} edition"):
                if name == "yard":
                    composed = yard or compose_yard(compiled, state)
                else:
                    composed = compose_owner(compiled, owner, state)
                made[name] = write(*composed, typesetter, state)
    except WritingError as error:
        raise WrongUse(f"the {name} edition cannot be written: {error}") from error
    for name, written in made.items():
        try:
            folder = write_outputs(out, name, written.files)
        except (WritingError, OSError) as error:
            raise WrongUse(str(error)) from error
        print(f"{folder}: {written.pages} pages, {len(written.files)} files, {state.label}")
        if written.uncovered:
            print(f"  characters that the faces do not hold: {written.uncovered}", file=sys.stderr)
