"""What the money of an application brings that can be measured: the quantities of its lines, and sums of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.model.grant import Grant
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
    name = line.quantity.unit
    if line.form != "rate" or not name or name.startswith("lump"):
        return False
    return dimension_of(unit(name)) in MEASURED


def _of_lines(lines: Sequence[PricedLine]) -> Iterator[Output]:
    for line in lines:
        if measures(line):
            number = line.quantity.number
            ordered, more = (Decimal(0), number) if _contingent(line) else (number, Decimal(0))
            yield Output(line.line.text, line.item.number, line.number, ordered, more, line.quantity.unit)


def _contingent(line: PricedLine) -> bool:
    return line.item.kind_of(line.line) in ("contingent", "option")
