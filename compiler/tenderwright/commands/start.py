"""`tenderwright start`: write a new, small, valid package with comments that teach."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path

from tenderwright.commands.exits import CLEAN


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="a new or empty folder")


def run(arguments: Namespace) -> int:
    """Write the package."""
    from tenderwright.commands.folder import WrongUse
    from tenderwright.starter.write import write_starter

    try:
        written = write_starter(arguments.folder)
    except OSError as error:
        raise WrongUse(str(error)) from error
    print(f"{len(written)} files written in {arguments.folder}")
    print(f"next: tenderwright check {arguments.folder}")
    return CLEAN
