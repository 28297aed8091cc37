"""Which lines of the price form came, went or changed; their numbers are those of the items and never move."""

from __future__ import annotations

from dataclasses import dataclass, fields
from decimal import Decimal

from tenderwright.comparing.change import Manner
from tenderwright.comparing.redline import editorial
from tenderwright.comparing.side import Side
from tenderwright.model.item import Item, Line
from tenderwright.pricing.described import described
from tenderwright.pricing.quantity import line_quantity
from tenderwright.pricing.sections import section_of


@dataclass(frozen=True)
class PricedLine:
    """A line as the price form asks for it."""

    number: str
    """Such as `420.a`."""
    words: str
    section: str
    kind: str
    price: str
    """Form of price: lump, rate, day, hours, fixed, markup or percent."""
    quantity: Decimal
    unit: str
    basis: str
    amount: Decimal | None = None
    """The owner's fixed sum, or the materials allowance."""


@dataclass(frozen=True)
class FormChange:
    """A line that came, went or changed, what differs in it, and whether that can affect price."""

    number: str
    manner: Manner
    old: PricedLine | None
    new: PricedLine | None
    differs: tuple[str, ...]
    price: bool


def form_changes(before: Side, after: Side) -> tuple[FormChange, ...]:
    """Find the lines that differ, in the order of their numbers."""
    old, new = priced_lines(before), priced_lines(after)
    found = []
    for number in sorted(old.keys() | new.keys(), key=_order):
        one, other = old.get(number), new.get(number)
        if one == other:
            continue
        differs = _differs(one, other) if one and other else ()
        manner: Manner = "changed" if one and other else _gone(number, after) if one else "added"
        found.append(FormChange(number, manner, one, other, differs, _bears(one, other, differs)))
    return tuple(found)


def _gone(number: str, after: Side) -> Manner:
    """Tell whether a line that is no longer priced is withdrawn, by itself or with its item, or is not there at all."""
    name, _, letter = number.partition(".")
    item = after.package.item_by_name.get(name)
    apart = {line.line for line in after.package.withdrawn_lines.get(name, ())}
    return "withdrawn" if item is not None and (item.withdrawn or letter.partition(".")[0] in apart) else "removed"


def priced_lines(side: Side) -> dict[str, PricedLine]:
    """Give every line of the price form by its number; items withdrawn have none."""
    return {
        line.number: line
        for item in side.package.items
        if not item.withdrawn
        for line in (_printed(side, item, one) for one in item.lines)
    }


def _printed(side: Side, item: Item, line: Line) -> PricedLine:
    tender, quantity = side.package.tender, line_quantity(line, side.record)
    return PricedLine(
        f"{item.number}.{line.line}",
        described(item, line),
        section_of(item, line, tender).code if tender else "",
        item.kind_of(line),
        line.price,
        quantity.number if quantity else Decimal(0),
        quantity.unit if quantity else "",
        quantity.basis if quantity else "",
        line.amount,
    )


def _differs(one: PricedLine, other: PricedLine) -> tuple[str, ...]:
    return tuple(f.name for f in fields(PricedLine) if getattr(one, f.name) != getattr(other, f.name))


def _bears(one: PricedLine | None, other: PricedLine | None, differs: tuple[str, ...]) -> bool:
    if one is None or other is None or differs != ("words",):
        return True
    return not editorial(one.words, other.words)


def _order(number: str) -> tuple[int, int, str]:
    item, _, letter = number.partition(".")
    return int(item), len(letter), letter
