"""The dock sheet: two to four pages that stand by themselves, with the caution on each."""

from __future__ import annotations

from io import BytesIO

import pypdf
import pytest

from tenderwright.calculations.ship.docking_condition import docking as docking_step
from tenderwright.calculations.ship.landing import landing_stages
from tenderwright.documents.edition import Edition
from tenderwright.writing.pdf import Typesetter
from tests.documents.composed import composed, rows, tables, targets, words


@pytest.fixture(scope="module")
def sheet() -> Edition:
    return composed("marram").edition("yard").sheets["dock-sheet"]


@pytest.fixture(scope="module")
def pages(sheet: Edition) -> list[str]:
    typeset = Typesetter().typeset(sheet, 1_822_635_000, "dock-sheet")
    assert typeset.uncovered == ""
    reader = pypdf.PdfReader(BytesIO(typeset.pdf))
    return [" ".join(page.extract_text().split()) for page in reader.pages]


def test_it_is_two_to_four_pages_with_the_caution_on_each(pages: list[str]) -> None:
    assert 2 <= len(pages) <= 4
    for page in pages:
        assert "certifies nothing" in page
        assert "naval architect and the dockmaster" in page


def test_it_links_to_nothing_outside_itself(sheet: Edition) -> None:
    assert targets(sheet) == []


def test_it_gives_the_levels_in_order_and_what_the_marks_read(sheet: Edition) -> None:
    stages = next(table for table in tables(sheet) if len(rows(table)) == len(composed("marram").found(landing_stages)))
    assert [row[0].lower() for row in rows(stages)] == [
        stage.name for stage in composed("marram").found(landing_stages)
    ]
    form = next(table for table in tables(sheet) if table.ruled and table.columns[1].title == "Draft aft")
    read = dict(zip([column.title for column in form.columns], rows(form)[0], strict=True))
    position = composed("marram").found(docking_step)
    assert position is not None
    # Her marks read from the underside of the bar keel, 180 mm below the keel line.
    assert read["Draft aft"] == f"{position.hydrostatics.draft_aft + 0.18:.2f} m"
    assert read["Draft forward"] == f"{position.hydrostatics.draft_forward + 0.18:.2f} m"


def test_who_is_answerable_signs_before_the_water_falls_and_before_it_rises_on_the_inspection_plan(
    sheet: Edition,
) -> None:
    plan = composed("marram").edition("yard").sheets["inspection-plan"]
    for paper, when in ((sheet, "Signed before the water falls"), (plan, "Signed when every row above is")):
        signed = next(table for table in tables(paper) if table.columns[0].title == when)
        assert [row[0] for row in rows(signed)] == ["Dockmaster", "Owner's representative", "Naval architect"]
    assert "“Before flooding” of the inspection plan" in words(sheet)


def test_what_is_sounded_before_flooding_has_room_beside_what_was_calculated(sheet: Edition) -> None:
    listed = next(table for table in tables(sheet) if table.columns[0].title == "Tank")
    assert listed.columns[-1].title == "As sounded"
    assert {row[-1] for row in rows(listed)} == {""}


def test_the_owner_edition_has_none_beside_it() -> None:
    assert "dock-sheet" not in composed("marram").edition("owner").sheets


def test_without_a_docking_plan_there_is_no_sheet() -> None:
    assert "dock-sheet" not in composed("starter").edition("yard").sheets
