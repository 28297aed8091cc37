"""Adders: lines whose rate is added to that of other lines for a part of their quantity, such as for curved plate."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal

from tenderwright.calculations.value import Record
from tenderwright.model.item import Item, Line
from tenderwright.model.named_lines import live_lines, named_lines
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean
from tenderwright.pricing.quantity import line_quantity
from tenderwright.pricing.quantity_range import in_units

_SLACK = Decimal("1e-6")


def adder_mistakes(package: Package, record: Record) -> list[Notice]:
    """Report adders to lines that are not there, in another unit than theirs, and for more than all of them."""
    lines = live_lines(package)
    return [
        notice
        for number, (_, line) in lines.items()
        if line.adds_to
        for notice in _mistakes(package, record, lines, number, line)
    ]


def _mistakes(
    package: Package, record: Record, lines: Mapping[str, tuple[Item, Line]], number: str, line: Line
) -> Iterator[Notice]:
    own = line_quantity(line, record)
    if line.price != "rate":
        message = f"line {number} is added to a rate, and is not priced by a rate itself"
        yield Notice(
            "bad-addition", line.here, message, hints=("write `price: rate`, or a percentage: `price: percent`",)
        )
        return
    whole = Decimal(0)
    for name in line.adds_to:
        found = [one for one in named_lines(name.name, lines) if not lines[one][1].adds_to]
        if not found and not package.broken.may_hold("item", name.name.split(".")[0]):
            message = f"line {number} is added to `{name}`, which is not there"
            yield Notice("dead-reference", name.at, message, hints=did_you_mean(name.name, lines))
        for one in found:
            other = line_quantity(lines[one][1], record)
            if own is None or other is None:
                continue
            count = in_units(other.number, other.unit, own.unit)
            if count is None:
                message = f"line {number} is in {own.unit}, and line {one}, to which it is added, in {other.unit}"
                yield Notice("bad-addition", name.at, message, hints=("measure both in the same way",))
                return
            whole += count
    if own is not None and whole and own.number > whole * (1 + _SLACK):
        message = f"line {number} is added for {own}, and the lines to which it is added have {whole:f} {own.unit}"
        yield Notice("bad-addition", line.here, message, hints=("give it the part that the addition is for",))
