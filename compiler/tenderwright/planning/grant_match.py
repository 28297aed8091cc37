"""Who pays the match of an application: the other sources, surest first, each only what it may pay for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.model.funding import FundingSource
from tenderwright.planning.grant_entries import Entry
from tenderwright.planning.scope import available
from tenderwright.pricing.money import ZERO, total

SURENESS = ("in hand", "promised", "applied for", "hoped for", "")
"""Statuses of money from the surest down."""


@dataclass(frozen=True)
class Drawn:
    """What a source pays towards the match."""

    source: FundingSource
    amount: Decimal

    @property
    def secured(self) -> bool:
        """Tell whether the money is in hand or promised."""
        return self.source.status in ("in hand", "promised")


def draw(entries: Sequence[Entry], sources: Sequence[FundingSource]) -> tuple[Drawn, ...]:
    """Draw the match in money from the sources, surest first, and of equals those first that may pay for least.

    A source pays only for items that it is given for, and kinds of work that it takes. What its own match wants is not
    looked at: whether one funder's money counts as another's match is for their notices.
    """
    open_ = [max(one.match, ZERO) if one.sort != "in kind" else ZERO for one in entries]
    left = total([one.match for one in entries if one.sort != "in kind"])
    drawn: list[Drawn] = []
    for source in sorted(sources, key=_order):
        paid = ZERO
        money = min(free(source), max(left, ZERO))
        for place, entry in enumerate(entries):
            part = min(open_[place], money - paid) if _may_pay(source, entry) else ZERO
            open_[place] -= part
            paid += part
        left -= paid
        if paid:
            drawn.append(Drawn(source, paid))
    return tuple(drawn)


def free(source: FundingSource) -> Decimal:
    """Give what a source brings and has not granted for certain work."""
    return max(available(source) - total([one.amount for one in source.granted]), ZERO)


def _order(source: FundingSource) -> tuple[int, int]:
    return SURENESS.index(source.status), len(source.only) or 10_000


def _may_pay(source: FundingSource, entry: Entry) -> bool:
    number = entry.item.number if entry.item is not None else ""
    if source.only and number not in {one.name for one in source.only}:
        return False
    return not source.eligible or not entry.kind or entry.kind in source.eligible
