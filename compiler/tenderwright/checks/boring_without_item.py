"""A boring that finds more unsound wood than is allowed has an item that deals with it.

Ground: what the survey found and no item holds is found again when the plank is off, at the price of a change (common
practice, no source). The limit is the package's own.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.timber import borings_judged, wood
from tenderwright.calculations.verdict import within
from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Warn of each boring beyond the limit that names no item."""
    timber = context.found(wood)
    if timber is None or not timber.borings:
        return
    judged = context.found(borings_judged)
    practice = timber.practice
    if judged is None or practice is None or practice.unsound is None:
        return
    for one, share in zip(timber.borings, judged["unsound"], strict=True):
        if not within(share, practice.unsound.si) and one.item is None:
            message = (
                f"boring {one.core} is unsound over {100 * share:.0f} % of the thickness, and {practice.unsound} is "
                "allowed; no item deals with it"
            )
            hint = "name the item that renews or mends it"
            yield Notice("boring-without-item", one.here, message, hints=(hint,))
