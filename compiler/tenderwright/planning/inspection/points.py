"""The inspection points of a tender: holds and witness points, tests and reports of its items, in one list."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from tenderwright.model.build import Prose
from tenderwright.model.day import Day
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.quantities.quantity import Quantity

Before = Literal["docking", "flooding", "departure"]


class Point(Struct, frozen=True):
    """Something that is inspected, tested or handed over, and signed."""

    item: Item
    number: str
    """Within the item: `H1` as the item numbers it, `T1` for its first test, `R1` for its first report."""
    code: Literal["H", "W", "P", "R"]
    """Hold, witness, performed by the yard as a test, or review of a report."""
    what: str
    who: tuple[str, ...] = ()
    """Who attends or reviews, beside the yard, which performs all of it."""
    notice: Quantity | None = None
    accept: Prose | None = None
    when: str = ""
    record: str = ""
    due: Day | None = None
    before: Before | None = None
    """What may not happen until it is released; None for what holds nothing up."""

    @property
    def name(self) -> str:
        """Give its name in the plan, such as `420 H1`."""
        return f"{self.item.number} {self.number}"


def points_of(package: Package) -> tuple[Point, ...]:
    """List the points of all items that are not withdrawn, item by item: holds, then tests, then reports."""
    return tuple(point for item in package.items if not item.withdrawn for point in points_of_item(item))


def points_of_item(item: Item) -> list[Point]:
    """List the points of an item: holds, then tests, then reports."""
    found = [
        Point(
            item,
            hold.hold,
            "H" if hold.kind == "hold" else "W",
            hold.at,
            hold.by,
            hold.notice,
            hold.accept,
            record=hold.record,
            before=_before(item, hold.release_before) if hold.kind == "hold" else None,
        )
        for hold in item.holds
    ]
    found += [
        Point(item, f"T{n}", "P", test.test, accept=test.accept, when=test.when)
        for n, test in enumerate(item.tests, start=1)
    ]
    found += [
        Point(item, f"R{n}", "R", one.report, ("owner",), record=one.copies, due=one.due)
        for n, one in enumerate(item.reports, start=1)
    ]
    return found


def _before(item: Item, said: str) -> Before:
    """Give what waits for a hold: as it says, else flooding for all work that begins before she floats again."""
    known: dict[str, Before] = {"docking": "docking", "flooding": "flooding", "departure": "departure"}
    return known.get(said) or ("departure" if item.phase == "after undocking" else "flooding")
