"""Reads the sub-totals and totals that stood on a returned form, right or wrong."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.pricing.bids.columns import Table, tables
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


def written_sums(book: Workbook) -> WrittenSums:
    """Read the sub-total of each section, and the total in the base and in the evaluated price."""
    sections: dict[str, Decimal] = {}
    base = evaluated = None
    for sheet in book.sheets:
        for table in tables(sheet):
            for row in table.rows if table.kind == "lines" else ():
                letter = _section(table, row)
                amount = _number(table, row, "amount")
                if letter and amount is not None:
                    sections.setdefault(letter, amount)
            for row in table.rows if table.kind == "totals" else ():
                if any(bare(cell.text) == "total" for cell in sheet.rows[row]):
                    base, evaluated = _number(table, row, "base"), _number(table, row, "evaluated")
                    break
    return WrittenSums(sections, base, evaluated)


def _section(table: Table, row: int) -> str:
    matches = (_SUB_TOTAL.fullmatch(bare(cell.text)) for cell in table.sheet.rows[row])
    return next((match[1].upper() for match in matches if match is not None), "")


def _number(table: Table, row: int, column: str) -> Decimal | None:
    where = table.columns.get(column)
    value = table.sheet.at(row, where).value if where is not None else None
    return cents(value) if isinstance(value, Decimal) and abs(value) < BEYOND else None
