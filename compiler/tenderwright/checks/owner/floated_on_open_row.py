"""Nobody is floated while a hold is not released, or an opening is not closed, tested and signed twice.

Ground: a plug, valve or plate that is left open sinks the ship when the dock is flooded, so that each is signed for
before the water comes (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.inspection.in_words import listed
from tenderwright.planning.inspection.ordered import inspected_in_dock

HINT = (
    "pump or hold the water, and look at each of them now; then record what was seen and signed that day under "
    "`inspections:` and `openings:`"
)


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report a day of floating that is recorded while rows that floating waits for are open on it."""
    floated = [(path, one.days.undocked) for path, one in sorted(context.papers.in_dock.items()) if one.days.undocked]
    if not floated:
        return
    path, day = floated[-1]
    found = inspected_in_dock(context.package, context.papers, context.ledger, day)
    if found.in_use and (open_ := found.keeping_from("docking", "flooding")):
        message = f"she was floated on {day} while this was open: {listed(context.package, open_)}"
        yield Notice("floated-on-open-row", context.at(path, "days", "undocked"), message, hints=(HINT,))
