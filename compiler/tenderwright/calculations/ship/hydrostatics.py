"""Hydrostatics of the ship: at her stated draft, and a table over drafts."""

from __future__ import annotations

from math import ceil

from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.denny import METHOD as DENNY
from tenderwright.calculations.hydrostatics.from_curves import METHOD as FROM_CURVES
from tenderwright.calculations.hydrostatics.particulars import Hydrostatics
from tenderwright.calculations.hydrostatics.upright import METHOD as UPRIGHT
from tenderwright.calculations.hydrostatics.upright import greatest_draft, hydrostatic_table, least_draft
from tenderwright.calculations.hydrostatics.wetted_from_curves import METHOD as WETTED_FROM_CURVES
from tenderwright.calculations.hydrostatics.wetted_surface import METHOD as WETTED
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.particulars import Particulars
from tenderwright.model.tender import Tender
from tenderwright.quantities.display import show

INTERVAL, IN_FEET = 0.2, 0.1524
"""Interval of draft in the printed table, m; half a foot in a package in US units."""


@step_of(UPRIGHT, "hydrostatics.stated")
def stated_hydrostatics(buoyancy: Buoyancy, particulars: Particulars, dock_water: Given) -> Uses:
    """Find the hydrostatics at the draft stated in the particulars, on an even keel."""
    draft = particulars.dimensions.draft
    inputs = {**buoyancy.given, "draft": given(draft), "density": dock_water}
    by = None if buoyancy.known_by_form else FROM_CURVES
    return Uses(f"at the stated draft of {draft}, even keel", inputs, draft.at, by=by)


@step_of(WETTED, "hydrostatics.stated", names={"wetted_surface": "wetted-surface"})
def stated_wetted_surface(buoyancy: Buoyancy, particulars: Particulars, stated_hydrostatics: dict[str, float]) -> Uses:
    """Find the wetted surface at the stated draft, on an even keel: from lines or table, or by a formula."""
    draft, hull = particulars.dimensions.draft, buoyancy.hull
    about = f"at the stated draft of {draft}, even keel"
    if not isinstance(hull, HullCurves):
        return Uses(about, {**buoyancy.given, "draft": given(draft)}, draft.at)
    if hull.wetted_surface is not None:
        return Uses(about, {**buoyancy.given, "draft": given(draft)}, draft.at, by=WETTED_FROM_CURVES)
    volume = stated_hydrostatics["volume"]
    inputs = {
        "length": given(particulars.dimensions.length_between_perpendiculars),
        "draft": given(draft),
        "volume": Given(volume, show(volume, "volume displaced", digits=4), "hydrostatics.stated.volume"),
    }
    return Uses(about, inputs, draft.at, by=DENNY)


@step(lazy=True)
def hydrostatics_table(
    buoyancy: Buoyancy, particulars: Particulars, dock_water: Given, tender: Tender | None
) -> tuple[Hydrostatics, ...]:
    """Give the hydrostatics at drafts about the stated one, on an even keel, for printing."""
    hull, draft = buoyancy.hull, particulars.dimensions.draft.si
    interval = IN_FEET if tender is not None and tender.units == "us" else INTERVAL
    if isinstance(hull, HullCurves):
        first = ceil(max(least_draft(hull, 0.0), draft - 5 * interval) / interval - 1e-9)
        greatest = min(greatest_draft(hull), draft + 3 * interval)
    else:
        first = round(max(least_draft(hull, 0.0) + 0.5, draft - 5 * interval) / interval)
        greatest = min(greatest_draft(hull) - 0.05, draft + 3 * interval)
    drafts = [interval * count for count in range(first, int(greatest / interval + 1e-9) + 1)]
    return tuple(hydrostatic_table(hull, drafts, 0.0, dock_water.si)) if drafts else ()
