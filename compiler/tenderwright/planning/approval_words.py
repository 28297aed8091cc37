"""What approvals hold up and how far they are, in words."""

from __future__ import annotations

from tenderwright.model import approvals as gates
from tenderwright.planning.approval_events import Event
from tenderwright.planning.approvals import ASKED, GRANTED, NOT_NEEDED, REFUSED, TO_ASK, Register, Standing
from tenderwright.quantities.customs import day

_WORDS = {
    gates.ISSUE: "issue of the tender",
    gates.AWARD: "award",
    gates.DEPARTURE: "departure for the yard",
    gates.ENTER_DOCK: "entering the dock",
    gates.START: "start of work",
    gates.OPEN_FABRIC: "opening of fabric",
    gates.FLOODING: "flooding of the dock",
    gates.DEPARTURE_HOME: "departure home",
    gates.PAYMENT: "payment",
    gates.CLAIM: "claim of the grant",
    gates.CLOSE: "closing of the docking",
    gates.INFORM: "nothing: to be told",
}
_NAMED = 5
"""Items that pages name one by one; more are counted."""
ALL = 100
"""Items that notices name."""


def gate_words(event: Event) -> str:
    """Say what is held up, and its day: `flooding of the dock, 2 June 2027`."""
    words = _WORDS[event.gate]
    return f"{words}, {day(event.day)}" if event.day is not None else f"{words}, no day known"


def open_words(kept: Register, gate: str) -> str:
    """Say how many approvals and conditions are open before a gate: `1 approval and 2 conditions`, or `none`."""
    counts = zip(kept.open_before(gate), ("approval", "condition"), strict=True)
    told = [f"{number} {noun}{'' if number == 1 else 's'}" for number, noun in counts if number]
    return " and ".join(told) or "none"


def holds_up(one: Standing) -> str:
    """Say all that an approval holds up, in order."""
    return "; ".join(gate_words(event) for event in one.events)


def missed_words(one: Standing, most: int = _NAMED) -> str:
    """Say what was done before an approval was given: `start of work on items 310, 335 (16 May 2027)`."""
    given = one.approval.granted if one.holds else None
    told = []
    for event in one.missed:
        begun = [number for number, when in event.begun if given is None or when < given]
        work = f" on {items_in_words(sorted(begun), most)}" if begun else ""
        told.append(f"{_WORDS[event.gate]}{work} ({day(event.day)})")
    return "; ".join(told)


def items_in_words(numbers: list[str], most: int = _NAMED) -> str:
    """Name a few items by number, and count many."""
    if len(numbers) > most:
        return f"{len(numbers)} items"
    return f"{'item' if len(numbers) == 1 else 'items'} {', '.join(numbers)}"


def work_of(one: Standing, most: int = _NAMED) -> str:
    """Name the items that an approval itself lists."""
    return items_in_words([item.name for item in one.approval.items], most) if one.approval.items else ""


def by_state(kept: Register) -> dict[str, list[Standing]]:
    """Give the approvals by how far they are, as far as there are any."""
    order = (GRANTED, ASKED, TO_ASK, REFUSED, NOT_NEEDED)
    found = {state: [one for one in kept.standings if one.state == state] for state in order}
    return {state: some for state, some in found.items() if some}


def in_state(one: Standing) -> str:
    """Say how far an approval is, with its days."""
    if one.state == GRANTED:
        last = one.approval.expires
        return f"given on {day(one.approval.granted)}" + (f", holds until {day(last)}" if last is not None else "")
    if one.approval.not_needed is not None:
        return f"not needed: {one.approval.not_needed.why}"
    if one.state == REFUSED:
        return f"refused on {day(one.approval.refused)}"
    due = f", answer due {day(one.expected)}" if one.expected is not None else ""
    if one.state == ASKED:
        return f"asked for on {day(one.approval.asked)}{due}"
    return f"{TO_ASK}{due}"
