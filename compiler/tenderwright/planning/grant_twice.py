"""What several applications of one package count on together: match drawn twice, and costs asked for twice."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.planning.application import Application
from tenderwright.planning.grant_entries import Entry
from tenderwright.planning.grant_match import free
from tenderwright.pricing.money import ZERO


@dataclass(frozen=True)
class Twice:
    """Money or a cost that this application and others count on beyond what there is of it."""

    what: str
    """A source by its identifier, or a line by its number."""
    asked: bool
    """Whether it is a cost that is asked for; else it is money drawn as match."""
    here: Decimal
    elsewhere: Decimal
    others: tuple[str, ...]
    """The other applications, by the names of their files."""
    most: Decimal


def twice(applied: Application, others: Mapping[str, Application]) -> tuple[Twice, ...]:
    """Find what this application and the others together draw or ask beyond what there is."""
    drawn = _beyond(
        {one.source.source: (one.amount, free(one.source)) for one in applied.drawn},
        {name: {one.source.source: one.amount for one in other.drawn} for name, other in others.items()},
        asked=False,
    )
    lines = {one.number: (one.grant, one.left) for one in applied.entries if _is_line(one)}
    elsewhere = {name: _lines(other) for name, other in others.items()}
    return (*drawn, *_beyond(lines, elsewhere, asked=True))


def _is_line(entry: Entry) -> bool:
    return entry.sort == "work" and not entry.contingency


def _lines(applied: Application) -> dict[str, Decimal]:
    return {one.number: one.grant for one in applied.entries if _is_line(one)}


def _beyond(
    here: Mapping[str, tuple[Decimal, Decimal]], elsewhere: Mapping[str, Mapping[str, Decimal]], *, asked: bool
) -> list[Twice]:
    found = []
    for what, (amount, most) in here.items():
        there = {name: one[what] for name, one in elsewhere.items() if one.get(what, ZERO)}
        if amount and there and amount + sum(there.values(), ZERO) > most:
            found.append(Twice(what, asked, amount, sum(there.values(), ZERO), tuple(there), most))
    return found
