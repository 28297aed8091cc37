"""One order of all days of a docking: what comes before what, how far apart they may be, and why.

A day is of a kind, such as `question.asked`, and of one thing, such as question 3. Where both kinds of a rule begin
with the same word, the rule holds within one thing; else it holds between all days of the two kinds. Ground of the
distances: common practice, no source; each is several times what a docking takes, so that only a slip of the pen is
beyond it.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from datetime import date

from msgspec import Struct

from tenderwright.notices import Note, Notice, Place


class Dated(Struct, frozen=True):
    """A day on which something happens."""

    kind: str
    what: str
    """In a few words, as a notice says it."""
    day: date
    place: Place
    of: str = ""
    """Which one, where there are several of the kind."""
    rests_on: Place | None = None
    """The day from which it is counted, where it is."""

    @property
    def places(self) -> set[Place]:
        """Give the places at which it may be wrong."""
        return {self.place} if self.rests_on is None else {self.place, self.rests_on}


class Then(Struct, frozen=True):
    """A kind of day that comes before another one; `least` and `most` are days between the two."""

    before: str
    after: str
    why: str
    least: int = 0
    most: int | None = None


_YEAR = 366

ORDER = (
    # The ship
    Then("ship.built", "docking.docked", "no ship is docked before she is built"),
    Then("ship.built", "drawing.dated", "a ship is drawn a few years before she is built", least=-10 * _YEAR),
    Then("ship.built", "seen.on", "nothing is seen of a ship before she is built"),
    Then("docking.docked", "docking.undocked", "a ship that is docked is undocked within two years", most=2 * _YEAR),
    Then("docking.undocked", "docking.guaranteed", "a guarantee runs from the end of a docking", most=10 * _YEAR),
    Then("docking.docked", "programme.redelivery", "the history ends with the docking that is tendered", least=-200),
    Then("seen.on", "programme.redelivery", "what is said of her was seen before the end of the docking"),
    Then("drawing.year of its title", "drawing.dated", "what is about a year is not older than the year"),
    Then("drawing.dated", "drawing.verified", "a drawing is found to agree when it exists", least=-60),
    Then("drawing.dated", "programme.redelivery", "what bidders price by exists before the docking ends"),
    Then("drawing.verified", "programme.redelivery", "what bidders price by was verified before the docking ends"),
    # The tender
    Then("tender.year of its number", "programme.redelivery", "a tender is numbered in its own years", most=4 * _YEAR),
    Then("tender.issued", "tender.site visit", "the visit is announced by the tender", most=_YEAR),
    Then("tender.issued", "tender.last question", "questions are asked on what was issued"),
    Then("tender.issued", "tender.closing", "bidders need days to price it", least=5, most=2 * _YEAR),
    Then("tender.site visit", "tender.closing", "bidders see the ship before they price her"),
    Then("tender.site visit", "tender.last question", "what bidders see aboard they may still ask about"),
    Then("tender.last question", "tender.closing", "answers reach bidders before they close their price"),
    Then("tender.closing", "tender.award", "a bid is read after it is received", most=_YEAR),
    Then("tender.award", "tender.last day of validity", "a bid can be accepted while it stands"),
    Then("tender.closing", "tender.last day of validity", "nobody holds a price for years", most=2 * _YEAR),
    Then("tender.award", "programme.arrival", "the contract stands before the ship comes", most=3 * _YEAR),
    Then("tender.closing", "programme.arrival", "the contract stands before the ship comes", most=4 * _YEAR),
    Then("programme.arrival", "programme.docking", "she comes before she is docked", most=120),
    Then("programme.docking", "programme.undocking", "she is docked before she is undocked", most=2 * _YEAR),
    Then("programme.undocking", "programme.redelivery", "she is afloat when she is handed back", most=200),
    Then("tender.issued", "addendum.issued", "an addendum changes what was issued"),
    Then("addendum.the one before", "addendum.issued", "addenda are numbered as they come"),
    Then("addendum.issued", "tender.closing", "bidders price what an addendum changes before they close"),
    Then("tender.issued", "question.asked", "questions are asked on what was issued"),
    Then("question.asked", "tender.closing", "a question is asked before the price is closed"),
    Then("question.asked", "question.answered", "a question is asked before it is answered"),
    Then("question.answered", "question.addendum", "an addendum issues answers that were given"),
    Then("question.answered", "tender.closing", "answers reach bidders before they close their price"),
    Then("tender.award", "option.last day", "an option can be taken up once there is a contract"),
    Then("option.last day", "programme.undocking", "an option is work in dock"),
    Then("tender.issued", "furnished.delivered", "what the owner furnishes comes after it was promised"),
    Then("furnished.delivered", "programme.redelivery", "what the owner furnishes is there for the work"),
    Then("programme.undocking", "certificate.last day", "no dock is certified for decades", -500 * _YEAR, 15 * _YEAR),
    # The owner's papers
    Then("rates.month", "programme.redelivery", "prices are of about the time of the docking", most=6 * _YEAR),
    Then("funding.decided", "funding.last day to spend", "money is given before it is spent"),
    Then("funding.decided", "programme.redelivery", "money that is decided on later pays for nothing of it", -120),
    Then("phase.begins", "phase.ends", "a phase of an application ends after it has begun", most=5 * _YEAR),
    Then("phase.ends", "phase.last day to spend", "the money of a phase is spent while it may be", most=10 * _YEAR),
    Then("grant.dated", "grant.decided", "money is asked for before it is given", most=3 * _YEAR),
    Then("grant.dated", "programme.undocking", "money is asked for before the work is done", most=4 * _YEAR),
    Then("tender.issued", "bid.received", "a bid is made on what was issued"),
    Then("bid.addendum", "bid.received", "an addendum is acknowledged once it was issued"),
    Then("bid.received", "bid.last day of validity", "a bid stands from the day it is made", most=3 * _YEAR),
    Then("tender.award", "bid.last day of validity", "a bid stands until one is accepted"),
    Then("bid.received", "bid.correction", "a slip is confirmed after the bid was read"),
    Then("bid.received", "bid.award", "a bid is read before it is accepted"),
    Then("bid.correction", "award.day", "a bid is corrected before one is accepted"),
    Then("bid.award", "bid.last day of validity", "a bid can be accepted while it stands"),
    Then("tender.closing", "award.day", "bids are compared when all are in", most=2 * _YEAR),
    Then("award.day", "programme.docking", "the contract stands before she is docked", most=3 * _YEAR),
    Then("approval.asked", "approval.granted", "an approval is asked for before it is given", most=10 * _YEAR),
    Then("approval.asked", "approval.refused", "an approval is asked for before it is refused", most=10 * _YEAR),
    Then("approval.granted", "approval.expires", "an approval holds from the day it is given", most=50 * _YEAR),
    # In dock
    Then("award.day", "dock.arrived", "the contract stands before the ship comes", most=4 * _YEAR),
    Then("dock.arrived", "dock.docked", "she comes before she is docked", most=200),
    Then("dock.docked", "dock.dry", "she stands on the blocks before the dock is dry", most=30),
    Then("dock.dry", "dock.undocked", "the dock is dry before she is undocked", most=3 * _YEAR),
    Then("dock.docked", "dock.undocked", "she is docked before she is undocked", most=3 * _YEAR),
    Then("dock.undocked", "dock.departed", "she floats before she leaves", most=_YEAR),
    Then("programme.arrival", "dock.arrived", "she comes about when the programme says", least=-120, most=2 * _YEAR),
    Then("dock.arrived", "dock.paper", "what is found and ordered in dock is so after she came", most=4 * _YEAR),
    Then("programme.redelivery", "dock.paper", "papers from the dock end with the docking", -500 * _YEAR, 200),
    Then("award.day", "award.inspected", "work is inspected once it is awarded", most=4 * _YEAR),
    Then("paper.inspected", "paper.end of file", "a file tells nothing from beyond its last day"),
    Then("paper.made", "paper.decided", "a report is answered after it was made", most=_YEAR),
    Then("paper.made", "paper.answer due", "work waits for the answer to a report", most=60),
    Then("paper.made", "paper.signed", "a change is signed once it is written"),
    Then("paper.made", "paper.end of file", "a file has nothing from beyond its last day"),
    Then("paper.decided", "paper.end of file", "a file has nothing from beyond its last day"),
    Then("paper.signed", "paper.end of file", "a file has nothing from beyond its last day"),
)


class Pair(Struct, frozen=True):
    """Two days held against a rule."""

    before: Dated
    after: Dated
    rule: Then

    @property
    def days(self) -> int:
        """Give the days between the two."""
        return (self.after.day - self.before.day).days

    @property
    def code(self) -> str:
        """Give the code of what is wrong; nothing where nothing is."""
        if self.days < self.rule.least:
            return "date-order"
        return "day-far-off" if self.rule.most is not None and self.days > self.rule.most else ""

    @property
    def told(self) -> str:
        """Say what is wrong, the later day first."""
        early = f"fewer than {self.rule.least} days after" if self.rule.least > 0 else "before"
        how = early if self.days < self.rule.least else f"{self.days} days after"
        later, earlier = self.after, self.before
        return f"{later.what} on {later.day} comes {how} {earlier.what} on {earlier.day}: {self.rule.why}"

    @property
    def places(self) -> set[Place]:
        """Give the places at which one of the two may be wrong."""
        return self.before.places | self.after.places


def pairs(days: Iterable[Dated]) -> Iterator[Pair]:
    """Give all that the order has to say of some days."""
    by_kind: dict[str, list[Dated]] = defaultdict(list)
    for one in days:
        by_kind[one.kind].append(one)
    for rule in ORDER:
        within = rule.before.split(".")[0] == rule.after.split(".")[0]
        for after in by_kind.get(rule.after, ()):
            for before in by_kind.get(rule.before, ()):
                if not (within and before.of != after.of):
                    yield Pair(before, after, rule)


def days_in_fault(held: Iterable[Pair]) -> Iterator[Notice]:
    """Tell the fewest days that explain all that is broken, so that one slip of the pen gives one notice.

    Of two days that explain as much, the one in fault is that for which fewer other rules speak.
    """
    sound: Counter[Place] = Counter()
    broken: list[Pair] = []
    for pair in held:
        if pair.code:
            broken.append(pair)
        else:
            sound.update(pair.places)
    while broken:
        counts = Counter(place for pair in broken for place in pair.places)
        place = max(counts, key=lambda one: (counts[one], -sound[one], one))
        first, *more = (pair for pair in broken if place in pair.places)
        broken = [pair for pair in broken if place not in pair.places]
        other = first.before if place in first.after.places else first.after
        notes = (Note(f"{other.what} is here", other.place), *(Note(pair.told) for pair in more))
        yield Notice(first.code, place, first.told, notes)
