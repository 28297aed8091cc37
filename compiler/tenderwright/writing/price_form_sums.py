"""The sums of the price form as its formulas give them, so that they can be stored beside the formulas."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal

from tenderwright.documents.price_form import FormLine, PriceForm
from tenderwright.pricing.amount import amount


def line_amount(line: FormLine, rate: Decimal | None) -> Decimal:
    """Give the amount of a line at a rate: zero while unpriced, negative for credits.

    A fixed line is the owner's sum; the others are as `pricing.amount` says, a percentage with what its lines come to
    as the quantity. Raises `ValueError` for a fixed line without its sum.
    """
    if line.kind == "fixed":
        if line.fixed_amount is None:
            raise ValueError(f"line {line.number} is fixed but has no amount")
        return line.fixed_amount
    return Decimal(0) if rate is None else amount(line.kind, line.quantity, rate)


def priced_amount(line: FormLine) -> Decimal | str:
    """Give what the row of a line shows as its amount: nothing while it is not priced."""
    return line_amount(line, line.rate) if line.rate is not None else ""


def with_percents(form: PriceForm) -> PriceForm:
    """Give every percentage what its lines come to at the rates they carry as its quantity."""
    amounts = {
        line.number: line_amount(line, line.rate) for section in form.sections for line in section.lines if not line.of
    }

    def whole(line: FormLine) -> FormLine:
        return replace(line, quantity=sum((amounts[one] for one in line.of), Decimal(0))) if line.of else line

    sections = (replace(one, lines=tuple(whole(line) for line in one.lines)) for one in form.sections)
    return replace(form, sections=tuple(sections))


def total(lines: Iterable[FormLine]) -> Decimal:
    """Add the amounts of lines at the rates they carry."""
    return sum((line_amount(line, line.rate) for line in lines), Decimal(0))
