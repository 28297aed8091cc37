"""When the work of an application is done: the days of the programme, and those of each item by the schedule."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from tenderwright.model.funding import FundingSource
from tenderwright.model.grant import Grant, GrantPhase
from tenderwright.model.item import Item
from tenderwright.model.tender import Tender
from tenderwright.planning.grant_entries import Chosen
from tenderwright.planning.schedule import Schedule


@dataclass(frozen=True)
class Milestone:
    """A day on which something is done or decided."""

    date: date
    what: str


@dataclass(frozen=True)
class ItemDates:
    """The days on which an item begins and ends; None where the schedule does not tell."""

    item: Item
    begins: date | None
    ends: date | None
    critical: bool


@dataclass(frozen=True)
class PhaseDates:
    """The days on which a phase begins and ends; None where neither the application nor the schedule tells."""

    phase: GrantPhase
    begins: date | None
    ends: date | None


def phase_dates(grant: Grant, items: tuple[ItemDates, ...]) -> tuple[PhaseDates, ...]:
    """Give the days of each phase: its own, or those of its first and last item."""
    found = []
    for phase in grant.phases:
        numbers = {one.name for one in phase.items}
        inside = [one for one in items if one.item.number in numbers]
        first = min((one.begins for one in inside if one.begins is not None), default=None)
        last = max((one.ends for one in inside if one.ends is not None), default=None)
        found.append(PhaseDates(phase, phase.begins or first, phase.ends or last))
    return tuple(found)


def milestones(tender: Tender, source: FundingSource | None) -> tuple[Milestone, ...]:
    """Give the days of the tender and of the docking, and those of the source, in order."""
    dates = tender.dates
    known = [
        (dates.issued, "Tender issued"),
        (dates.closing, "Bids close"),
        (source.decided if source is not None else None, "Decision of the funder"),
        (dates.award, "Contract awarded"),
        (tender.events.get("arrival"), "Ship arrives at the yard"),
        (tender.events.get("docking"), "Docked"),
        (tender.events.get("undocking"), "Undocked"),
        (tender.events.get("redelivery"), "Delivered back to the owner"),
        (source.spend_by if source is not None else None, "Money to be spent by"),
    ]
    return tuple(sorted((Milestone(when, what) for when, what in known if when is not None), key=lambda one: one.date))


def item_dates(chosen: Chosen, schedule: Schedule | None) -> tuple[ItemDates, ...]:
    """Give the first and the last day of each chosen item."""
    found = []
    for one in chosen.work:
        activities = schedule.activities if schedule is not None else ()
        own = [activity for activity in activities if activity.node.item is one.item]
        begins = [activity.begins for activity in own if activity.begins is not None]
        ends = [activity.ends for activity in own if activity.ends is not None]
        first, last = min(begins, default=None), max(ends, default=None)
        found.append(ItemDates(one.item, first, last, any(activity.critical for activity in own)))
    return tuple(found)
