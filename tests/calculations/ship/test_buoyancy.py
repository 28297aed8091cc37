"""Marram on her curves of form alone, in metric and in US units, beside Marram on her offsets."""

from __future__ import annotations

from functools import cache

import pytest

from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.ship.block_places import side_block_seats
from tenderwright.calculations.ship.buoyancy import BETTER, buoyancy
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.ship.how_sure import how_sure
from tenderwright.calculations.ship.hydrostatics import hydrostatics_table, stated_hydrostatics, stated_wetted_surface
from tenderwright.calculations.ship.landing import landing, landing_estimate
from tenderwright.calculations.ship.side_loads import side_block_standing
from tenderwright.calculations.ship.trim import trim_plan
from tenderwright.calculations.ship.undocking import lifting_off, undocking
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.steps.outcome import Failed, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.quantities.quantity import NOWHERE
from tests.calculations.ship.marram import calculated, package
from tests.calculations.ship.on_curves import FOOT, HERE, american, measured, metric, without_tanks
from tests.outcomes import result_of
from tests.replacing import replace


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


def test_what_needs_her_form_says_so():
    seats = on_curves("metric").outcome(side_block_seats)
    assert {outcome.why for outcome in seats.absent.values()} == {
        "it needs vessel/offsets.yaml or vessel/sections.yaml"
    }


def test_what_side_blocks_bear_needs_their_places_and_no_shell():
    """Wind and earthquake go by weight, centre of gravity and the places of the blocks: the same on a table."""
    table, form = (result_of(of, side_block_standing) for of in (on_curves("metric"), by_form()))
    assert table.earthquake is not None
    assert table.lee(table.earthquake) == pytest.approx(form.lee(form.earthquake), rel=1e-3)


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
        replace(row, wetted_surface=measured(f"{400 + 10 * k} m2", "area")) for k, row in enumerate(metric().rows)
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


@cache
def estimated() -> Calculated:
    """Give what is calculated on main dimensions alone."""
    return calculated(without_tanks(offsets=None))


def test_on_main_dimensions_she_floats_at_her_displacement_and_no_more_is_said():
    """A first answer: weight and line load as they are, drafts to so much, and neither landing nor trim."""
    first = estimated()
    one = result_of(first, buoyancy)
    assert one.estimated == Lacking(BETTER)
    assert one.source == "estimated from main dimensions by published formulas"
    assert result_of(first, docking).loading.mass == result_of(by_form(), docking).loading.mass
    for step in (landing, lifting_off, undocking, trim_plan, landing_estimate):
        assert not isinstance(first.outcome(step), Failed)
        assert "it needs" in first.outcome(step).why
    sure = result_of(first, how_sure)
    assert sure.u("draft_aft") > 10 * result_of(by_form(), how_sure).u("draft_aft")
    assert sure.figures["draft_aft"].driver == "centre of buoyancy as estimated"
    assert sure.u("line_load") == pytest.approx(result_of(by_form(), how_sure).u("line_load"), rel=0.02)
    off = result_of(first, docking).hydrostatics.draft_aft - result_of(by_form(), docking).hydrostatics.draft_aft
    assert abs(off) < 2 * sure.u("draft_aft")
    assert list(different(first.record)) == []


def test_an_estimate_needs_the_displacement_and_is_not_made_beside_better_evidence():
    assert "hydrostatics.estimate.lcb" not in by_form().record.values
    assert "hydrostatics.estimate.lcb" in estimated().record.values
    particulars = package().particulars
    none = calculated(without_tanks(offsets=None, particulars=replace(particulars, displacement=None)))
    assert "for a first answer `displacement`" in none.outcome(buoyancy).why
    broken = calculated(without_tanks(offsets=None, curves=replace(metric(), rows=metric().rows[::-1])))
    assert "hydrostatics.estimate.lcb" not in broken.record.values


def test_a_mistake_in_lesser_evidence_takes_nothing_away():
    """Curves of form that fall are told of, and she floats on her offsets all the same."""
    broken = calculated(without_tanks(curves=replace(metric(), rows=metric().rows[::-1])))
    assert result_of(broken, buoyancy).known_by_form
    assert [one.place for one in broken.record.notices if one.code == "bad-table"] == [NOWHERE]
    assert result_of(broken, docking) == result_of(by_form(), docking)
