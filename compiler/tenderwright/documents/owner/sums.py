"""A short table of sums, one under another, each with what it is."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import Literal

from tenderwright.documents.edition import Column, Row, Table, inline
from tenderwright.pricing.money import written

Sum = tuple[str, Decimal, Literal["normal", "subtotal", "total"]]
"""What a sum is, how much, and the weight of its row."""


def sums(currency: str, rows: Sequence[Sum], note: str) -> Table:
    """Set sums out one under another."""
    columns = (Column("", width=5.5), Column(currency, "decimal", 1.5))
    table = tuple(Row((inline(words), inline(written(amount))), weight) for words, amount, weight in rows)
    return Table(columns, table, note=inline(note))
