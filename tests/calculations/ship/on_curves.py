"""Marram's own hydrostatics as tables that her papers might hold, and Marram without what rests on her lines."""

from __future__ import annotations

from tenderwright.calculations.hydrostatics.upright import hydrostatic_table
from tenderwright.calculations.ship.hull import hull
from tenderwright.model.curves import AtDraft, Centres, CurvesOfForm
from tenderwright.model.package import Package
from tenderwright.notices import Place
from tenderwright.quantities.quantity import Quantity, parse_quantity
from tests.calculations.ship.marram import found, package, plan
from tests.replacing import replace

HERE = Place("vessel/curves.yaml", 1, 1)
FOOT, LONG_TON, INCH = 0.3048, 1016.0469088, 0.0254
UNDER = 0.18
"""Of the bar keel below the keel line, m: zero of the drafts of the American table."""


def measured(text: str, dimension: str) -> Quantity:
    return parse_quantity(text, dimension)


def metric() -> CurvesOfForm:
    """Give her own table as printed in metric units, from the after perpendicular."""
    form = found(hull).form
    rows = [
        AtDraft(
            draft=measured(f"{h.draft:.2f} m", "length"),
            displacement=measured(f"{h.displacement / 1000:.1f} t", "mass"),
            lcb=measured(f"{h.lcb:.2f} m", "length"),
            lcf=measured(f"{h.lcf:.2f} m", "length"),
            kb=measured(f"{h.kb:.2f} m", "length"),
            bm=measured(f"{h.bm_transverse:.2f} m", "length"),
            immersion=measured(f"{h.mass_per_immersion / 1e5:.3f} t/cm", "line_load"),
            moment=measured(f"{h.moment_to_change_trim() / 1e5:.2f} t*m/cm", "mass"),
            here=HERE,
        )
        for h in hydrostatic_table(form, [1.4 + 0.2 * k for k in range(15)], 0.0, 1025.0)
    ]
    return CurvesOfForm(
        source="table of 1961",
        centres=Centres(from_="after perpendicular", plus="forward"),
        rows=tuple(rows),
        here=HERE,
    )


def american() -> CurvesOfForm:
    """Give her own table in feet and long tons, drafts and KM from under the bar keel, centres abaft amidships."""
    form = found(hull).form
    rows = [
        AtDraft(
            draft=measured(f"{(h.draft + UNDER) / FOOT:.3f} ft", "length"),
            displacement=measured(f"{h.displacement / LONG_TON:.1f} long_ton", "mass"),
            lcb=measured(f"{(form.length / 2 - h.lcb) / FOOT:.2f} ft", "length"),
            km=measured(f"{(h.km_transverse + UNDER) / FOOT:.2f} ft", "length"),
            immersion=measured(f"{h.mass_per_immersion * INCH / LONG_TON:.3f} long_ton/in", "line_load"),
            moment=measured(f"{h.moment_to_change_trim() * INCH / LONG_TON / FOOT:.2f} ft*long_ton/in", "mass"),
            here=HERE,
        )
        for h in hydrostatic_table(form, [FOOT * (5 + 0.5 * k) for k in range(18)], 0.0, 1025.0)
    ]
    return CurvesOfForm(
        source="curves of form",
        centres=Centres(from_="amidships", plus="aft"),
        draft_zero=measured(f"-{UNDER} m", "length"),
        density=measured("64 lb/ft3", "density"),
        rows=tuple(rows),
        here=HERE,
    )


def without_tanks(**changes: object) -> Package:
    """Give Marram without tanks, whose bounds are partly the shell, her lightship further forward to trim her."""
    dry, lightship = replace(plan(), tanks_at_undocking=()), package().lightship
    assert lightship is not None
    light = replace(lightship.lightship, at=measured(f"{lightship.lightship.at.si + 0.9:.2f} m", "length"))
    return replace(package(), tanks=(), docking_plan=dry, lightship=replace(lightship, lightship=light), **changes)
