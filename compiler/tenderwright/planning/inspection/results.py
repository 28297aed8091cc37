"""What is released and what is still open of the inspection plan and the register, by the papers from the dock."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.model.in_dock import InDock
from tenderwright.model.inspected import InspectionResult, RegisterEntry
from tenderwright.model.package import Package
from tenderwright.planning.inspection.figure import asked_of
from tenderwright.planning.inspection.points import Point, points_of
from tenderwright.planning.inspection.register import RegisterRow, register_of

PointState = Literal["open", "passed in part", "failed", "signed once", "not signed", "passed", "not reached"]
RowState = Literal["not seen", "open", "closed, not tested", "failed", "signed once", "not signed", "signed"]


class PointResult(Struct, frozen=True):
    """A point with what the papers tell of it."""

    point: Point
    told: tuple[InspectionResult, ...] = ()
    """In order of their days."""

    @property
    def state(self) -> PointState:
        """Give how it stands: a hold is passed only when it is signed for the yard and for the owner."""
        last = {one.where: one for one in self.told}
        if any(one.result == "failed" for one in last.values()):
            return "failed"
        whole = last.get("") or next((one for one in reversed(self.told) if one.result != "passed in part"), None)
        if whole is None or whole.result == "passed in part":
            return "passed in part" if self.told else "open"
        signed = signatures(whole) if self.point.code == "H" else 2
        if signed < 2:
            return "signed once" if signed else "not signed"
        return "passed" if whole.result == "passed" else "not reached"

    @property
    def open(self) -> bool:
        """Tell whether anything of it is still to come."""
        return self.state not in ("passed", "not reached")

    @property
    def last(self) -> InspectionResult | None:
        """Give what was told of it last."""
        return self.told[-1] if self.told else None


class RowResult(Struct, frozen=True):
    """A row of the register with what the papers tell of it, or one hole of a row."""

    row: RegisterRow
    told: tuple[RegisterEntry, ...] = ()
    hole: str = ""

    def said(self, key: Literal["opened", "closed", "tested"]) -> date | None:
        """Give the last day that is told of one thing."""
        days = ({"opened": one.opened, "closed": one.closed, "tested": one.tested}[key] for one in reversed(self.told))
        return next((day for day in days if day is not None), None)

    def signed_by(self, side: Literal["yard", "owner"]) -> str:
        """Give who signed last for a side; empty where nobody did."""
        return next((name for one in reversed(self.told) if (name := one.yard if side == "yard" else one.owner)), "")

    @property
    def state(self) -> RowState:
        """Give how it stands: what was opened is to be closed, tested where it is to be tight, and signed twice."""
        if not self.told:
            return "open" if self.row.kind == "shell" else "not seen"
        opened, closed = self.said("opened"), self.said("closed")
        if opened is not None and (closed is None or closed < opened):
            return "open"
        result = next((one.result for one in reversed(self.told) if one.result), "")
        if result == "failed":
            return "failed"
        if opened is not None and self.row.tested_by and result != "passed":
            return "closed, not tested"
        signed = _signed(self.signed_by("yard"), self.signed_by("owner"))
        return "signed" if signed == 2 else "signed once" if signed else "not signed"

    @property
    def open(self) -> bool:
        """Tell whether anything of it is still to come."""
        return self.state != "signed"


class Inspected(Struct, frozen=True):
    """All points and rows with what is told of them."""

    points: tuple[PointResult, ...]
    rows: tuple[RowResult, ...]

    @property
    def in_use(self) -> bool:
        """Tell whether anything is told of any of them."""
        return any(one.told for one in self.points) or any(one.told for one in self.rows)

    @property
    def still_open(self) -> tuple[PointResult | RowResult, ...]:
        """Give all points and rows that are open."""
        return (*(one for one in self.points if one.open), *(one for one in self.rows if one.open))

    def keeping_from(self, *events: str) -> tuple[PointResult | RowResult, ...]:
        """Give the holds that are to be released before some events, and with flooding the rows, that are open."""
        holds = [one for one in self.points if one.open and one.point.before in events]
        rows = [one for one in self.rows if one.open] if "flooding" in events else []
        return (*holds, *rows)


def signatures(one: InspectionResult | RegisterEntry) -> int:
    """Count the people who signed: nobody signs for both sides."""
    return _signed(one.yard, one.owner)


def _signed(yard: str, owner: str) -> int:
    return len({name.casefold() for name in (yard.strip(), owner.strip()) if name})


def inspected(package: Package, told: Iterable[InDock], numbers: Iterable[str], on: date | None = None) -> Inspected:
    """Put what the papers tell, up to a day where one is given, to the points and rows of some items.

    Of other items there is only what the papers tell of, for work that is not ordered asks for no inspection.
    """
    papers, live = sorted(told, key=lambda one: (one.until, one.here)), set(numbers)
    results: dict[tuple[str, str], list[InspectionResult]] = {}
    for one in sorted((each for paper in papers for each in paper.inspections), key=lambda each: each.day):
        if on is None or one.day <= on:
            results.setdefault((one.item.name, one.point.name), []).append(one)
    entries: dict[tuple[str, str], list[RegisterEntry]] = {}
    for entry in (each for paper in papers for each in paper.openings):
        kept = _until(entry, on)
        if kept is not None:
            entries.setdefault(key_of(entry), []).append(kept)
    points = [PointResult(one, tuple(results.get((one.item.number, one.number), ()))) for one in points_of(package)]
    rows = [made for row in register_of(package) for made in _row(row, entries.get(row.key, ()), live)]
    return Inspected(tuple(one for one in points if one.told or one.point.item.number in live), tuple(rows))


def key_of(entry: RegisterEntry) -> tuple[str, str]:
    """Give what the row is found by that an entry is about; its kind is empty where it names none."""
    return entry.named[0] if entry.named else ("", "")


def _until(entry: RegisterEntry, on: date | None) -> RegisterEntry | None:
    """Leave out of an entry what had not come by a day; signatures stand where nothing of it is later."""
    days = (entry.opened, entry.closed, entry.tested)
    if on is None or not any(day is not None and day > on for day in days):
        return entry
    if all(day is None or day > on for day in days):
        return None
    kept = {
        key: day if day is None or day <= on else None
        for key, day in zip(("opened", "closed", "tested"), days, strict=True)
    }
    return replace(entry, **kept, result="", yard="", owner="")


def _row(row: RegisterRow, told: Sequence[RegisterEntry], live: set[str]) -> list[RowResult]:
    """Give a row, or the holes of one where they are told of one by one.

    Plates, anodes and blocks of work that is not ordered have no row; plugs and manholes are seen all the same.
    """
    if not told and row.kind not in ("opening", "tank") and not any(item.number in live for item in row.opened_by):
        return []
    holes: dict[str, list[RegisterEntry]] = {}
    for one in told:
        holes.setdefault(one.hole, []).append(one)
    if not any(holes):
        return [RowResult(row, tuple(told))]
    whole = holes.get("")
    singles = [RowResult(row, tuple(of), hole) for hole, of in sorted(holes.items()) if hole]
    return [*([RowResult(row, tuple(whole))] if whole else []), *singles]


def misses(point: Point, one: InspectionResult) -> str:
    """Give the words of the figure that a value misses; nothing where it passes, or no one figure measures the same."""
    if one.value is None or point.accept is None:
        return ""
    asked = asked_of(point.accept.text, one.value)
    return "" if asked is None or asked.passes(one.value.si) else asked.words
