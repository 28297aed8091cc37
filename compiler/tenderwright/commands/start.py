"""`tenderwright start`: write a new, small, valid package with comments that teach."""

from __future__ import annotations

import shlex
import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from tenderwright.commands.exits import CLEAN


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="a new or empty folder")


def run(arguments: Namespace) -> int:
    """Write the package, and beside it the workflow that checks it on every push."""
    from tenderwright.commands.folder import WrongUse
    from tenderwright.starter.write import write_starter

    folder: Path = arguments.folder
    try:
        written = write_starter(folder)
    except OSError as error:
        raise WrongUse(str(error)) from error
    print(f"{len(written)} files written in {folder}")
    _add_workflow(folder)
    print("owner/ is confidential and is kept in the same repository as the rest: let that be private,")
    print(f"  or give owner/ a repository of its own, as {folder / 'owner' / 'README.md'} shows")
    print(f"next: tenderwright check {shlex.quote(str(folder))}")
    return CLEAN


def _add_workflow(folder: Path) -> None:
    from tenderwright.starter.source import pinned_source
    from tenderwright.starter.workflow import add_workflow, names_for, top_for, workflow_text

    top = top_for(folder)
    package = folder.resolve().relative_to(top).as_posix()
    source = pinned_source()
    try:
        name = add_workflow(top, package, workflow_text(package, source))
    except OSError as error:
        print(f"the package is whole, but its workflow could not be written: {error}", file=sys.stderr)
        return
    if not name:
        print(f"{names_for(package)[-1]} is there already and was left as it is", file=sys.stderr)
        return
    print(f"{top / name} checks the package on every push")
    if not source:
        print("  fill in its line TENDERWRIGHT: this Tenderwright does not know from where others can fetch it")
