"""Reads the figures of the dock that a yard offers; what cannot be read is told of and quoted."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

from tenderwright.model.bid import DockOffered
from tenderwright.model.facility import Cars, Certificate, FacilityLimits, Hoists, Slope
from tenderwright.model.kinds import DOCK_TYPES as KINDS
from tenderwright.notices import Notice, Place
from tenderwright.pricing.bids.answers import read_date
from tenderwright.pricing.bids.beside import labels, right_of
from tenderwright.pricing.bids.columns import Table, tables
from tenderwright.pricing.bids.telling import told, whole
from tenderwright.pricing.bids.words import bare, plain
from tenderwright.pricing.dock_figures import (
    ALL,
    COUNT,
    DAY,
    GRADIENT,
    KIND,
    TEXT,
    WHOLE,
    DockFigure,
    lacking,
)
from tenderwright.quantities.bounds import out_of_bounds
from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity
from tenderwright.reading.workbook.cells import Cell, Sheet, Workbook

_MOST_COUNTED = {"cars.axles": 50}
_PARTS = {"cars": Cars, "hoists": Hoists, "slope": Slope, "certificate": Certificate}
_GRADIENT = re.compile(r"(?:1|one) ?(?:in|:|/) ?(\d{1,3}(?:\.\d+)?)", re.IGNORECASE)


def read_dock(book: Workbook, units: Mapping[str, str]) -> tuple[DockOffered | None, list[Notice]]:
    """Read the dock; `units` are those that the form asked for, by path. None where the form asks for no dock."""
    notices: list[Notice] = []
    given: dict[str, Any] = {}
    asked = False
    for figure in ALL if units else ():
        for sheet, label in labels(book, figure.label):
            cell = _answer(sheet, label)
            asked = True
            if cell is None or cell.empty:
                continue
            value = _value(cell, figure, units[figure.path])
            if value is None:
                message = f"`{whole(cell.text or cell.formula)}` is not read as {_asked(figure, units)}: {figure.label}"
                notices.append(told("bid-unread", cell, message, "ask the yard for the figure"))
            else:
                given[figure.path] = value
                book.take(*([] if cell.formula else [cell]))
            break
    if not asked:
        return None, []
    missing = lacking(given, given.get("kind", ""))
    if not given:
        message = "the figures of the dock are not given, so that it is not known whether it takes her"
        return None, [*notices, Notice("bid-incomplete", Place(book.path), message, hints=("ask the yard",))]
    if missing:
        message = f"of the dock is not given: {', '.join(missing)}"
        notices.append(Notice("bid-incomplete", Place(book.path), message, hints=("ask the yard",)))
    return _dock(given, missing, Place(book.path)), notices


def _answer(sheet: Sheet, label: Cell) -> Cell | None:
    """Give the cell that the yard fills beside a label: in the column of figures, else beyond hint and unit."""
    table: Table | None = next((one for one in tables(sheet) if one.kind == "dock" and label.row in one.rows), None)
    if table is not None and "figure" in table.columns:
        return sheet.at(label.row, table.columns["figure"])
    beyond = [cell for cell in right_of(sheet, label) if cell.column > label.column + 2]
    return beyond[0] if beyond else None


def _asked(figure: DockFigure, units: Mapping[str, str]) -> str:
    words = {TEXT: "words", COUNT: "a number of them", DAY: "a day, year-month-day", GRADIENT: "a slope such as 1:16"}
    if figure.form == KIND:
        return f"one of {', '.join(KINDS)}"
    return words.get(figure.form) or f"a figure in {units[figure.path]}"


def _value(cell: Cell, figure: DockFigure, unit: str) -> Any:
    """Read what stands in a cell; None where it is not what was asked."""
    if figure.form == TEXT:
        return cell.text or None
    if figure.form == DAY:
        return read_date(cell)
    if figure.form == KIND:
        return next((kind for kind in KINDS if kind == bare(cell.text)), None)
    if figure.form == GRADIENT:
        match = _GRADIENT.fullmatch(plain(cell.text))
        return f"1:{match[1]}" if match is not None else None
    if figure.form == COUNT:
        return _count(cell, _MOST_COUNTED.get(figure.path, 200))
    return _quantity(cell, figure, unit)


def _count(cell: Cell, most: int) -> int | None:
    match = re.fullmatch(r"(\d{1,3})(?:\.0+)?", cell.text)
    number = int(match[1]) if match is not None else 0
    return number if 1 <= number <= most else None


def _quantity(cell: Cell, figure: DockFigure, unit: str) -> Quantity | None:
    """Read a quantity: in the unit that was asked, where the yard writes none."""
    text = plain(cell.text)
    if isinstance(cell.value, Decimal) or re.fullmatch(r"\d+(?:\.\d+)?", text):
        text = f"{text} {unit}"
    try:
        found = parse_quantity(text, figure.dimension)
    except QuantityError:
        return None
    limits = {"within": (figure.least, figure.most)} if figure.most else {}
    return None if out_of_bounds(found, limits) or found.si <= 0 else found


def _dock(given: Mapping[str, Any], missing: tuple[str, ...], place: Place) -> DockOffered:
    """Make the dock of what was given; a part that is not whole is left out, and `missing` says what it wants."""
    of = {part: dict(_of(given, part)) for part in ("limits", *_PARTS)}
    made: dict[str, Any] = {path: value for path, value in given.items() if "." not in path}
    if of["limits"]:
        made["limits"] = FacilityLimits(**of["limits"])
    for part, noun in _PARTS.items():
        if of[part].keys() >= set(WHOLE[part]):
            made[part] = noun(**of[part], **({"here": place} if "here" in noun.__struct_fields__ else {}))
    return DockOffered(**made, lacking=missing, here=place)


def _of(given: Mapping[str, Any], part: str) -> Iterator[tuple[str, Any]]:
    for path, value in given.items():
        if path.startswith(f"{part}."):
            yield path.removeprefix(f"{part}."), value
