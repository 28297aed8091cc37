"""Levels of the water at which to stop while she is floated."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.landing.settling import Landing
from tenderwright.calculations.ship.keel import underside
from tenderwright.calculations.steps.step import step
from tenderwright.model.particulars import Particulars
from tenderwright.model.vessel import Opening


class FloatingStops(Struct, frozen=True):
    """Levels as the dock is flooded, m of water over the top of the keel blocks."""

    last_opening: str
    """The highest opening that lies below her waterline when she floats; empty where there is none."""
    covered: float | None
    """Where that one is covered, at its place."""
    shores: float | None
    """Over the block that she leaves last, below which she has not the least metacentric height without side blocks and
    shores; None where no least is asked for."""
    last_block: float
    """Over that block, where she has left all the others."""
    afloat: float
    """Over that block, where she leaves it."""


@step()
def floating_stops(
    undocked: FloatingPosition, lifting_off: Landing, openings: tuple[Opening, ...], particulars: Particulars
) -> FloatingStops:
    """Find at which levels of the water to stop while she is floated."""
    low, name, covered = underside(particulars), "", None
    for one in openings:
        top = one.height.si + (one.bore.si / 2 if one.bore else 0.0)
        if top < undocked.waterline_at(one.at.x) and (covered is None or top - low > covered):
            name, covered = one.name, top - low
    at, bearing = lifting_off.settling, lifting_off.bearing
    return FloatingStops(
        name,
        covered,
        None if bearing is None else at.water_at_touch - bearing.fall,
        at.water_at_touch - at.fall,
        at.water_at_touch,
    )
