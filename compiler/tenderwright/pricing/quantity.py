"""The quantity of a line: as written, or taken from a calculated value and rounded up."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal

from tenderwright.calculations.value import Record, Value
from tenderwright.model.item import Line
from tenderwright.quantities.display import in_unit, tidy

ONE = Decimal(1)
_SLACK = Decimal("1e-9")


@dataclass(frozen=True)
class LineQuantity:
    """How much a line asks a price for."""

    number: Decimal
    unit: str
    basis: str
    value: Value | None = None
    """The value it is taken from."""

    def __str__(self) -> str:
        """Give the quantity as it is printed."""
        return f"{self.number:f} {self.unit}".strip()


def line_quantity(line: Line, record: Record) -> LineQuantity | None:
    """Find the quantity of a line; one lump where none is written, None where the value it takes failed."""
    if line.takes is not None:
        return _taken(line, record)
    if line.price == "markup" and line.amount is not None:
        return LineQuantity(line.amount, "", line.basis or "owner's")
    if line.quantity is None:
        return LineQuantity(ONE, "lump sum" if line.price in ("lump", "fixed") else "", line.basis or "drawing")
    return LineQuantity(line.quantity.decimal, line.quantity.unit, line.basis)


def _taken(line: Line, record: Record) -> LineQuantity | None:
    assert line.takes is not None
    value = record.values.get(line.takes.name)
    if value is None or not isinstance(value.si, (int, float)):
        return None
    step = line.round_up
    unit = line.unit or (step.unit if step else value.unit)
    number = Decimal(repr(in_unit(value.si * (line.share.si if line.share else 1.0), unit, value.dimension)))
    if step is None:
        return LineQuantity(tidy(number, 3), unit, line.basis or "calculated", value)
    size = Decimal(repr(in_unit(step.si, unit, step.dimension)))
    size = size.quantize(Decimal("1e-6")).normalize()
    count = ((number / size) - _SLACK).to_integral_value(ROUND_CEILING)
    return LineQuantity(_plain(count * size), unit, line.basis or "calculated", value)


def _plain(number: Decimal) -> Decimal:
    return number.quantize(ONE) if number == number.to_integral_value() else number.normalize()
