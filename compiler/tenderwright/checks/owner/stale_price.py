"""A price paid before is not older than its index can carry.

Ground: old prices need adjusting for terms, quantity and market, and stale ones may be no valid basis (FAR
15.404-1(b)(2)(ii)); how far an index carries is the owner's judgement, written with the index.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice

_YEAR = 365.25 * 86400


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each price of an earlier docking that is older than its index carries."""
    rates, indices = context.papers.rates, context.papers.indices
    if rates is None or indices is None:
        return
    by_name = {index.index: index for index in indices.indices}
    dockings = {docking.docking: docking for docking in context.package.history}
    year, month = (int(part) for part in rates.base_month.split("-"))
    for number, rate in rates.lines.items():
        if rate.history is None:
            continue
        index = by_name.get(rate.history.index or rates.index)
        docking = dockings.get(rate.history.docking.name)
        if index is None or index.carries is None or docking is None:
            continue
        age = (year - docking.undocked.year) + (month - docking.undocked.month) / 12
        if age * _YEAR > index.carries.si:
            message = (
                f"line {number} takes a price {age:.0f} years old, and `{index.index}` carries one for {index.carries}"
            )
            hint = "ask a yard for a price, or build it from man-hours"
            yield Notice("stale-price", rate.history.here, message, hints=(hint,))
