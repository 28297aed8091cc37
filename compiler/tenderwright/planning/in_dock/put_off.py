"""What can still be left out or put off on a day in dock, what that saves, and what follows from it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from tenderwright.model.funding import Scope
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.planning.in_dock.live import begun, live_items, needed_by, needs_of, wholly_out, work_rows
from tenderwright.planning.in_dock.remaining import days_needed
from tenderwright.planning.schedule import Schedule
from tenderwright.planning.scope import must_do
from tenderwright.pricing.in_dock.account import RunningAccount
from tenderwright.pricing.money import total


@dataclass(frozen=True)
class PutOff:
    """An item that can still be put off."""

    item: Item
    saving: Decimal
    """Its lines at the rates of the bid, with what was ordered by them."""
    days: float | None
    """By how much the days that the work left needs on blocks grow shorter; None without a programme."""
    frees: tuple[str, ...]
    """Items that no other then needs."""
    opens: tuple[str, ...]
    """Items that it excludes, which could then be done."""


def can_be_put_off(
    made: RunningAccount, package: Package, scope: Scope | None, schedule: Schedule | None, *, docked: bool
) -> tuple[PutOff, ...]:
    """List what can still be put off, the greatest saving first; nothing where no scope says what must be done.

    An item can be put off while it has not begun, unless it must be done, or another that is to be done needs it. Its
    saving is what stands for its lines in the account, where that is more than nothing.
    """
    if scope is None:
        return ()
    done, out, must = made.ledger.done(made.on), wholly_out(made), must_do(scope)
    live, rows = live_items(made, package), work_rows(made)
    needed = days_needed(schedule, done, out, docked=docked) if schedule is not None else None
    found = []
    for item in live:
        number = item.number
        saving = total([row.final for row in rows.get(number, [])])
        if saving <= 0 or number in must or begun(made, number) or needed_by(number, live, scope, done):
            continue
        days = None
        if schedule is not None and needed is not None:
            days = needed - days_needed(schedule, done, {*out, number}, docked=docked)
        rest = [one for one in live if one is not item]
        worth = scope.items.get(number)
        found.append(
            PutOff(
                item,
                saving,
                days,
                tuple(
                    name
                    for name in sorted(needs_of(item, scope), key=int)
                    if name not in must
                    and any(one.number == name for one in rest)
                    and not begun(made, name)
                    and not needed_by(name, rest, scope, done)
                ),
                tuple(one.name for one in (worth.excludes if worth is not None else ())),
            )
        )
    return tuple(sorted(found, key=lambda one: (-one.saving, one.item.item)))
