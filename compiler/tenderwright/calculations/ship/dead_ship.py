"""How long it takes until she could float, with the openings that the work has open."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked
from tenderwright.calculations.steps.step import step
from tenderwright.model.item import Item
from tenderwright.model.tow import ClosingTime, Tow
from tenderwright.model.vessel import Opening

OPENS = ("opens hull", "removes plug")
PLATE = "shell plate"


class OpenHole(Struct, frozen=True):
    """An opening that an item has open while she is dry."""

    item: str
    name: str
    kind: str
    time: float | None
    """To close it in haste, by one gang, s; None where nobody has said."""
    how: str


class Floatable(Struct, frozen=True):
    """What is open at the worst hour, and how long it takes until she could float."""

    holes: tuple[OpenHole, ...]
    without_time: tuple[str, ...]
    """Kinds of opening of which nobody has said how long they take."""
    closing: float | None
    """To close them all, by the gangs there are, s; None where that is not known."""
    gangs: int
    floating: float | None
    """From there until she floats, s."""

    @property
    def hours(self) -> float | None:
        """Give the whole time until she floats, s; None where a part of it is not known."""
        return None if self.closing is None or self.floating is None else self.closing + self.floating


@step(lazy=True)
def floatable(tow: Tow | None, items: tuple[Item, ...], openings: tuple[Opening, ...]) -> Floatable | Absent:
    """Sum up what the items have open at once, were all of them at work, and how long it takes to close."""
    plan = tow.in_dock if tow is not None else None
    if plan is None:
        return Lacking("it needs `in_dock` in tow.yaml: how long each kind of opening takes to close, and to flood")
    named, times = {one.opening: one for one in openings}, {one.kind: one for one in plan.closing}
    holes: dict[tuple[str, str], OpenHole] = {}
    for item in items:
        if item.withdrawn or item.kind in ("information", "option") or not set(item.does) & set(OPENS):
            continue
        for reference in item.where.openings:
            opening = named.get(reference.name)
            if opening is not None:
                holes.setdefault((opening.opening, ""), _hole(item, opening.name, opening.kind, times))
        if not item.where.openings:
            holes[item.number, PLATE] = _hole(item, item.title, PLATE, times)
    if not holes:
        return NotAsked("no item opens the hull")
    found = tuple(holes.values())
    lacking = tuple(dict.fromkeys(one.kind for one in found if one.time is None))
    gangs = plan.gangs or 1
    sum_ = sum(one.time or 0.0 for one in found) / gangs
    return Floatable(found, lacking, None if lacking else sum_, gangs, plan.flooding.si if plan.flooding else None)


def _hole(item: Item, name: str, kind: str, times: Mapping[str, ClosingTime]) -> OpenHole:
    one = times.get(kind)
    time, how = (one.each.si, one.how) if one is not None else (None, "")
    return OpenHole(item.number, name, kind, time, how)
