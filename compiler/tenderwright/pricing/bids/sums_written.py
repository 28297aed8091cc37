"""Reads the sub-totals and totals that stood on a returned form, right or wrong."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.pricing.bids.columns import Table, tables
from tenderwright.pricing.bids.form_compared import own_formula
from tenderwright.pricing.bids.words import bare
from tenderwright.pricing.money import BEYOND, cents
from tenderwright.reading.workbook.cells import Workbook

_SUB_TOTAL = re.compile(r"sub ?total (?:of )?(?:section )?([a-z])")


@dataclass(frozen=True)
class WrittenSums:
    """The sums of a returned form as they stood there; formulas without a stored result give none."""

    sections: dict[str, Decimal]
    base: Decimal | None
    evaluated: Decimal | None


def written_sums(book: Workbook, own: Collection[str] = (), typed: Collection[str] = ()) -> WrittenSums:
    """Read the sub-total of each section, and the total in the base and in the evaluated price.

    `own` are the formulas of the form as issued, and `typed` the sections with a rate that was typed as text: there
    the form's own sums leave that rate out, and are nobody's word.
    """
    sections: dict[str, Decimal] = {}
    base = evaluated = None
    for sheet in book.sheets:
        for table in tables(sheet):
            for row in table.rows if table.kind == "lines" else ():
                letter = _section(table, row)
                amount = _number(table, row, "amount")
                if letter and amount is not None and not (letter in typed and _own(table, row, "amount", own)):
                    sections.setdefault(letter, amount)
                    _take(book, table, row, "amount")
            for row in table.rows if table.kind == "totals" else ():
                if any(bare(cell.text) == "total" for cell in sheet.rows[row]):
                    base, evaluated = (
                        _number(table, row, column) if not (typed and _own(table, row, column, own)) else None
                        for column in ("base", "evaluated")
                    )
                    _take(book, table, row, "base", "evaluated")
                    break
    return WrittenSums(sections, base, evaluated)


def _section(table: Table, row: int) -> str:
    matches = (_SUB_TOTAL.fullmatch(bare(cell.text)) for cell in table.sheet.rows[row])
    return next((match[1].upper() for match in matches if match is not None), "")


def _number(table: Table, row: int, column: str) -> Decimal | None:
    where = table.columns.get(column)
    value = table.sheet.at(row, where).value if where is not None else None
    return cents(value) if isinstance(value, Decimal) and abs(value) < BEYOND else None


def _own(table: Table, row: int, column: str, own: Collection[str]) -> bool:
    where = table.columns.get(column)
    return where is not None and own_formula(table.sheet.at(row, where), own)


def _take(book: Workbook, table: Table, row: int, *columns: str) -> None:
    cells = [table.sheet.at(row, table.columns[column]) for column in columns if column in table.columns]
    book.take(*(cell for cell in cells if isinstance(cell.value, Decimal) and not cell.formula))
