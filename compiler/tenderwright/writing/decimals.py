"""Lines decimal columns up on the point, by padding short fractions at the right."""

from __future__ import annotations

import re
from collections.abc import Iterable

from tenderwright.documents.edition import Row, Table, plain

_NUMBER = re.compile(r"[^\d]*\d[\d,\s]*(?:\.(?P<fraction>\d+))?\s?%?")


def fraction_digits(text: str) -> str | None:
    """Give the digits after the point of a number as printed, nothing for a text that is no number."""
    match = _NUMBER.fullmatch(text)
    return None if match is None else match["fraction"] or ""


def decimal_pads(texts: Iterable[str]) -> tuple[str, ...]:
    """Give for each text the characters that, set invisibly after it, bring its point under the others'."""
    fractions = [fraction_digits(text) for text in texts]
    longest = max((len(fraction) for fraction in fractions if fraction is not None), default=0)
    return tuple("" if fraction is None else _pad(fraction, longest) for fraction in fractions)


def _pad(fraction: str, longest: int) -> str:
    point = "." if longest and not fraction else ""
    return point + "0" * (longest - len(fraction))


def table_pads(table: Table) -> tuple[tuple[str, ...], ...]:
    """Give the padding of every cell of a table, row by row; empty but in decimal columns."""
    rows = [row for row in table.rows if row.weight != "group"]
    columns = [
        decimal_pads(_cell_text(row, index) for row in rows) if column.align == "decimal" else ("",) * len(rows)
        for index, column in enumerate(table.columns)
    ]
    padded = iter(zip(*columns, strict=True))
    return tuple(() if row.weight == "group" else next(padded) for row in table.rows)


def _cell_text(row: Row, index: int) -> str:
    return plain(row.cells[index]) if index < len(row.cells) else ""
