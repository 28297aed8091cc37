"""What was paid at earlier dockings holds together, each price with its growth and beside the others.

Ground: derived; how far one docking may be from another: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from decimal import Decimal

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.closing import Closing
from tenderwright.notices import Note, Notice

CODE = "history-unlike"
_APART = 12
"""How many times dearer the same item was at one docking than at another, at the most."""
_MOST = Decimal("0.8")
"""The greatest share that one price has of five or more."""
_YEARS = 25
"""How many years two dockings may be apart for their prices to be compared."""


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report prices that cannot have been paid for this ship."""
    for path, closing in context.papers.closings.items():
        yield from _prices(context, path, closing)
    yield from _same_item(context)


def _prices(context: OwnerContext, path: str, closing: Closing) -> Iterator[Notice]:
    whole = sum((abs(paid.amount) for paid in closing.prices), Decimal(0))
    for index, paid in enumerate(closing.prices):
        if len(closing.prices) > 4 and abs(paid.amount) > _MOST * whole:
            message = f"`{paid.work}` cost {paid.amount}, and all that is listed {whole}"
            yield Notice(CODE, context.at(path, "prices", index, "amount"), message)
        if paid.growth is not None and abs(paid.growth) > abs(paid.amount):
            message = f"`{paid.work}` grew by {paid.growth}, and {paid.amount} was paid for it in all"
            yield Notice(CODE, context.at(path, "prices", index, "growth"), message)


def _same_item(context: OwnerContext) -> Iterator[Notice]:
    """Report what was paid for one item at two dockings, where the one is many times the other."""
    docked = {one.docking: one.docked for one in context.package.history}
    seen: dict[tuple[str, str, str], list[tuple[Decimal, date, tuple[str, int]]]] = {}
    for path, closing in context.papers.closings.items():
        for index, paid in enumerate(closing.prices if closing.docking.name in docked else ()):
            if paid.item is not None and paid.quantity.startswith("1 ") and paid.amount > 0:
                key = (paid.item.name, paid.quantity, closing.currency)
                seen.setdefault(key, []).append((paid.amount, docked[closing.docking.name], (path, index)))
    for (item, _, _), paid_for in seen.items():
        if len(paid_for) != 2:
            continue
        (low, then, (path, at)), (high, when, (other, elsewhere)) = sorted(paid_for, key=lambda one: one[0])
        if high > _APART * low and abs(then.year - when.year) <= _YEARS:
            message = f"item {item} cost {low} in {then.year}, and {high} in {when.year}"
            note = Note("the other price is here", context.at(other, "prices", elsewhere, "amount"))
            yield Notice(CODE, context.at(path, "prices", at, "amount"), message, (note,))
