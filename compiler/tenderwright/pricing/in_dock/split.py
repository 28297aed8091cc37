"""Changes that belong together and are each below a limit of signature which they pass as one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from decimal import Decimal

from msgspec import Struct

from tenderwright.pricing.in_dock.ledger import Ledger, PricedChange
from tenderwright.pricing.money import total

DAYS = 14
"""Days within which changes to one line for one item are taken as one (common practice, no source)."""


class Split(Struct, frozen=True):
    """Changes signed by one office that would have been beyond its limit as one."""

    who: str
    up_to: Decimal
    what: str
    """What they have in common."""
    changes: tuple[PricedChange, ...]

    @property
    def amount(self) -> Decimal:
        """Give what they come to together."""
        return total([one.amount for one in self.changes])


def splits(ledger: Ledger, on: date) -> tuple[Split, ...]:
    """Find changes of one report, or to one line for one item within `DAYS`, that together pass who signed them."""
    together: dict[tuple[str, str], list[PricedChange]] = {}
    for one in sorted((one for one in ledger.changes if one.signed_by(on)), key=_signed):
        who = one.order.by.name if one.order.by is not None else ""
        authority = ledger.contract.award.may_sign(who)
        if authority is None or authority.up_to is None or not 0 < one.amount <= authority.up_to:
            continue
        if one.order.condition is not None:
            together.setdefault((who, f"report {one.order.condition}"), []).append(one)
        together.setdefault((who, f"line {one.line.number} for item {one.item.number}"), []).append(one)
    return tuple(_passing(together, ledger))


def _passing(together: Mapping[tuple[str, str], list[PricedChange]], ledger: Ledger) -> Iterator[Split]:
    told: set[tuple[str, ...]] = set()
    for (who, what), changes in together.items():
        authority = ledger.contract.award.may_sign(who)
        groups = [changes] if what.startswith("report ") else _near(changes)
        for group in groups:
            names = tuple(one.name for one in group)
            limit = authority.up_to if authority is not None else None
            if limit is not None and total([one.amount for one in group]) > limit and names not in told:
                told.add(names)
                yield Split(who, limit, what, tuple(group))


def _near(changes: list[PricedChange]) -> list[list[PricedChange]]:
    """Part changes in order of days into those that lie within `DAYS` of the first of each."""
    groups: list[list[PricedChange]] = []
    for one in changes:
        if groups and (_signed(one) - _signed(groups[-1][0])).days <= DAYS:
            groups[-1].append(one)
        else:
            groups.append([one])
    return groups


def _signed(change: PricedChange) -> date:
    return change.order.signed or change.order.day
