"""`tenderwright bids read`: read a returned price form and write it under owner/bids/ for review."""

from __future__ import annotations

import re
import sys
import unicodedata
from argparse import ArgumentParser, ArgumentTypeError, Namespace
from collections import Counter
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec.structs import replace

from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.output_folder import take_back_unfinished
from tenderwright.commands.todos import need, stopped_by
from tenderwright.model.bid import Bid
from tenderwright.model.contract import DECLARATION, OFFER, SECURITY
from tenderwright.model.package import sound
from tenderwright.notices import Notice, sort_notices
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import Compiled, compile_package, read
from tenderwright.reading.package import Files

if TYPE_CHECKING:
    from tenderwright.documents.price_form import PriceForm
    from tenderwright.pricing.bids.expected import ExpectedForm
    from tenderwright.pricing.bids.read_bid import BidRead
    from tenderwright.reading.workbook.cells import Workbook

_LETTERS = str.maketrans({"æ": "ae", "ø": "o", "œ": "oe", "ß": "ss", "ð": "d", "þ": "th", "ł": "l"})
SIGNED = (OFFER, SECURITY, DECLARATION)
STATUSES = ("priced", "zero", "included", "no bid", "empty")


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the package that was tendered")
    parser.add_argument("file", type=Path, metavar="FILE.xlsx", help="the price form as the yard returned it")
    parser.add_argument("--yard", default="", metavar="NAME", help="name of the yard (default: as signed on the form)")
    parser.add_argument(
        "--received", type=_day, required=True, metavar="DATE", help="day on which it was received, year-month-day"
    )
    parser.add_argument(
        "--signed",
        action="append",
        choices=SIGNED,
        help="a signed form that came with it; may be given several times",
    )


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError as error:
        raise ArgumentTypeError(f"`{text}` is not a date written year-month-day") from error


def run(arguments: Namespace) -> int:
    """Read a returned price form."""
    root = package_folder(arguments.folder)
    take_back_unfinished(root)
    files = read(root)
    compiled = compile_package(files)
    if not compiled.sound:
        errors = [notice for notice in compiled.notices if notice.severity == "error"]
        sys.stderr.write(as_text(sort_notices(errors), files.texts))
        print(f"the package has {summary(errors)}; nothing was written", file=sys.stderr)
        return MISTAKES
    need(compiled)
    priced = [todo for todo in compiled.package.todos if todo.place.path.startswith(("items/", "package.yaml"))]
    if stopped_by(priced, files):
        print("a tender whose values are still `todo` has not been issued; nothing was written", file=sys.stderr)
        return MISTAKES
    found, notices = read_returned(arguments.file, compiled, arguments.yard, arguments.received)
    sys.stderr.write(as_text(notices, {}))
    if found is None or found.refused:
        print(f"{summary(notices)}; nothing was written", file=sys.stderr)
        return MISTAKES
    signed = tuple(one for one in SIGNED if one in arguments.signed) if arguments.signed else None
    _write(files, replace(found.bid, tender=sound(compiled.package.tender).tender.number, signed=signed))
    return MISTAKES if any(notice.severity == "error" for notice in notices) else CLEAN


def read_returned(
    file: Path, compiled: Compiled, yard: str, received: date
) -> tuple[BidRead | None, tuple[Notice, ...]]:
    """Read a returned price form against a sound package; None where the file is refused."""
    from tenderwright.pricing.bids.read_bid import read_bid
    from tenderwright.reading.workbook.cells import read_cells
    from tenderwright.reading.workbook.guard import guard

    guarded, notices = guard(file)
    if guarded is None:
        return None, tuple(notices)
    book, notices = read_cells(guarded)
    if book is None:
        return None, tuple(notices)
    found = read_bid(book, form_issued(compiled, stamp_on(book)), yard, received)
    return found, found.notices


def stamp_on(book: Workbook) -> str:
    """Give the stamp that a returned form bears: that of its properties, or of its first sheet where it names a commit.

    Which commit a form was made from is not known of an edition that has not been tagged.
    """
    from tenderwright.pricing.bids.beside import labelled

    stated = [cell.text for cell in labelled(book, "stamp")]
    stored = book.properties.get("Stamp", "")
    return stored or next((text for text in stated if re.fullmatch(r"Commit [0-9a-f]{12}", text)), "")


def form_issued(compiled: Compiled, stamp: str) -> ExpectedForm:
    """Give the price form of a sound package, with a stamp, in the rows that a returned one is held against."""
    import dataclasses

    from tenderwright.documents.desk import Desk
    from tenderwright.documents.form import price_form

    form = price_form(Desk(compiled.package, compiled.links, compiled.calculated), stamp)
    expected = expected_form(form, tuple(one.number for one in sound(compiled.package.tender).addenda))
    return dataclasses.replace(expected, facilities={one.name: one.facility for one in compiled.package.facilities})


def expected_form(form: PriceForm, addenda: tuple[int, ...]) -> ExpectedForm:
    """Turn a price form into the rows that a returned one is held against; `addenda` are their numbers."""
    from tenderwright.pricing.bids.expected import ExpectedForm, ExpectedLine, ExpectedTable
    from tenderwright.reading.workbook.cells import read_cells
    from tenderwright.reading.workbook.guard import look_through
    from tenderwright.writing.price_form_xlsx import price_form_workbook

    issued, notices = read_cells(look_through("the form as issued", price_form_workbook(form)))
    if issued is None:
        raise RuntimeError("the form as issued cannot be read back:\n" + as_text(notices, {}))
    return ExpectedForm(
        tender=form.tender,
        issued=issued,
        currency=form.currency,
        edition_hash=form.edition_hash,
        closing=sound(form.closing),
        lines=tuple(
            ExpectedLine(
                line.number,
                section.code,
                line.title,
                line.text,
                line.written,
                line.kind,
                line.quantity,
                line.unit,
                line.fixed_amount,
            )
            for section in form.sections
            for line in section.lines
        ),
        addenda=tuple(zip(addenda, form.addenda, strict=True)),
        questions=tuple(ask for ask, _ in form.yard_questions),
        day_cost=form.day_cost,
        dock_units={one.path: one.unit for _, figures in form.dock for one in figures},
        tables=tuple(ExpectedTable(one.name, one.columns, tuple(name for name, _ in one.rows)) for one in form.tables),
    )


def slug(name: str) -> str:
    """Make the name of a file from that of a yard: lower-case words joined by hyphens."""
    letters = unicodedata.normalize("NFKD", name.lower().translate(_LETTERS)).encode("ascii", "ignore").decode()
    return "-".join(re.findall(r"[a-z0-9]+", letters))[:48].strip("-")


def _write(files: Files, bid: Bid) -> None:
    from tenderwright.documents.bid_entry import bid_entry
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.new_files import in_the_way, new_files
    from tenderwright.writing.yaml_file import yaml_text

    if not slug(bid.yard):
        raise WrongUse("the form is not signed with the name of the yard; give it with --yard")
    path = f"owner/bids/{slug(bid.yard)}.yaml"
    there = files.sources.get(path)
    if bid.signed is None and there is not None and isinstance(there.data, dict):
        said = there.data.get("signed")
        bid = replace(bid, signed=tuple(said) if isinstance(said, list) else None)
    text = yaml_text(bid_entry(bid))
    place = files.root / path
    the_same = place.is_file() and place.read_bytes() == text.encode()
    if in_the_way(files.root, {path: b""}) and not the_same:
        raise WrongUse(f"{path} is there already; nothing was written (another --yard gives another name)")
    check_text(path, text, bid)
    try:
        with new_files(files.root, {} if the_same else {path: text.encode()}):
            pass
    except (WritingError, OSError) as error:
        raise WrongUse(f"the bid cannot be written: {error}") from error
    counts = Counter(line.status for line in bid.lines.values())
    told = ", ".join(f"{counts[status]} {status}" for status in STATUSES if counts[status])
    print(f"{place}: {'there already, the same' if the_same else 'written'}")
    print(f"  {len(bid.lines)} lines: {told}; {_doubts(len(bid.doubts))}")


def _doubts(count: int) -> str:
    if not count:
        return "no doubts"
    told = "1 doubt, to be" if count == 1 else f"{count} doubts, each to be"
    return f"{told} settled in owner/evaluation.yaml before bids are compared"


def check_text(path: str, text: str, bid: Bid) -> None:
    """Read back what is to be written; raises RuntimeError, since anything else than the bid is our own mistake."""
    from tenderwright.model.build import Builder
    from tenderwright.reading.yaml_file import read_yaml
    from tenderwright.shapes.validate import validate

    source, notices = read_yaml(path, text)
    found = [*notices, *(notice for _, notice in validate(source, "bid"))]
    if found:
        raise RuntimeError("what was composed is not sound:\n" + as_text(found, {path: text}))
    if Builder(source).build(Bid, source.data) != bid:
        raise RuntimeError(f"{path} does not read back as the bid that was composed")
