"""Where the propellers stand: on their shafts, off the centreline where a ship has several."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from tenderwright.model.particulars import Particulars, Propeller, Shaft
from tenderwright.model.vessel import Opening
from tenderwright.quantities.quantity import Quantity

STERN_TUBE = "stern tube"


class PlacedPropeller(Struct, frozen=True):
    """A propeller that is fitted, and where."""

    shaft: Shaft
    propeller: Propeller
    x: float
    """Forward of the after perpendicular, m."""
    y: float
    """To port of the centreline, m."""
    z: float
    """Above the keel line, m."""

    @property
    def lowest(self) -> float:
        """Give the height of the lowest tip above the keel line, m."""
        return self.z - self.propeller.diameter.si / 2

    @property
    def outreach(self) -> float:
        """Give the distance of the outermost tip from the centreline, m."""
        return abs(self.y) + self.propeller.diameter.si / 2


def tube_of(shaft: Shaft, openings: Sequence[Opening]) -> Opening | None:
    """Give the stern tube of a shaft: the one that it names, or the only one there is."""
    if shaft.tube is not None:
        return next((one for one in openings if one.opening == shaft.tube.name), None)
    tubes = [one for one in openings if one.kind == STERN_TUBE]
    return tubes[0] if len(tubes) == 1 else None


def height_of(shaft: Shaft, tube: Opening | None) -> Quantity | None:
    """Give the height of a shaft at its propeller: its own, or that of its stern tube."""
    return shaft.height or (tube.height if tube is not None else None)


def fitted(particulars: Particulars | None) -> tuple[Shaft, ...]:
    """Give the shafts whose propeller is fitted."""
    shafts = particulars.shafts if particulars is not None else ()
    return tuple(one for one in shafts if one.state == "propeller fitted")


def placed_propellers(particulars: Particulars | None, openings: Sequence[Opening]) -> tuple[PlacedPropeller, ...]:
    """Give the propellers that are fitted, but for those whose place is not known; see `not_placed`."""
    placed = []
    for shaft in fitted(particulars):
        propeller, tube = shaft.propeller, tube_of(shaft, openings)
        if propeller is None or propeller.at is None:
            continue
        height = height_of(shaft, tube)
        off = shaft.off_centre or (tube.off_centre if tube is not None else None)
        sign = {"port": 1.0, "starboard": -1.0}.get(shaft.side, 0.0)
        if height is not None and (off is not None or sign == 0.0):
            y = sign * off.si if off is not None else 0.0
            placed.append(PlacedPropeller(shaft, propeller, propeller.at.x, y, height.si))
    return tuple(placed)


def not_placed(particulars: Particulars | None, openings: Sequence[Opening]) -> tuple[Shaft, ...]:
    """Give the shafts whose propeller is fitted, and cannot be placed: what it reaches is then counted nowhere."""
    placed = [one.shaft.shaft for one in placed_propellers(particulars, openings)]
    return tuple(one for one in fitted(particulars) if one.shaft not in placed)
