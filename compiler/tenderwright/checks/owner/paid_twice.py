"""Nothing is paid twice: no more is granted for work than it is estimated at, nor by a source than it gives.

Ground: two funders do not pay for the same cost, and what both paid is given back (common practice; check each funder's
current notice).
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.funding import FundingSource, Granted
from tenderwright.notices import Notice
from tenderwright.pricing.money import ZERO, total, written
from tenderwright.pricing.price import Estimate


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report lines and items for which more is granted than they cost, and sources that grant more than they give."""
    sources = context.papers.funding.sources if context.papers.funding is not None else ()
    for source in sources:
        given = total([one.amount for one in source.granted])
        if given > source.amount:
            message = f"`{source.source}` has granted {written(given)} for its work, and gives {written(source.amount)}"
            hint = "read its letter again, and write for which work it gives how much"
            yield Notice("paid-twice", source.granted[-1].here, message, hints=(hint,))
    if context.estimate is not None:
        yield from _beyond_estimate(sources, context.estimate)


def _beyond_estimate(sources: tuple[FundingSource, ...], estimate: Estimate) -> Iterator[Notice]:
    grants = [(source, one) for source in sources for one in source.granted]
    told: set[str] = set()
    for work, (cost, of) in _costs(estimate).items():
        inside = [(source, one) for source, one in grants if work == one.work.name or work == _item(one)]
        granted = total([one.amount for _, one in inside])
        if granted > max(cost, ZERO) and work not in told:
            told.add(work.split(".")[0])
            by = " and ".join(dict.fromkeys(f"`{source.source}`" for source, _ in inside))
            what = f"{'line' if '.' in work else 'item'} {work}"
            message = f"{by} granted {written(granted)} for {what}, which is estimated at {written(cost)}{of}"
            hint = "tell the funder that was asked last, and write the sum that you agree on with it"
            yield Notice("paid-twice", inside[-1][1].here, message, hints=(hint,))


def _item(granted: Granted) -> str:
    return granted.work.name.split(".")[0]


def _costs(estimate: Estimate) -> dict[str, tuple[Decimal, str]]:
    """Give what each line and item costs, and how that is meant."""
    found = {line.number: (line.amount, "") for line in estimate.lines}
    for one in estimate.items:
        shared = " with the part of the shared services that it carries" if one.shared else ""
        found[one.item.number] = (one.direct + one.shared, shared)
    return found
