"""The quantity tendered lies within the range that the owner gives it.

Ground: a range that does not hold the likeliest quantity is out of date, mostly since a survey changed the quantity
that the line takes (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.pricing.quantity_range import counted


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each line whose tendered quantity lies beyond the range written for it."""
    if context.estimate is None or context.papers.rates is None:
        return
    for line in context.estimate.lines:
        rate = context.papers.rates.of(line.number)
        if rate is None:
            continue
        low, high = (
            counted(end, line.quantity.unit) if end else None for end in (rate.quantity_low, rate.quantity_high)
        )
        if (low is not None and line.quantity.number < low) or (high is not None and line.quantity.number > high):
            told = f"{rate.quantity_low or 'nothing'} to {rate.quantity_high or 'what is tendered'}"
            message = f"line {line.number}: the quantity tendered, {line.quantity}, lies beyond its range, {told}"
            hint = "bring `quantity_low` and `quantity_high` up to date with the survey"
            yield Notice("quantity-outside-range", rate.here, message, hints=(hint,))
