"""Measured quantities outside the range about those tendered within which the rates of the contract hold."""

from __future__ import annotations

from decimal import Decimal

from msgspec import Struct

from tenderwright.pricing.in_dock.account import RunningAccount
from tenderwright.pricing.in_dock.contract import ContractLine
from tenderwright.pricing.in_dock.ledger import Remeasure


class Outside(Struct, frozen=True):
    """A line whose measured quantity lies outside the range."""

    line: ContractLine
    measured: Remeasure
    share: Decimal
    """Measured over tendered."""


def outside_range(made: RunningAccount) -> tuple[Outside, ...]:
    """Give the lines measured outside the range of the award: above it at once, below it once their item is done.

    share = measured / tendered. Lines of the hours pool are not measured on the ship; nothing where the award names
    no range.
    """
    award = made.ledger.contract.award
    if award.rates_hold is None:
        return ()
    low, high = (Decimal(repr(end.si)) for end in (award.rates_hold.from_, award.rates_hold.to))
    afloat = made.ledger.actual(made.on).undocked is not None
    done = made.ledger.done(made.on)
    found = []
    for measured in {one.line.number: one for one in made.ledger.measured if one.day <= made.on}.values():
        line = measured.line
        if line.number in made.ledger.contract.pool or line.tendered <= 0:
            continue
        share = measured.quantity / line.tendered
        final = afloat or done.get(line.item.number, 0.0) >= 1.0
        if share > high or (final and share < low):
            found.append(Outside(line, measured, share))
    return tuple(found)
