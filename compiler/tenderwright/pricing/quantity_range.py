"""The least and the greatest quantity that a line may come to, as the owner judges."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.model.rates import Rate
from tenderwright.notices import Notice
from tenderwright.pricing.quantity import LineQuantity
from tenderwright.quantities.quantity import Quantity
from tenderwright.quantities.units import unit


def quantity_bounds(number: str, rate: Rate, quantity: LineQuantity) -> tuple[Decimal, Decimal] | Notice:
    """Give the least and the greatest quantity of a line in its own unit; the tendered one where none is written.

    A tendered quantity beyond what is written widens the range; a trade check tells of it.
    """
    written = [end for end in (rate.quantity_low, rate.quantity_high) if end is not None]
    counts = []
    for end in written:
        count = counted(end, quantity.unit)
        if count is None:
            message = f"line {number}: `{end}` does not measure what the line does, {quantity.unit or 'a sum'}"
            return Notice("wrong-dimension", end.at, message)
        counts.append(count)
    if counts != sorted(counts):
        return Notice("range-order", rate.here, f"line {number}: its least quantity is greater than its greatest")
    return min([*counts, quantity.number]), max([*counts, quantity.number])


def in_units(number: Decimal, name: str, wanted: str) -> Decimal | None:
    """Give a number of one unit in another; None where they do not measure the same."""
    if name == wanted:
        return number
    if any(not one or one == "%" or one.startswith("lump") for one in (name, wanted)):
        return None
    if unit(name).signature != unit(wanted).signature:
        return None
    return number * Decimal(repr(unit(name).factor)) / Decimal(repr(unit(wanted).factor))


def counted(written: Quantity, name: str) -> Decimal | None:
    """Give a quantity in the unit of a line; None where it measures something else."""
    if written.unit == name:
        return written.decimal
    if not name or name.startswith("lump") or unit(written.unit).signature != unit(name).signature:
        return None
    return Decimal(repr(written.si)) / Decimal(repr(unit(name).factor))
