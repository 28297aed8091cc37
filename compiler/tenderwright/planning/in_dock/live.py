"""Which items are still to be done on a day in dock, and which of them need others."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.model.funding import Scope
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.pricing.in_dock.account import LineAccount, RunningAccount


def lines_by_item(made: RunningAccount) -> dict[str, list[LineAccount]]:
    """Give the lines of an account by item."""
    found: dict[str, list[LineAccount]] = {}
    for row in made.lines:
        found.setdefault(row.line.item.number, []).append(row)
    return found


def work_rows(made: RunningAccount) -> dict[str, list[LineAccount]]:
    """Give by item the lines of work that can be done or not: without the hours pool and the further days in dock."""
    contract = made.ledger.contract
    apart = {*contract.pool, contract.markup, contract.days_line}
    return {
        item: kept
        for item, rows in lines_by_item(made).items()
        if (kept := [row for row in rows if row.line.number not in apart])
    }


def wholly_out(made: RunningAccount) -> frozenset[str]:
    """Give the items that were left out as a whole: every line of them that the contract held, or might have held."""
    out = made.ledger.out(made.on)
    return frozenset(item for item, rows in lines_by_item(made).items() if all(row.line.number in out for row in rows))


def live_items(made: RunningAccount, package: Package) -> tuple[Item, ...]:
    """Give the items that are to be done: not withdrawn, not left out, and no option or dropped item unless ordered."""
    rows, out = lines_by_item(made), wholly_out(made)
    found = []
    for item in package.items:
        own = rows.get(item.number, [])
        idle = bool(own) and not any(row.line.inside or row.changes or row.measured for row in own)
        dropped = item.number in {one.name for one in made.ledger.contract.award.dropped}
        if not item.withdrawn and item.number not in out and not (idle and (item.kind == "option" or dropped)):
            found.append(item)
    return tuple(found)


def needs_of(item: Item, scope: Scope | None) -> frozenset[str]:
    """Give the items that an item is not done without: as the owner's scope says, else those that it comes after."""
    worth = scope.items.get(item.number) if scope is not None else None
    return frozenset(one.name for one in (worth.needs if worth is not None else item.depends_on))


def needed_by(number: str, items: Sequence[Item], scope: Scope | None, done: dict[str, float]) -> list[str]:
    """Give the items, of some that are to be done, that need another and are not finished."""
    return [
        item.number
        for item in items
        if item.number != number and done.get(item.number, 0.0) < 1.0 and number in needs_of(item, scope)
    ]


def begun(made: RunningAccount, number: str) -> bool:
    """Tell whether an item has begun: progress is told of it, or some of it was measured."""
    rows = lines_by_item(made).get(number, [])
    return made.ledger.done(made.on).get(number, 0.0) > 0.0 or any(row.measured for row in rows)
