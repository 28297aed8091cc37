"""Planking that stands dry longer than it may is kept wet, by an item.

Ground: dry planking shrinks until seams open and fastenings work; the limit is the package's own (common practice, no
source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.timber import planking_dry, wood
from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Warn of days dry beyond the limit that no item keeps her wet in."""
    timber = context.found(wood)
    if timber is None:
        return
    found, practice = context.found(planking_dry), timber.practice
    if found is None or found["met"] or practice is None or practice.wetting_item is not None:
        return
    days = f"{found['planned'] / 86400:.0f} d on blocks are planned, and her planking may stand dry for"
    message = f"{days} {practice.days_dry} d; no item keeps it wet"
    hint = "name the item that wets it under `wetting_item`, or dock her for fewer days"
    yield Notice("planking-dries-out", practice.here, message, hints=(hint,))
