"""Marram on her curves of form alone, in metric and in US units, beside Marram on her offsets."""

from __future__ import annotations

from functools import cache

import pytest

from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.upright import hydrostatic_table
from tenderwright.calculations.ship.block_places import side_block_seats
from tenderwright.calculations.ship.buoyancy import buoyancy
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.ship.how_sure import how_sure
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.ship.hydrostatics import hydrostatics_table, stated_hydrostatics, stated_wetted_surface
from tenderwright.calculations.ship.landing import landing
from tenderwright.calculations.ship.undocking import undocking
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.steps.outcome import Failed, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.curves import AtDraft, Centres, CurvesOfForm
from tenderwright.model.package import Package
from tenderwright.notices import Place
from tenderwright.quantities.quantity import Quantity, parse_quantity
from tests.calculations.ship.marram import calculated, found, package, plan
from tests.outcomes import result_of
from tests.replacing import replace

HERE = Place("vessel/curves.yaml", 1, 1)
FOOT, LONG_TON, INCH = 0.3048, 1016.0469088, 0.0254
UNDER = 0.18
"""Of the bar keel below the keel line, m: zero of the drafts of the American table."""


def _read(text: str, dimension: str) -> Quantity:
    return parse_quantity(text, dimension)


def metric() -> CurvesOfForm:
    """Give her own table as printed in metric units, from the after perpendicular."""
    form = found(hull).form
    rows = [
        AtDraft(
            draft=_read(f"{h.draft:.2f} m", "length"),
            displacement=_read(f"{h.displacement / 1000:.1f} t", "mass"),
            lcb=_read(f"{h.lcb:.2f} m", "length"),
            lcf=_read(f"{h.lcf:.2f} m", "length"),
            kb=_read(f"{h.kb:.2f} m", "length"),
            bm=_read(f"{h.bm_transverse:.2f} m", "length"),
            immersion=_read(f"{h.mass_per_immersion / 1e5:.3f} t/cm", "line_load"),
            moment=_read(f"{h.moment_to_change_trim() / 1e5:.2f} t*m/cm", "mass"),
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
            draft=_read(f"{(h.draft + UNDER) / FOOT:.3f} ft", "length"),
            displacement=_read(f"{h.displacement / LONG_TON:.1f} long_ton", "mass"),
            lcb=_read(f"{(form.length / 2 - h.lcb) / FOOT:.2f} ft", "length"),
            km=_read(f"{(h.km_transverse + UNDER) / FOOT:.2f} ft", "length"),
            immersion=_read(f"{h.mass_per_immersion * INCH / LONG_TON:.3f} long_ton/in", "line_load"),
            moment=_read(f"{h.moment_to_change_trim() * INCH / LONG_TON / FOOT:.2f} ft*long_ton/in", "mass"),
            here=HERE,
        )
        for h in hydrostatic_table(form, [FOOT * (5 + 0.5 * k) for k in range(18)], 0.0, 1025.0)
    ]
    return CurvesOfForm(
        source="curves of form",
        centres=Centres(from_="amidships", plus="aft"),
        draft_zero=_read(f"-{UNDER} m", "length"),
        density=_read("64 lb/ft3", "density"),
        rows=tuple(rows),
        here=HERE,
    )


def without_tanks(**changes: object) -> Package:
    """Give Marram without tanks, whose bounds are partly the shell, her lightship further forward to trim her."""
    dry, lightship = replace(plan(), tanks_at_undocking=()), package().lightship
    assert lightship is not None
    light = replace(lightship.lightship, at=_read(f"{lightship.lightship.at.si + 0.9:.2f} m", "length"))
    return replace(package(), tanks=(), docking_plan=dry, lightship=replace(lightship, lightship=light), **changes)


@cache
def by_form() -> Calculated:
    """Give what is calculated with her offsets."""
    return calculated(without_tanks())


@cache
def on_curves(which: str) -> Calculated:
    """Give what is calculated with a table alone."""
    curves = metric() if which == "metric" else american()
    return calculated(without_tanks(offsets=None, curves=curves))


@pytest.mark.parametrize("which", ["metric", "american"])
def test_she_floats_and_lands_as_by_her_offsets(which):
    """Within the rounding of the printed table and the range that the corrections for trim state."""
    form, table = by_form(), on_curves(which)
    one, other = result_of(table, docking), result_of(form, docking)
    assert one.loading.mass == other.loading.mass
    assert one.hydrostatics.draft == pytest.approx(other.hydrostatics.draft, abs=0.005)
    assert one.hydrostatics.trim == pytest.approx(other.hydrostatics.trim, rel=0.04, abs=0.01)
    assert one.gm_fluid == pytest.approx(other.gm_fluid, abs=0.06)
    one, other = result_of(table, landing), result_of(form, landing)
    assert one.exact.settling.upthrust == pytest.approx(other.exact.settling.upthrust, rel=0.05)
    assert one.exact.settling.draft_aft == pytest.approx(other.exact.settling.draft_aft, abs=0.01)
    assert one.held.settling.upthrust == pytest.approx(other.held.settling.upthrust, rel=0.05)
    assert result_of(table, undocking).stable == result_of(form, undocking).stable
    assert result_of(table, facility_fits).keys() == result_of(form, facility_fits).keys()
    stated = result_of(table, stated_hydrostatics)
    assert stated["displacement"] == pytest.approx(result_of(form, stated_hydrostatics)["displacement"], rel=1e-3)
    assert stated["lcb"] == pytest.approx(result_of(form, stated_hydrostatics)["lcb"], abs=0.01)
    assert stated["km_transverse"] == pytest.approx(result_of(form, stated_hydrostatics)["km_transverse"], abs=0.01)


def test_what_it_rests_on_is_said():
    one = result_of(on_curves("american"), buoyancy)
    assert not one.known_by_form
    assert one.source.startswith("from the curves of form (curves of form); KB by Morrish's formula; LCF from the")
    assert list(one.given) == ["curves"]
    assert result_of(by_form(), buoyancy).known_by_form
    assert list(result_of(by_form(), buoyancy).given) == ["offsets"]
    both = result_of(calculated(without_tanks(curves=metric())), buoyancy)
    assert both.known_by_form
    assert both.hull is not None
    neither = calculated(without_tanks(offsets=None))
    assert neither.outcome(buoyancy) == Lacking(
        "it needs the hull: vessel/offsets.yaml, vessel/curves.yaml or vessel/sections.yaml"
    )


def test_what_needs_her_form_says_so():
    seats = on_curves("metric").outcome(side_block_seats)
    assert {outcome.why for outcome in seats.absent.values()} == {
        "it needs vessel/offsets.yaml or vessel/sections.yaml"
    }


def test_each_figure_comes_out_again_from_what_is_printed():
    assert list(different(on_curves("american").record)) == []


def test_a_table_is_less_sure_than_offsets():
    table, form = (result_of(of, how_sure) for of in (on_curves("metric"), by_form()))
    assert table.u("draft_aft") > form.u("draft_aft")
    assert any("table of hydrostatics" in name for name, _ in table.figures["draft_aft"].shares)


def test_wetted_surface_from_the_table_or_by_a_formula():
    exact = result_of(by_form(), stated_wetted_surface)["wetted_surface"]
    denny = result_of(on_curves("metric"), stated_wetted_surface)["wetted_surface"]
    assert denny == pytest.approx(exact, rel=0.06)
    rows = tuple(
        replace(row, wetted_surface=_read(f"{400 + 10 * k} m2", "area")) for k, row in enumerate(metric().rows)
    )
    stated = calculated(without_tanks(offsets=None, curves=replace(metric(), rows=rows)))
    assert result_of(stated, stated_wetted_surface)["wetted_surface"] == pytest.approx(490.0)


def test_the_printed_table_keeps_to_the_drafts_that_are_given():
    drafts = [h.draft for h in result_of(on_curves("american"), hydrostatics_table)]
    assert drafts[0] >= 5 * FOOT
    assert drafts == pytest.approx([2.2 + 0.2 * k for k in range(len(drafts))])


@pytest.mark.parametrize(
    ("name", "of", "words"),
    [
        ("moment", "some", "`moment` is given at 14 of 15 drafts"),
        ("moment", "none", "they need `moment` or `bm_longitudinal`"),
        ("bm", "none", "they need `km` or `bm`"),
        ("kb", "none", "or `kb` with `bm`"),
        ("displacement", "none", "they need `displacement` or `volume`"),
    ],
)
def test_a_table_that_lacks_a_column_is_told_at_its_place(name, of, words):
    table = metric()
    rows = tuple(replace(r, **{name: None}) if of == "none" or k == 3 else r for k, r in enumerate(table.rows))
    outcome = calculated(without_tanks(offsets=None, curves=replace(table, rows=rows))).outcome(buoyancy)
    record = calculated(without_tanks(offsets=None, curves=replace(table, rows=rows))).record
    assert not isinstance(outcome, HullCurves)
    notice = next(one for one in record.notices if one.code == "bad-table")
    assert words in notice.message
    assert notice.place == HERE


def test_it_fails_where_the_drafts_fall():
    table = metric()
    fallen = calculated(without_tanks(offsets=None, curves=replace(table, rows=table.rows[::-1])))
    assert not isinstance(fallen.outcome(buoyancy), Failed)
    assert any("must rise" in one.message for one in fallen.record.notices)
