"""`tenderwright import`: bring a list that somebody keeps as CSV into the form of the package."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    from tenderwright.starter.imported import LISTS

    parser.add_argument("what", choices=tuple(LISTS), metavar="WHAT", help=f"one of {', '.join(LISTS)}")
    parser.add_argument("list", type=Path, metavar="LIST.csv", help="the list, which stays as it is")
    parser.add_argument(
        "--columns", type=Path, metavar="FILE.yaml", help="what its columns hold; LIST.yaml beside it unless given"
    )
    parser.add_argument("--out", type=Path, metavar="NEW.yaml", help="a new file; printed where it is left out")


def run(arguments: Namespace) -> int:
    """Print the list as a file of the package, or write it to a new one; a row that cannot be read is told."""
    from tenderwright.notices import Place, sort_notices
    from tenderwright.notices.render import as_text
    from tenderwright.reading.package import read_beside, read_one
    from tenderwright.starter.imported import import_list, proposed

    listed_in: Path = arguments.list
    said_in: Path = arguments.columns or listed_in.with_suffix(".yaml")
    if arguments.out is not None and arguments.out.exists():
        raise WrongUse(f"{arguments.out} is there already, and no source file is ever written over")
    listed, notices = read_beside(listed_in, listed_in.name, Place(str(listed_in)))
    if listed is not None and arguments.columns is None and not said_in.exists():
        print(proposed(arguments.what, listed), end="")
        print(f"save this as {said_in}, say what each column holds, and run the command again", file=sys.stderr)
        return MISTAKES
    said, said_notices = read_one(said_in)
    notices += said_notices
    if listed is None or said is None or any(notice.severity == "error" for notice in notices):
        sys.stderr.write(as_text(sort_notices(notices), {}))
        return MISTAKES
    made = import_list(arguments.what, listed, said)
    sys.stderr.write(as_text(sort_notices([*notices, *made.notices]), {listed.path: listed.text, said.path: said.text}))
    if not made.sound:
        return MISTAKES
    for key, count in made.left.items():
        print(f"{count} of them need `{key}`, which the list has not: it is `todo`", file=sys.stderr)
    _give(made.text, arguments.out)
    return CLEAN


def _give(text: str, out: Path | None) -> None:
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.new_files import write_new

    if out is None:
        print(text, end="")
        return
    try:
        write_new(out, text.encode())
    except (WritingError, OSError) as error:
        raise WrongUse(str(error)) from error
    print(f"{out} written; look it through, then: tenderwright check", file=sys.stderr)
