"""`tenderwright build`: compile the editions, whole or not at all."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright.commands.dock_papers import say_not_rested_on, stopping
from tenderwright.commands.edition_outputs import EDITIONS, PREVIEW, notices_for, write_editions
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.kept_parts import kept_parts
from tenderwright.commands.kept_results import kept_results
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.progress import progress
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import compile_owner, compile_package, read

if TYPE_CHECKING:
    from tenderwright.writing.pdf import Typesetter


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", nargs="?", type=Path, default=None, metavar="DIR", help="the package (default: here)")
    add_out(parser, "each edition's folder")
    parser.add_argument("--only", choices=EDITIONS, help="compile only this edition")
    parser.add_argument(
        "--priced", action="store_true", help="write the specification with your prices, too, to owner/priced/"
    )
    parser.add_argument("--watch", action="store_true", help="compile again on each save")


def run(arguments: Namespace) -> int:
    """Build the editions once, or again on each save."""
    if arguments.priced and arguments.only == "yard":
        raise WrongUse("--priced is of the owner's papers, and --only yard leaves them out")
    need_typesetter()
    root = package_folder(arguments.folder)
    judge_out(root, arguments.out)
    names = [name for name in EDITIONS if arguments.only in (None, name)]
    judge_place(arguments.out, *names, *([PREVIEW] if arguments.watch else []))
    if arguments.watch:
        from tenderwright.commands.watch import watch

        return watch(root, arguments.out, arguments.only, priced=arguments.priced)
    from tenderwright.writing.pdf import Typesetter

    return build_once(root, arguments.out, arguments.only, Typesetter(kept_parts()), priced=arguments.priced)


def build_once(root: Path, out: Path, only: str | None, typesetter: Typesetter, *, priced: bool = False) -> int:
    """Compile a package and write its editions, with `priced` the priced specification too."""
    with kept_results(root) as kept:
        with progress("reading and calculating"):
            files = read(root)
            compiled = compile_package(files, kept)
            owner = compile_owner(files, compiled)
        notices = notices_for(compiled, owner, only)
        sys.stderr.write(as_text(notices, files.texts))
        if stopping(notices):
            print(f"{summary(notices)}; nothing was written", file=sys.stderr)
            return MISTAKES
        say_not_rested_on(notices)
        write_editions(compiled, owner, out, only, typesetter, priced=priced, kept=kept)
    return CLEAN
