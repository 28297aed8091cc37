"""The register of approvals beside the days of the docking: what is wanted by when, what is late, and what was missed.

Days are those of the package alone: as planned, or as the owner's papers record them. No clock is asked.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from datetime import date, timedelta

from msgspec import Struct

from tenderwright.model import approvals as gates
from tenderwright.model.approvals import Approval, ApprovalCondition
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.planning.approval_events import Event, Events, judged_on
from tenderwright.planning.schedule import Schedule
from tenderwright.quantities.customs import day as told

GRANTED, REFUSED, ASKED, TO_ASK, NOT_NEEDED = "given", "refused", "asked for", "to be asked for", "not needed"
"""How far an approval is."""
_DAY = 86400.0


class Standing(Struct, frozen=True):
    """An approval, with the days of what it holds up and what follows from them."""

    approval: Approval
    events: tuple[Event, ...]
    """What it holds up, that of which the day is known first."""
    judged: date | None
    """The day on which it is judged."""
    decided: date | None
    """The day on which its source of money decides, by owner/funding.yaml."""
    conditions: tuple[Asked, ...]

    @property
    def state(self) -> str:
        """Say how far it is."""
        one = self.approval
        if one.not_needed is not None:
            return NOT_NEEDED
        if one.granted is not None and (one.refused is None or one.refused <= one.granted):
            return GRANTED
        if one.refused is not None:
            return REFUSED
        return ASKED if one.asked is not None else TO_ASK

    @property
    def open(self) -> bool:
        """Tell whether it is wanted and not given."""
        return self.state in (REFUSED, ASKED, TO_ASK)

    @property
    def holds(self) -> bool:
        """Tell whether it was given, so that its conditions bind."""
        return self.state == GRANTED

    @property
    def next(self) -> Event | None:
        """Give the first of what it still holds up whose day is known."""
        return next((one for one in self.events if one.happened is None and one.day is not None), None)

    @property
    def lead(self) -> int | None:
        """Give the days that the answer takes."""
        return math.ceil(self.approval.lead.si / _DAY) if self.approval.lead is not None else None

    @property
    def ask_by(self) -> date | None:
        """Give the last day on which it can be asked for: that of what it holds up less the days the answer takes."""
        first = self.next or next(iter(self.events), None)
        if first is None or first.day is None or self.lead is None:
            return None
        return first.day - timedelta(days=self.lead)

    @property
    def expected(self) -> date | None:
        """Give the day on which the answer is due: that of asking with the days it takes, or its source's own day."""
        asked = self.approval.asked
        return asked + timedelta(days=self.lead) if asked is not None and self.lead is not None else self.decided

    @property
    def late(self) -> str:
        """Say why it cannot be there in time, as far as the days tell; empty where it can."""
        first, day = self.next, self.next.day if self.next is not None else None
        if not self.open or first is None or day is None:
            return ""
        if self.state == REFUSED:
            return f"refused on {told(self.approval.refused)}"
        if self.judged is not None and day <= self.judged:
            return f"wanted on {told(day)} and not given"
        if self.expected is not None and self.expected > day:
            return f"its answer is due on {told(self.expected)}, {_days(self.expected - day)} after it is wanted"
        if self.state == TO_ASK and self.ask_by is not None and self.judged is not None and self.judged > self.ask_by:
            return f"it was to be asked for by {told(self.ask_by)}"
        return ""

    @property
    def missed(self) -> tuple[Event, ...]:
        """Give what was done before it was given, by what the owner's papers record."""
        if self.state == NOT_NEEDED:
            return ()
        given = self.approval.granted if self.state == GRANTED else None
        return tuple(one for one in self.events if one.happened is not None and (given is None or given > one.happened))

    @property
    def outlived(self) -> Event | None:
        """Give the first of what it holds up that comes after its last day."""
        last = self.approval.expires
        if self.state != GRANTED or last is None:
            return None
        return next((one for one in self.events if one.day is not None and one.day > last), None)


class Asked(Struct, frozen=True):
    """A condition of an approval, with the day of what it has to be met before."""

    condition: ApprovalCondition
    event: Event
    judged: date | None

    @property
    def unmet(self) -> bool:
        """Tell whether what it had to be met before came first."""
        came = self.event.happened
        if came is None and self.judged is not None and self.event.day is not None and self.event.day <= self.judged:
            came = self.event.day
        return came is not None and (self.condition.met is None or self.condition.met > came)


class Register(Struct, frozen=True):
    """All approvals with their days, by the day that each is wanted."""

    judged: date | None
    standings: tuple[Standing, ...]

    def open_before(self, gate: str) -> tuple[int, int]:
        """Count the approvals that hold a gate up and are not given, and the open conditions to be met before it."""
        wanted = sum(one.open and gate in one.approval.gates for one in self.standings)
        asked = [each.condition for one in self.standings if one.holds for each in one.conditions]
        return wanted, sum(each.before == gate and each.met is None for each in asked)

    def holding(self, gate: str, day: date) -> Iterator[tuple[Approval, str]]:
        """Yield each approval that holds up a gate on a day, and why."""
        for one in self.standings:
            if one.state == NOT_NEEDED:
                continue
            if gate in one.approval.gates and (why := _not_held(one, day)):
                yield one.approval, why
            for asked in one.conditions:
                met = asked.condition.met
                if asked.condition.before == gate and (met is None or met > day):
                    yield one.approval, f"its condition is not met: {asked.condition.what.rstrip('.')}"


def _not_held(one: Standing, day: date) -> str:
    """Say why an approval does not hold on a day; empty where it does."""
    given, last = one.approval.granted, one.approval.expires
    if one.state == REFUSED:
        return f"refused on {told(one.approval.refused)}"
    if one.state == TO_ASK:
        return "not asked for yet"
    if given is None:
        return f"asked for on {told(one.approval.asked)}, and not given yet"
    if given > day:
        return f"given on {told(given)}, after {told(day)}"
    return f"its last day was {told(last)}" if last is not None and last < day else ""


def register(papers: OwnerPapers, package: Package, schedule: Schedule | None) -> Register | None:
    """Set the approvals beside the days of the docking; None where there is no register."""
    if papers.approvals is None:
        return None
    judged, days = judged_on(papers), Events(package, papers, schedule)
    found = [_standing(one, days, judged, papers) for one in papers.approvals.approvals]
    return Register(judged, tuple(sorted(found, key=_when)))


def _standing(one: Approval, days: Events, judged: date | None, papers: OwnerPapers) -> Standing:
    sources = papers.funding.sources if papers.funding is not None else ()
    source = next((each for each in sources if one.source is not None and each.source == one.source.name), None)
    items = one.items or (source.only if source is not None else ())
    numbers = tuple(each.name for each in items)
    last = source.spend_by if source is not None else None
    events = [days.of(gate, numbers, one.needed, last) for gate in one.gates]
    asked = tuple(
        Asked(each, days.of(each.before, tuple(of.name for of in each.items) or numbers, one.needed, last), judged)
        for each in one.conditions
    )
    order = sorted(events, key=lambda event: (event.day or date.max, gates.GATES.words.index(event.gate)))
    return Standing(one, tuple(order), judged, source.decided if source is not None else None, asked)


def _when(one: Standing) -> tuple[date, date, str]:
    first = next((event.day for event in one.events if event.day is not None), None)
    return (one.ask_by or first or date.max, first or date.max, one.approval.title)


def _days(time: timedelta) -> str:
    return "1 day" if time.days == 1 else f"{time.days} days"
