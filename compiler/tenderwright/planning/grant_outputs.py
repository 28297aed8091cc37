"""What the money of an application brings that can be measured: the quantities of its lines, and sums of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.model.build import Name
from tenderwright.model.grant import Grant, GrantOutput
from tenderwright.notices import Notice
from tenderwright.planning.grant_entries import Chosen
from tenderwright.pricing.price import PricedLine
from tenderwright.quantities.units import dimension_of, unit

MEASURED = ("mass", "area", "length", "volume", "each")
"""What is measured of the work itself; days and hours are not."""


@dataclass(frozen=True)
class Output:
    """Something measurable: how much is ordered, and how much more may be, on instruction only."""

    what: str
    item: str
    line: str
    """Empty for a sum of lines, or what the owner states."""
    ordered: Decimal
    contingent: Decimal
    unit: str
    stated: bool = False
    """Whether it is the owner's word, and not taken from lines."""


def outputs(grant: Grant, chosen: Chosen) -> tuple[Output, ...]:
    """Give what the owner names first, then every line of the chosen items that measures work done."""
    lines = {line.number: line for line in chosen.lines}
    return (*_named(grant, lines), *_of_lines(chosen.lines))


def _named(grant: Grant, lines: Mapping[str, PricedLine]) -> Iterator[Output]:
    for one in grant.outputs:
        found = [lines[name.name] for name in one.lines if name.name in lines]
        if one.quantity is not None:
            yield Output(one.output, "", "", one.quantity.decimal, Decimal(0), one.quantity.unit, stated=True)
        elif found:
            yield _sum(one.output, found)


def output_mistakes(grant: Grant, chosen: Chosen) -> list[Notice]:
    """Report outputs that state nothing, lines that are not of the chosen items, and sums of unlike things."""
    lines = {line.number: line for line in chosen.lines}
    found: list[Notice] = []
    for one in grant.outputs:
        if (one.quantity is None) == (not one.lines):
            said = "neither `quantity` nor `lines`" if one.quantity is None else "both `quantity` and `lines`"
            message = f"output `{one.output}` has {said}"
            found.append(Notice("missing-key", one.here, message, hints=("write one of `quantity:` and `lines:`",)))
        for name in one.lines:
            if name.name not in lines:
                message = f"line {name} is not of an item of this application"
                hint = "name its item under `items:`, or delete the line here"
                found.append(Notice("dead-reference", name.at, message, hints=(hint,)))
        found += _unlike(one, [(name, lines[name.name]) for name in one.lines if name.name in lines])
    return found


def _unlike(one: GrantOutput, lines: Sequence[tuple[Name, PricedLine]]) -> Iterator[Notice]:
    measured = [(name, line) for name, line in lines if _has_unit(line)]
    for name, _ in [pair for pair in lines if pair not in measured]:
        yield Notice("wrong-dimension", name.at, f"line {name} is a sum, and measures nothing")
    for name, line in measured[1:]:
        first = measured[0][1]
        if unit(line.quantity.unit).signature != unit(first.quantity.unit).signature:
            message = (
                f"line {name} is measured in `{line.quantity.unit}`, and {first.number} in `{first.quantity.unit}`"
            )
            yield Notice("wrong-dimension", name.at, message, hints=(f"split the output `{one.output}` in two",))


def _has_unit(line: PricedLine) -> bool:
    return bool(line.quantity.unit) and not line.quantity.unit.startswith("lump")


def _sum(what: str, lines: Sequence[PricedLine]) -> Output:
    """Add lines up in the unit of the first; raises ValueError where one measures something else."""
    first = unit(lines[0].quantity.unit)
    ordered = contingent = Decimal(0)
    for line in lines:
        its = unit(line.quantity.unit)
        if its.signature != first.signature:
            raise ValueError(f"{line.number} measures something else than {lines[0].number}")
        factor = Decimal(repr(its.factor)) / Decimal(repr(first.factor))
        amount = line.quantity.number * factor
        if _contingent(line):
            contingent += amount
        else:
            ordered += amount
    return Output(what, "", "", ordered.normalize(), contingent.normalize(), first.name)


def measures(line: PricedLine) -> bool:
    """Tell whether a line measures work done, so that its quantity is an output."""
    return line.form == "rate" and _has_unit(line) and dimension_of(unit(line.quantity.unit)) in MEASURED


def _of_lines(lines: Sequence[PricedLine]) -> Iterator[Output]:
    for line in lines:
        if measures(line):
            number = line.quantity.number
            ordered, more = (Decimal(0), number) if _contingent(line) else (number, Decimal(0))
            yield Output(line.line.text, line.item.number, line.number, ordered, more, line.quantity.unit)


def _contingent(line: PricedLine) -> bool:
    return line.item.kind_of(line.line) in ("contingent", "option")
