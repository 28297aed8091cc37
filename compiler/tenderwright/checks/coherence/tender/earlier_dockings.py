"""What is told of earlier dockings holds together: prices with their growth, and what was put off.

Ground: derived; how far one docking may be from another: common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from tenderwright.checks.context import Context
from tenderwright.model.history import EarlierDocking
from tenderwright.notices import Note, Notice

CODE = "history-unlike"
_YEAR = re.compile(r"\b(1[5-9]|2[0-9])[0-9]{2}\b")
_APART = 12
"""How many times dearer the same item was at one docking than at another, at the most."""
_MOST = Decimal("0.8")
"""The greatest share that one price has of five or more."""
_YEARS = 25
"""How many years two dockings may be apart for their prices to be compared."""


def check(context: Context) -> Iterator[Notice]:
    """Report what an earlier docking of this ship cannot have been."""
    for docking in context.package.history:
        yield from _prices(context, docking)
        for index, one in enumerate(docking.deferred):
            years = [int(year.group()) for year in _YEAR.finditer(one.by)]
            if years and max(years) < docking.undocked.year:
                message = f"`{one.what}` was put off in {docking.undocked.year} until {one.by}"
                yield Notice(CODE, context.at(docking.here.path, "deferred", index, "by"), message)
    yield from _same_item(context)


def _prices(context: Context, docking: EarlierDocking) -> Iterator[Notice]:
    whole = sum((abs(paid.amount) for paid in docking.prices), Decimal(0))
    for index, paid in enumerate(docking.prices):
        if len(docking.prices) > 4 and abs(paid.amount) > _MOST * whole:
            message = f"`{paid.work}` cost {paid.amount}, and all that is listed {whole}"
            yield Notice(CODE, context.at(docking.here.path, "prices", index, "amount"), message)
        if paid.growth is not None and abs(paid.growth) > abs(paid.amount):
            message = f"`{paid.work}` grew by {paid.growth}, and {paid.amount} was paid for it in all"
            yield Notice(CODE, context.at(docking.here.path, "prices", index, "growth"), message)


def _same_item(context: Context) -> Iterator[Notice]:
    """Report what was paid for one item at two dockings, where the one is many times the other."""
    seen: dict[tuple[str, str, str], list[tuple[EarlierDocking, int]]] = {}
    for docking in context.package.history:
        for index, paid in enumerate(docking.prices):
            if paid.item is not None and paid.quantity.startswith("1 ") and paid.amount > 0:
                seen.setdefault((paid.item.name, paid.quantity, docking.currency), []).append((docking, index))
    for (item, _, _), paid_for in seen.items():
        if len(paid_for) != 2:
            continue
        (one, at), (other, elsewhere) = sorted(paid_for, key=lambda pair: pair[0].prices[pair[1]].amount)
        low, high = one.prices[at].amount, other.prices[elsewhere].amount
        if high > _APART * low and abs(one.docked.year - other.docked.year) <= _YEARS:
            message = f"item {item} cost {low} in {one.docked.year}, and {high} in {other.docked.year}"
            note = Note("the other price stands here", context.at(other.here.path, "prices", elsewhere, "amount"))
            yield Notice(CODE, context.at(one.here.path, "prices", at, "amount"), message, (note,))
