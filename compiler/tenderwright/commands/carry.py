"""`tenderwright carry`: carry the prices of an older price form over to a newer one of the same tender."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse
from tenderwright.notices.render import as_text, summary

if TYPE_CHECKING:
    from tenderwright.notices import Notice
    from tenderwright.pricing.bids.carry import Carried
    from tenderwright.reading.workbook.cells import Workbook


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("old", type=Path, metavar="OLD.xlsx", help="the older form, priced")
    parser.add_argument("new", type=Path, metavar="NEW.xlsx", help="the newer form, as the owner issued it")
    parser.add_argument("--out", type=Path, required=True, metavar="FILE.xlsx", help="the new file to write")


def run(arguments: Namespace) -> int:
    """Carry the prices over."""
    from tenderwright.pricing.bids.carry import carry, unlike
    from tenderwright.writing.carried_form import carried_form
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.new_files import write_new

    out: Path = arguments.out
    if out.exists():
        raise WrongUse(f"`{out}` is there already, and nothing is written over it; give --out another name")
    read = [_read(path) for path in (arguments.old, arguments.new)]
    notices = [notice for _, _, found in read for notice in found]
    (old, _, _), (new, form, _) = read
    if old is None or new is None:
        sys.stderr.write(as_text(notices, {}))
        print(f"{summary(notices)}; nothing was written", file=sys.stderr)
        return MISTAKES
    if why := unlike(old, new):
        raise WrongUse(f"these are not two forms of one tender: {why}")
    made = carry(old, new)
    try:
        write_new(out, carried_form(form, made.cells))
    except (WritingError, OSError) as error:
        raise WrongUse(f"the form cannot be written: {error}") from error
    _tell(out, made)
    return CLEAN


def _read(path: Path) -> tuple[Workbook | None, bytes, list[Notice]]:
    from tenderwright.reading.workbook.cells import read_cells
    from tenderwright.reading.workbook.guard import guard

    guarded, notices = guard(path)
    if guarded is None:
        return None, b"", notices
    book, notices = read_cells(guarded)
    return book, guarded.data, notices


def _tell(out: Path, made: Carried) -> None:
    print(f"{out}: written, with the prices of {made.lines} {'line' if made.lines == 1 else 'lines'}")
    for title, lines in (
        ("carried, and to be looked at", made.changed),
        ("not carried", made.left),
        ("priced on the older form, and no longer asked", made.gone),
    ):
        if lines:
            print(f"  {title}:")
            print("".join(f"    {line}\n" for line in lines), end="")
    print("  Only status and price are carried; remarks, the dock and the acknowledgements are to be written again.")
    print("  Open the file in a spreadsheet program and save it once, so that its sums are stored.")
