"""Of a composite hull nothing is calculated that is true of plates or of wood alone.

Ground: planks on frames of iron make each bolt a couple of two metals, and frames waste behind them (common practice,
no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Warn of a composite hull."""
    ship = context.package.particulars
    if ship is not None and ship.hull is not None and ship.hull.composite:
        message = "a composite hull, planks on frames of metal, is not supported: no plate or plank is calculated"
        hint = "have a naval architect judge bolts, frames and planking, and write quantities with `basis`"
        place = context.at("vessel/particulars.yaml", "hull", "material")
        yield Notice("composite-hull", place, message, hints=(hint,))
