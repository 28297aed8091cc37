"""Coating zones on the profile: which area each covers as seen from the side, and its hatching."""

from __future__ import annotations

from dataclasses import dataclass

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.documents.drawings import outline
from tenderwright.documents.drawings.hatch import BANDS, STATED, Hatch
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.plane import above, below
from tenderwright.model.coating import Zone
from tenderwright.model.package import Package
from tenderwright.quantities.quantity import Quantity


@dataclass(frozen=True)
class Band:
    """A zone as seen from the side: outlines in metres, none for a zone inside, and how it is hatched."""

    zone: Zone
    shapes: tuple[list[Point], ...]
    hatch: Hatch | None

    @property
    def lower(self) -> float | None:
        """Give the height of its lower edge, m; None for the keel, or for a zone that is no band of shell."""
        return self.zone.lower.si if isinstance(self.zone.lower, Quantity) else None

    @property
    def upper(self) -> float | None:
        """Give the height of its upper edge, m; None for the deck edge, or for a zone that is no band of shell."""
        return self.zone.upper.si if isinstance(self.zone.upper, Quantity) else None


def bands(package: Package, form: HullForm) -> list[Band]:
    """Give every zone with what is seen of it from the side, in the order of the package."""
    made: list[Band] = []
    count = 0
    for zone in package.zones:
        if zone.surface == "shell band":
            made.append(_shell_band(zone, form, BANDS[count % len(BANDS)]))
            count += 1
        elif zone.surface == "stated":
            shapes = [
                shape for one, shape in outline.centreline_appendages(package, form) if one.appendage in zone.zone
            ]
            made.append(Band(zone, tuple(shapes), STATED if shapes else None))
        else:
            made.append(Band(zone, (), None))
    return made


def _shell_band(zone: Zone, form: HullForm, hatch: Hatch) -> Band:
    shape = outline.profile(form)
    if isinstance(zone.lower, Quantity):
        shape = above(shape, zone.lower.si)
    if isinstance(zone.upper, Quantity):
        shape = below(shape, zone.upper.si)
    return Band(zone, (shape,) if len(shape) > 2 else (), hatch)


def edges(made: list[Band]) -> list[float]:
    """Give the heights of the edges between bands, each once, from the keel up."""
    heights = {height for band in made for height in (band.lower, band.upper) if height is not None}
    return sorted(round(height, 6) for height in heights)
