"""The schedule at likely durations: dates, floats, the critical path and why each activity starts when it does."""

from __future__ import annotations

import math
from datetime import date, timedelta
from functools import cached_property

from msgspec import Struct

from tenderwright.calculations.schedule.crews import crew_links
from tenderwright.calculations.schedule.critical_path import Path, critical_path
from tenderwright.calculations.value import Record
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.planning.network import REDELIVERY, Link, Network, Node, network

_PART = 1e-6
"""A part of a day within which two times are one."""


class Scheduled(Struct, frozen=True):
    """An activity with its days from arrival, its float and its dates."""

    place: int
    node: Node
    start: float
    finish: float
    latest_start: float
    total_float: float
    free_float: float
    critical: bool
    begins: date | None
    ends: date | None
    driven_by: tuple[Link, ...]
    """What it waits for to the last."""


class Schedule(Struct, frozen=True, dict=True):
    """The programme laid out from the day of arrival."""

    network: Network
    """With the links by which crews go from one activity to the next."""
    path: Path
    arrival: date | None
    dock_days_tendered: int | None

    @cached_property
    def activities(self) -> tuple[Scheduled, ...]:
        """Give every activity in the order in which it starts, milestones too."""
        rows = [self._scheduled(place) for place in range(len(self.network.nodes))]
        return tuple(sorted(rows, key=lambda one: (one.start, one.finish, one.place)))

    @property
    def dock_days(self) -> float:
        """Give the days on blocks: from the end of docking to the end of undocking."""
        return dock_days(self.network, self.path.early_finish)

    @property
    def yard_days(self) -> float:
        """Give the days from arrival to redelivery."""
        return self.path.early_finish[self.network.index[REDELIVERY]]

    def critical_chain(self, through: Scheduled | None = None) -> list[Scheduled]:
        """Follow the critical path from arrival to redelivery, by what each activity waits for to the last.

        Where the path has branches, the one that goes through an activity, if it is critical.
        """
        by_place = {one.place: one for one in self.activities}
        here = through or by_place[self.network.index[REDELIVERY]]
        chain = [here]
        while before := [by_place[link.before] for link in chain[0].driven_by if by_place[link.before].critical]:
            chain.insert(0, before[0])
        while after := [one for one in self.activities if one.critical and _waits_for(one, chain[-1])]:
            chain.append(after[0])
        return chain

    def day(self, days: float, *, last: bool = False) -> date | None:
        """Give the date that lies so many days after arrival; for an end, the last day on which anything is done."""
        if self.arrival is None:
            return None
        whole = math.ceil(days - _PART) - 1 if last else math.floor(days + _PART)
        return self.arrival + timedelta(days=max(whole, 0))

    def _scheduled(self, place: int) -> Scheduled:
        path, node = self.path, self.network.nodes[place]
        start, finish = path.early_start[place], path.early_finish[place]
        driven = tuple(
            link
            for link in self.network.links
            if link.after == place and path.early_finish[link.before] >= start - _PART
        )
        return Scheduled(
            place,
            node,
            start,
            finish,
            path.late_start[place],
            path.total_float[place],
            path.free_float[place],
            path.critical[place],
            self.day(start),
            self.day(max(finish, start + _PART * 2), last=True),
            driven,
        )


def _waits_for(one: Scheduled, other: Scheduled) -> bool:
    return any(link.before == other.place for link in one.driven_by)


def dock_days(network: Network, finish: tuple[float, ...]) -> float:
    """Give the days on blocks from the finish of each activity."""
    return finish[network.of_kind("undocking")] - finish[network.of_kind("docking")]


def plan(papers: OwnerPapers, package: Package, record: Record) -> tuple[Schedule | None, list[Notice]]:
    """Lay the owner's programme out; None where there is none, or something in it is wrong."""
    if papers.programme is None:
        return None, []
    made, notices = network(papers.programme, package, record)
    return (schedule(made, package) if made is not None else None), notices


def schedule(made: Network, package: Package) -> Schedule:
    """Lay a network out at likely durations, with its crews."""
    durations = [node.duration.days for node in made.nodes]
    handed = crew_links(durations, made.pairs, [node.crew for node in made.nodes], made.capacity)
    extra = tuple(Link(before, after, f"the {made.nodes[after].crew} come from there") for before, after in handed)
    whole = Network(made.nodes, (*made.links, *extra), made.capacity)
    tender = package.tender
    return Schedule(
        whole,
        critical_path(durations, whole.pairs),
        tender.events.get("arrival") if tender else None,
        tender.dock_days if tender else None,
    )
