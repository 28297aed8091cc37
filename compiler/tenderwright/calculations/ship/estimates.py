"""Areas of shell by formula, for a ship that has no table of offsets; each says how good it is."""

from __future__ import annotations

from typing import Any

from tenderwright.calculations.coatings.hull_area_formulas import boottop_area, topside_area
from tenderwright.calculations.hydrostatics.denny import denny_surface
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.value import Given, given
from tenderwright.model.coating import Zone
from tenderwright.model.particulars import Particulars
from tenderwright.quantities.quantity import Quantity

BAND_ESTIMATE: Method[Any] = Method(
    name="zone.band-estimate",
    title="Area of a band of shell by formula, without offsets",
    formula="from the keel 1.7 L T + V/T, and 2h(Lpp + B/2) above the stated draft; between heights 2h(Lpp + B/2); "
    "to the deck 2H(Loa + B/2)",
    source=Citation(
        "UFC 4-159-03, Design: Moorings, Eq. 18; paint makers' area sheets", "", "common practice, no source"
    ),
    valid="ordinary displacement hulls; heights within the stated depth",
    inputs={},
    outputs=(Symbol("area", "area of the band, both sides", "area", "m2"),),
    kernel=lambda: {},
    example={},
    cautions=("An estimate without offsets: about 6 % either way below water, 10 % or more above it.",),
)


def band_estimate(ship: Particulars, zone: Zone, density: float) -> tuple[float, dict[str, Given]]:
    """Estimate the area of a shell band from the ship's dimensions, m2, with the inputs used; raises OutOfRange.

    Formula: see BAND_ESTIMATE. Source: as it states. Range: the displacement stated for a zone from the keel.
    """
    size = ship.dimensions
    lpp, loa, beam = size.length_between_perpendiculars, size.length_overall, size.beam
    inputs = {"lpp": given(lpp), "beam": given(beam)}
    lower = zone.lower if isinstance(zone.lower, Quantity) else None
    upper = zone.upper if isinstance(zone.upper, Quantity) else None
    if upper is None:
        height = size.depth.si - (lower.si if lower else 0.0)
        return topside_area(loa.si, beam.si, height), inputs | {"loa": given(loa), "depth": given(size.depth)}
    if lower is not None:
        return boottop_area(lpp.si, beam.si, upper.si - lower.si), inputs | {
            "lower": given(lower),
            "upper": given(upper),
        }
    if ship.displacement is None:
        raise OutOfRange("without offsets a zone from the keel needs the displacement stated in the particulars")
    wetted = denny_surface(lpp.si, size.draft.si, ship.displacement.si / density)["wetted_surface"]
    more = (upper.si - size.draft.si) * 2 * (lpp.si + 0.5 * beam.si)
    inputs |= {"draft": given(size.draft), "displacement": given(ship.displacement), "upper": given(upper)}
    return wetted + more, inputs
