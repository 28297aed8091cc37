"""The least and the greatest quantity that a line may come to, as the owner judges."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.model.rates import Rate
from tenderwright.notices import Notice
from tenderwright.pricing.quantity import LineQuantity
from tenderwright.quantities.quantity import Quantity
from tenderwright.quantities.units import unit


def quantity_bounds(number: str, rate: Rate, quantity: LineQuantity) -> tuple[Decimal, Decimal] | Notice:
    """Give the least and the greatest quantity of a line in its own unit; the tendered one where none is written."""
    bounds: list[Decimal] = []
    for written in (rate.quantity_low, rate.quantity_high):
        if written is None:
            bounds.append(quantity.number)
            continue
        count = _in_unit(written, quantity.unit)
        if count is None:
            message = f"line {number}: `{written}` does not measure what the line does, {quantity.unit or 'a sum'}"
            return Notice("wrong-dimension", written.at, message)
        bounds.append(count)
    least, most = bounds
    if not least <= quantity.number <= most:
        message = f"line {number}: the quantity tendered, {quantity}, does not lie between {least:f} and {most:f}"
        return Notice("range-order", rate.here, message)
    return least, most


def _in_unit(written: Quantity, name: str) -> Decimal | None:
    if written.unit == name:
        return written.decimal
    if not name or name.startswith("lump") or unit(written.unit).signature != unit(name).signature:
        return None
    return Decimal(repr(written.si)) / Decimal(repr(unit(name).factor))
