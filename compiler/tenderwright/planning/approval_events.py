"""The days of what approvals hold up: as planned, and as the owner's papers record that they came."""

from __future__ import annotations

import math
from collections.abc import Iterator
from datetime import date, timedelta

from msgspec import Struct

from tenderwright.model import approvals as gates
from tenderwright.model.day import Day
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.model.tow import Tow
from tenderwright.planning.schedule import Schedule

_OF_ITEMS = (gates.START, gates.OPEN_FABRIC)
_BY_PHASE = {"before docking": "arrival", "dry": "docking", "after undocking": "undocking", "any": "arrival"}
"""The event of the programme from which work of a phase can begin."""
_PLANNED = {
    gates.AWARD: "award",
    gates.ENTER_DOCK: "docking",
    gates.FLOODING: "undocking",
    gates.DEPARTURE_HOME: "redelivery",
    gates.CLOSE: "redelivery",
}
"""The event of the tender on which what is held up is planned, or from which it can come."""
_OWN_DAY = (gates.PAYMENT, gates.CLAIM, gates.CLOSE, gates.INFORM)
"""What the register may give a day of its own."""
_DAY = 86400.0
_LONGEST = 366
"""Days of a passage beyond which its legs say nothing."""


class Event(Struct, frozen=True):
    """What an approval holds up, with its day."""

    gate: str
    planned: date | None
    happened: date | None = None
    """The day by which it had happened, where the owner's papers record it."""
    items: tuple[str, ...] = ()
    """For the start of items and the opening of fabric, those that come first."""
    begun: tuple[tuple[str, date], ...] = ()
    """Those of the items that had begun, and by when."""

    @property
    def day(self) -> date | None:
        """Give the day on which it came, or else is planned."""
        return self.happened or self.planned


class Events:
    """The days of a docking, as far as the package and the owner's papers tell them."""

    def __init__(self, package: Package, papers: OwnerPapers, schedule: Schedule | None) -> None:
        """Gather them."""
        self.package = package
        self.tender = package.tender
        self.planned = package.tender.events if package.tender is not None else {}
        self.begins = dict(_begins(package, self.planned, papers, schedule))
        self.begun = _begun(papers)
        self.came = _came(package, papers)

    def of(self, gate: str, items: tuple[str, ...], needed: Day | None, spend_by: date | None = None) -> Event:
        """Give what a gate holds up, for items; `needed` is its own day, `spend_by` the last of its source's money."""
        if gate in _OF_ITEMS:
            return self._start(gate, items)
        if gate in _OWN_DAY and needed is not None:
            return Event(gate, needed.on(self.planned))
        planned = self.planned.get(_PLANNED[gate]) if gate in _PLANNED else None
        if gate == gates.ISSUE and self.tender is not None:
            planned = self.tender.dates.issued
        elif gate == gates.DEPARTURE:
            planned = _left(self.planned.get("arrival"), self.package.tow)
        elif gate == gates.PAYMENT:
            planned = min(self._payments(), default=None)
        elif gate == gates.CLAIM:
            planned = spend_by
        return Event(gate, planned, self.came.get(gate))

    def _payments(self) -> Iterator[date]:
        """Yield the days of the payments that have one."""
        for stage in self.package.contract.payments if self.package.contract is not None else ():
            day = stage.on.on(self.planned) if stage.on is not None else self.planned.get(stage.event)
            if day is not None:
                yield day

    def _start(self, gate: str, items: tuple[str, ...]) -> Event:
        """Give the start of the first of some items, or of all; of those that have begun, the first that had."""
        live = [one for one in items or self.begins if one in self.begins]
        day = min((day for one in live if (day := self.begins[one]) is not None), default=None)
        first = tuple(one for one in live if day is not None and self.begins[one] == day)
        begun = tuple(sorted(((one, self.begun[one]) for one in live if one in self.begun), key=lambda pair: pair[1]))
        return Event(gate, day, begun[0][1] if begun else None, first, begun)


def _begins(
    package: Package, planned: dict[str, date | None], papers: OwnerPapers, schedule: Schedule | None
) -> Iterator[tuple[str, date | None]]:
    """Yield each live item with the first day of its activities, or else of its phase.

    Where there is a programme that could not be planned, for a mistake elsewhere, no day is known.
    """
    if schedule is None and papers.programme is not None:
        planned = {}
    by_item: dict[str, date] = {}
    for one in schedule.activities if schedule is not None else ():
        if one.node.item is not None and one.begins is not None:
            number = one.node.item.number
            by_item[number] = min(one.begins, by_item.get(number, date.max))
    for item in package.items:
        if not item.withdrawn:
            yield item.number, by_item.get(item.number, planned.get(_BY_PHASE[item.phase]))


def _begun(papers: OwnerPapers) -> dict[str, date]:
    """Give the day by which each item had begun, by what was measured of it or how far it was told to be."""
    found: dict[str, date] = {}
    for paper in papers.in_dock.values():
        told = [(one.item.name, paper.until) for one in paper.progress if one.done.si > 0]
        told += [(one.line.name.partition(".")[0], one.day or paper.until) for one in paper.measured]
        for number, day in told:
            found[number] = min(day, found.get(number, date.max))
    return found


def _came(package: Package, papers: OwnerPapers) -> dict[str, date]:
    """Give the days of what has happened by the owner's papers and the tender's own addenda."""
    dates = package.tender.dates if package.tender is not None else None
    issued = bool(package.tender is not None and package.tender.addenda) or bool(papers.bids) or bool(papers.award)
    days = [paper.days for _, paper in sorted(papers.in_dock.items())]
    found = {
        gates.ISSUE: dates.issued if issued and dates is not None else None,
        gates.AWARD: papers.award.awarded if papers.award is not None else None,
        gates.DEPARTURE: _left(_last(one.arrived for one in days), package.tow),
        gates.ENTER_DOCK: _last(one.docked for one in days),
        gates.FLOODING: _last(one.undocked for one in days),
        gates.DEPARTURE_HOME: _last(one.departed for one in days),
    }
    return {gate: day for gate, day in found.items() if day is not None}


def _left(arrival: date | None, tow: Tow | None) -> date | None:
    """Give the day on which she leaves for the yard: that of arrival less the days of the passage, if that is known."""
    passage = sum(leg.distance.si / leg.speed.si for leg in tow.out if leg.speed.si > 0) if tow is not None else 0.0
    if arrival is None or passage > _LONGEST * _DAY:
        return None
    return arrival - timedelta(days=math.ceil(passage / _DAY))


def _last(days: Iterator[date | None]) -> date | None:
    return next(reversed([day for day in days if day is not None]), None)


def judged_on(papers: OwnerPapers) -> date | None:
    """Give the last day that the register, the award or the papers from the dock record; None where none does."""
    kept = papers.approvals
    found = [kept.until if kept is not None else None, papers.award.awarded if papers.award is not None else None]
    found += [paper.until for paper in papers.in_dock.values()]
    for one in kept.approvals if kept is not None else ():
        found += [one.asked, one.granted, one.refused, one.not_needed.day if one.not_needed is not None else None]
        found += [condition.met for condition in one.conditions]
    return max((day for day in found if day is not None), default=None)
