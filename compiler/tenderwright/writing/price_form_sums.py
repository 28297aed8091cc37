"""The sums of the price form as its formulas give them, so that they can be stored beside the formulas."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from tenderwright.documents.price_form import FormLine
from tenderwright.pricing.amount import amount


def line_amount(line: FormLine, rate: Decimal | None) -> Decimal:
    """Give the amount of a line at a rate: zero while unpriced, negative for credits.

    A fixed line is the owner's sum; the others are as `pricing.amount` says. Raises `ValueError` for a fixed line
    without its sum.
    """
    if line.kind == "fixed":
        if line.fixed_amount is None:
            raise ValueError(f"line {line.number} is fixed but has no amount")
        return line.fixed_amount
    return Decimal(0) if rate is None else amount(line.kind, line.quantity, rate)


def total(lines: Iterable[FormLine]) -> Decimal:
    """Add the amounts of lines at the rates they carry."""
    return sum((line_amount(line, line.rate) for line in lines), Decimal(0))
