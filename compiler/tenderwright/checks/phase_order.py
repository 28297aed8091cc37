"""No item rests on one of a later phase.

Ground: work placed in the wrong phase is among the errors that bidders ask about (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.item import Item
from tenderwright.notices import Note, Notice

_ORDER = {"before docking": 0, "dry": 1, "after undocking": 2}


def check(context: Context) -> Iterator[Notice]:
    """Report items that depend on a later phase."""
    for item in context.live_items:
        yield from _later_phases(context, item)


def _later_phases(context: Context, item: Item) -> Iterator[Notice]:
    """Report a dependence on a later phase, seen through items that may be done at any time."""
    own = _ORDER.get(item.phase)
    items = context.package.item_by_name
    for reference in item.depends_on if own is not None else ():
        direct = items.get(reference.name)
        if direct is None:
            continue
        behind = context.before(direct) if direct.phase == "any" else set()
        chain = [direct, *(items[name] for name in sorted(behind))]
        late = next((other for other in chain if own is not None and _ORDER.get(other.last_phase, -1) > own), None)
        if late is not None:
            message = f"item {item.number}, `{item.phase}`, depends on item {late.number}, `{late.last_phase}`"
            notes = (Note(f"item {late.number} states its phase here", place_in(late, "phase")),)
            hint = "change the phase of one of the two, or delete the number here"
            yield Notice("phase-order", reference.at, message, notes, (hint,))
