"""Restricted money is counted only on work that it may pay for.

Ground: a gift is spent on what it was given for; grants say which kinds of work are eligible (common practice; check
the funder's current notice).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.funding import FundingSource
from tenderwright.model.item import Item
from tenderwright.notices import Notice


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each item named by a source of money that the source cannot pay for."""
    for source in context.papers.funding.sources if context.papers.funding else ():
        for reference in source.only:
            item = context.package.item_by_name.get(reference.name)
            why = _why_not(item, source) if item is not None else ""
            if why:
                message = f"`{source.source}` is to pay for item {reference.name}, {why}"
                hint = "delete the item under `only:`, or ask the funder in writing"
                yield Notice("restricted-money", reference.at, message, hints=(hint,))
        only = {reference.name for reference in source.only}
        for granted in source.granted:
            if only and granted.work.name.split(".")[0] not in only:
                message = f"`{source.source}` has granted money for {granted.work}, and `only:` does not name it"
                hint = "name the item under `only:` too, or correct the number"
                yield Notice("restricted-money", granted.work.at, message, hints=(hint,))


def _why_not(item: Item, source: FundingSource) -> str:
    if item.withdrawn:
        return "which is withdrawn"
    if item.kind in ("information", "owner"):
        return f"which has no price: it is {'the owner’s own work' if item.kind == 'owner' else 'information'}"
    kinds = {item.kind_of(line) for line in item.lines}
    if source.eligible and not kinds & set(source.eligible):
        return f"whose lines are all {' or '.join(sorted(kinds))}, which is not among its `eligible:` kinds"
    return ""
