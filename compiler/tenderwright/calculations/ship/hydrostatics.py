"""Hydrostatics of the ship: at her stated draft, and a table over drafts."""

from __future__ import annotations

from tenderwright.calculations.hydrostatics.upright import METHOD as UPRIGHT
from tenderwright.calculations.hydrostatics.upright import Hydrostatics, hydrostatic_table
from tenderwright.calculations.hydrostatics.wetted_surface import METHOD as WETTED
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.particulars import Particulars

INTERVAL = 0.2
"""Interval of draft in the printed table, m."""


@step_of(UPRIGHT, "hydrostatics.stated")
def stated_hydrostatics(hull: Hull, particulars: Particulars, dock_water: Given) -> Uses:
    """Find the hydrostatics at the draft stated in the particulars, on an even keel."""
    draft = particulars.dimensions.draft
    inputs = {"offsets": hull.given, "draft": given(draft), "density": dock_water}
    return Uses(f"at the stated draft of {draft}, even keel", inputs, draft.at)


@step_of(WETTED, "hydrostatics.stated", names={"wetted_surface": "wetted-surface"})
def stated_wetted_surface(hull: Hull, particulars: Particulars) -> Uses:
    """Find the wetted surface at the stated draft, on an even keel."""
    draft = particulars.dimensions.draft
    return Uses(f"at the stated draft of {draft}, even keel", {"offsets": hull.given, "draft": given(draft)}, draft.at)


@step(lazy=True)
def hydrostatics_table(hull: Hull, particulars: Particulars, dock_water: Given) -> tuple[Hydrostatics, ...]:
    """Give the hydrostatics at drafts about the stated one, on an even keel, for printing."""
    form, draft = hull.form, particulars.dimensions.draft.si
    least = max(float(form.keel_heights.min()) + 0.5, draft - 5 * INTERVAL)
    greatest = min(float(form.deck_heights.min()) - 0.05, draft + 3 * INTERVAL)
    drafts = [INTERVAL * count for count in range(round(least / INTERVAL), int(greatest / INTERVAL) + 1)]
    return tuple(hydrostatic_table(form, drafts, 0.0, dock_water.si)) if drafts else ()
