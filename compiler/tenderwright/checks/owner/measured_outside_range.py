"""A quantity measured outside the range within which its rate holds has been settled with the yard.

Ground: outside 85 % to 115 % of an estimated quantity either side may ask for another rate for the part beyond
(FAR 52.211-18); the range is that of the contract at hand, and settling it late is settling it dearly (common practice,
no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.pricing.in_dock.outside_range import outside_range


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each measured quantity outside the range of the award of which nothing is agreed."""
    made = context.account
    hold = made.ledger.contract.award.rates_hold if made is not None else None
    if made is None or hold is None:
        return
    for one in outside_range(made):
        if one.measured.told.rate_agreed:
            continue
        line = one.line
        message = (
            f"{one.measured.quantity:f} {line.unit} of line {line.number} are measured, {100 * one.share:.0f} % of the "
            f"{line.tendered:f} {line.unit} tendered, and its rate holds from {hold.from_} to {hold.to}"
        )
        hint = "settle with the yard whether the rate stays for the part outside, and write it under `rate_agreed`"
        yield Notice("measured-outside-range", one.measured.told.here, message, hints=(hint,))
