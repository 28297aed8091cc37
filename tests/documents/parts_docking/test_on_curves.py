"""The docking chapter of a ship known by her curves of form, or by her main dimensions alone."""

from __future__ import annotations

from functools import cache
from typing import Any

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.buoyancy import BETTER, CURVES_CAUTION, ESTIMATE_CAUTION
from tenderwright.calculations.ship.hydrostatics import hydrostatics_table
from tenderwright.documents.desk import Desk
from tenderwright.documents.dock_sheet import dock_sheet
from tenderwright.documents.edition import Table
from tenderwright.documents.in_words import in_words
from tenderwright.documents.owner.facility_fit import facility_comparison
from tenderwright.documents.parts.blocks import blocks
from tenderwright.documents.parts.docking import docking_data
from tenderwright.documents.parts.landing import landing
from tests.calculations.ship.on_curves import metric, without_tanks
from tests.documents.composed import composed, rows, words
from tests.outcomes import result_of
from tests.replacing import replace


@cache
def desk(which: str) -> Desk:
    curves = metric() if which != "dimensions" else None
    if which == "short" and curves is not None:
        curves = replace(curves, rows=tuple(row for row in curves.rows if row.draft.si > 2.7))
    package = without_tanks(offsets=None, curves=curves)
    return Desk(package, composed("marram").compiled.links, calculate(package))


def sheet(of: Desk) -> Any:
    return dock_sheet(of, composed("marram").edition("yard"))


def test_pages_say_that_she_is_floated_on_curves_and_how_far_that_reaches() -> None:
    on_curves = desk("curves")
    landed, fits, dockside = landing(on_curves), facility_comparison(on_curves), sheet(on_curves)
    for page in (docking_data(on_curves), landed, fits, dockside):
        assert page is not None
        assert words(page).count(CURVES_CAUTION) == 1
    assert "from the curves of form (table of 1961)" in words(docking_data(on_curves))
    assert "from the offsets" not in words(docking_data(on_curves))


def test_nothing_is_added_where_her_lines_are_known() -> None:
    known = composed("marram").desk()
    assert "floated on" not in words((docking_data(known), landing(known), facility_comparison(known)))


def test_a_table_that_ends_before_she_loses_her_stability_says_more_than() -> None:
    short = landing(desk("short"))
    assert short is not None
    assert "more than" in words(short)
    assert "less than" in words(short)
    assert "Stability lost without side blocks" not in words(sheet(desk("short")))


def test_on_main_dimensions_there_is_a_first_answer_and_no_landing() -> None:
    first = desk("dimensions")
    assert landing(first) is None
    assert sheet(first) is None
    said = words(docking_data(first))
    assert ESTIMATE_CAUTION in said
    assert f"Landing on the blocks. Not calculated: {in_words(BETTER)}." in said
    assert f"Dock sheet. Not calculated: {in_words(BETTER)}." in said
    fits = facility_comparison(first)
    assert fits is not None
    assert ESTIMATE_CAUTION in words(fits)
    assert "Not known" in words(fits)


def test_what_the_side_blocks_bear_stands_beside_their_places() -> None:
    part = blocks(desk("curves"))
    assert part is not None
    places = next(one for one in part.blocks if isinstance(one, Table) and len(one.columns) == 6)
    assert all(float(row[5]) > 0 for row in rows(places))
    said = words(part)
    assert "The shell over them. Not calculated: it needs the table of offsets or sections of the hull." in said
    assert "Loads of the side blocks. Not calculated" not in said
    assert "Sliding on the blocks" in said


def test_the_table_of_a_package_in_us_units_goes_by_half_feet() -> None:
    metric_desk = desk("curves")
    package = replace(metric_desk.package, tender=replace(metric_desk.tender, units="us"))
    drafts = [one.draft / 0.1524 for one in result_of(calculate(package), hydrostatics_table)]
    assert [round(draft, 6) for draft in drafts] == [float(round(draft)) for draft in drafts]
