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
"""Items that are named one by one; more are counted."""


def gate_words(event: Event, *, done: bool = False) -> str:
    """Say what is held up, and its day: `flooding of the dock, 2 June 2027`; what is `done` with its own day."""
    words = _WORDS[event.gate]
    if done and event.begun:
        words += f" on {items_in_words([number for number, _ in event.begun])}"
    return f"{words}, {day(event.day)}" if event.day is not None else f"{words}, no day known"


def holds_up(one: Standing) -> str:
    """Say all that an approval holds up, in order."""
    return "; ".join(gate_words(event) for event in one.events)


def items_in_words(numbers: list[str]) -> str:
    """Name a few items by number, and count many."""
    if len(numbers) > _NAMED:
        return f"{len(numbers)} items"
    return f"{'item' if len(numbers) == 1 else 'items'} {', '.join(numbers)}"


def work_of(one: Standing) -> str:
    """Name the items that an approval itself lists."""
    return items_in_words([item.name for item in one.approval.items]) if one.approval.items else ""


def by_state(kept: Register) -> dict[str, list[Standing]]:
    """Give the approvals by how far they are, as far as there are any."""
    order = (GRANTED, ASKED, TO_ASK, REFUSED, NOT_NEEDED)
    words = {ASKED: "asked for", TO_ASK: "to be asked for"}
    found = {words.get(state, state): [one for one in kept.standings if one.state == state] for state in order}
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
    return f"to be asked for{due}"
