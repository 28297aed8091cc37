"""The quantity of a line: as written, or taken from a calculated value and rounded up."""

from __future__ import annotations

from decimal import ROUND_CEILING, Decimal

from msgspec import Struct

from tenderwright.calculations.value import Record, Value
from tenderwright.model.item import Line
from tenderwright.model.package import Package
from tenderwright.model.resting_lines import RestingLine
from tenderwright.notices import Notice
from tenderwright.pricing.amount import PERCENT
from tenderwright.quantities.customs import apart
from tenderwright.quantities.display import in_unit, tidy
from tenderwright.quantities.quantity import Quantity, unit_hint
from tenderwright.quantities.spellings import AmbiguousUnit
from tenderwright.quantities.units import UnknownUnit, base_expression, signature, unit

ONE = Decimal(1)
_SLACK = Decimal("1e-9")


class LineQuantity(Struct, frozen=True):
    """How much a line asks a price for."""

    number: Decimal
    unit: str
    basis: str
    value: Value | None = None
    """The value it is taken from."""

    def __str__(self) -> str:
        """Give the quantity as it is printed."""
        return f"{self.number:f} {self.unit}".strip()


def written_number(number: Decimal) -> str:
    """Write the number of a quantity, its thousands apart; a whole one has no decimals, however it was found."""
    return apart(f"{number:,.0f}" if number == number.to_integral_value() else f"{number:,f}")


def line_quantity(line: Line, record: Record) -> LineQuantity | None:
    """Find the quantity of a line; None where the value it takes cannot be had, or a rate has no quantity yet.

    One lump stands where none is written; for a mark-up the materials allowance is the quantity. A percentage has none
    of its own: what its lines come to differs from bid to bid.
    """
    if line.takes is not None:
        return _taken(line, record)
    if isinstance(line, RestingLine):
        return _rested(line, record)
    if line.price == "markup" and line.amount is not None:
        return LineQuantity(line.amount, "", line.basis or "owner's")
    if line.quantity is None and line.price in ("rate", "day", "hours"):
        return None
    if line.price == PERCENT:
        return LineQuantity(Decimal(0), "%", line.basis or "calculated")
    if line.quantity is None:
        return LineQuantity(ONE, "lump sum" if line.price in ("lump", "fixed") else "", line.basis or "drawing")
    return LineQuantity(line.quantity.decimal, line.quantity.unit, line.basis)


def quantity_mistakes(package: Package, record: Record) -> list[Notice]:
    """Report each line that takes a value in a unit, or rounds it up by a step, that measures something else."""
    notices = []
    for item in package.items:
        for line in item.lines:
            value = _value(line, record)
            mistake = _unit_mistake(line, value) if value is not None and not item.withdrawn else None
            below = line_quantity(line.rests_on, record) if isinstance(line, RestingLine) else None
            unlike = _unlike(line, below) if isinstance(line, RestingLine) and below is not None else ""
            if unlike and not item.withdrawn:
                notices.append(Notice("wrong-dimension", line.here, f"line {item.number}.{line.line}: {unlike}"))
            if mistake is not None:
                code, message, hints = mistake
                notices.append(Notice(code, line.here, f"line {item.number}.{line.line}: {message}", hints=hints))
    return notices


def _value(line: Line, record: Record) -> Value | None:
    value = record.values.get(line.takes.name) if line.takes is not None else None
    return value if value is not None and isinstance(value.si, (int, float)) else None


def _unit_of(line: Line, value: Value) -> str:
    return line.unit or (line.round_up.unit if line.round_up else value.unit)


def _unit_mistake(line: Line, value: Value) -> tuple[str, str, tuple[str, ...]] | None:
    """Say what is wrong with the unit or the step of a line, as a notice code, a sentence and hints."""
    name = _unit_of(line, value)
    as_in = (f"write it as in `{value.unit}`",)
    try:
        measured = unit(name).signature
    except AmbiguousUnit as error:
        return "ambiguous-unit", f"unit `{name}` has several meanings", (f"write one of {', '.join(error.choices)}",)
    except UnknownUnit:
        return "bad-quantity", f"unknown unit `{name}`", unit_hint(name, value.dimension) or as_in
    wanted = signature(value.dimension) if base_expression(value.dimension) else unit(value.unit).signature
    if measured != wanted:
        return "wrong-dimension", f"unit `{name}` does not measure `{value.name}`", as_in
    step = line.round_up
    if step is not None and unit(step.unit).signature != wanted:
        return "wrong-dimension", f"`{step}` does not measure `{value.name}`", as_in
    if step is not None and _size(step, name) <= 0:
        return "bad-quantity", f"a quantity cannot be rounded up by `{step}`", ()
    return None


def _taken(line: Line, record: Record) -> LineQuantity | None:
    value = _value(line, record)
    if value is None or _unit_mistake(line, value) is not None:
        return None
    name = unit(_unit_of(line, value)).name
    number = Decimal(repr(in_unit(value.si * (line.share.si if line.share else 1.0), name, value.dimension)))
    step = line.round_up
    if step is None:
        return LineQuantity(tidy(number, 3), name, line.basis or "calculated", value)
    size = _size(step, name)
    count = ((number / size) - _SLACK).to_integral_value(ROUND_CEILING) + 0  # no minus before nothing
    return LineQuantity(_plain(count * size), name, line.basis or "calculated", value)


def _rested(line: RestingLine, record: Record) -> LineQuantity | None:
    """Give the share of another line's quantity, as that stands in the form, in the unit of this one."""
    below = line_quantity(line.rests_on, record)
    if below is None or _unlike(line, below):
        return None
    share = Decimal(repr(line.share.si)) if line.share is not None else ONE
    name = unit(line.unit or (line.round_up.unit if line.round_up else below.unit)).name
    number = below.number * share
    if name != below.unit:
        number *= Decimal(repr(unit(below.unit).factor)) / Decimal(repr(unit(name).factor))
    step = line.round_up
    if step is None:
        return LineQuantity(tidy(number, 3), name, line.basis or below.basis)
    size = _size(step, name)
    count = ((number / size) - _SLACK).to_integral_value(ROUND_CEILING) + 0
    return LineQuantity(_plain(count * size), name, line.basis or below.basis)


def _unlike(line: RestingLine, below: LineQuantity) -> str:
    """Say why a quantity cannot rest on another: that has no unit, or another dimension; empty where it can."""
    if not below.unit or below.unit == "%" or below.unit.startswith("lump"):
        return f"line {line.takes_line} has no quantity of its own"
    for wanted in (line.unit, line.round_up.unit if line.round_up is not None else ""):
        if wanted and unit(wanted).signature != unit(below.unit).signature:
            return f"`{wanted}` does not measure line {line.takes_line}, which is in {below.unit}"
    return ""


def _size(step: Quantity, name: str) -> Decimal:
    """Give the step that a quantity is rounded up by, in the line's unit, to a millionth of it."""
    return Decimal(repr(in_unit(step.si, name, step.dimension))).quantize(Decimal("1e-6")).normalize()


def _plain(number: Decimal) -> Decimal:
    return number.quantize(ONE) if number == number.to_integral_value() else number.normalize()
