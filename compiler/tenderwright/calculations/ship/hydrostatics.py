"""Hydrostatics of the ship: at her stated draft, and a table over drafts."""

from __future__ import annotations

from tenderwright.calculations.hydrostatics.upright import METHOD as UPRIGHT
from tenderwright.calculations.hydrostatics.upright import hydrostatic_table, hydrostatics, outputs_of
from tenderwright.calculations.hydrostatics.wetted_surface import METHOD as WETTED
from tenderwright.calculations.hydrostatics.wetted_surface import wetted_surface
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.form import given_form
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package

STEP = 0.2
"""Step of draft in the printed table, m."""


def stated_hydrostatics(package: Package, results: Results, record: Record, density: Given) -> None:
    """Keep the hydrostatics and wetted surface at the draft stated in the particulars, on an even keel."""
    particulars, form = package.particulars, results.form
    if particulars is None or form is None:
        return
    draft = particulars.dimensions.draft
    inputs = {"offsets": given_form(package), "draft": given(draft), "density": density}
    about = f"at the stated draft of {draft}, even keel"
    try:
        found = hydrostatics(form, draft.si, 0.0, density.si)
        record.keep(UPRIGHT, "hydrostatics.stated", about, inputs, outputs_of(found))
        wet = {"offsets": inputs["offsets"], "draft": inputs["draft"]}
        area = wetted_surface(form, draft.si)
        record.keep(WETTED, "hydrostatics.stated", about, wet, {"area": area}, {"area": "wetted-surface"})
    except OutOfRange as error:
        record.fail(UPRIGHT, "hydrostatics.stated", str(error), draft.at)


def table_of_hydrostatics(package: Package, results: Results) -> None:
    """Keep the table of hydrostatics about the stated draft for printing."""
    particulars, form = package.particulars, results.form
    if particulars is None or form is None:
        return
    draft = particulars.dimensions.draft.si
    least = max(float(form.keel_heights.min()) + 0.5, draft - 5 * STEP)
    greatest = min(float(form.deck_heights.min()) - 0.05, draft + 3 * STEP)
    first, last = round(least / STEP), int(greatest / STEP)
    drafts = [STEP * step for step in range(first, last + 1)]
    if drafts:
        results.hydrostatics = hydrostatic_table(form, drafts, 0.0, results.water_density)
