from __future__ import annotations

import pytest

from tenderwright.calculations.ship.survey_readings import read_surveys, survey_readings
from tenderwright.model.build import Builder
from tenderwright.model.delivered_survey import survey_of
from tenderwright.model.survey import MOST_NOTICES, Survey
from tenderwright.model.survey_columns import SurveyColumns
from tenderwright.notices import Notice, Place
from tenderwright.reading.source import Source
from tenderwright.reading.yaml_file import read_yaml
from tests.replacing import replace

from .ship import HEAD, marram, shot, survey

GOOD = shot("A", 31, "port", 11.1, 10.2)


def read(one: Survey):  # type: ignore[no-untyped-def]
    package, _, _ = marram()
    return read_surveys(replace(package, surveys=(one,)))


def test_a_row_becomes_a_reading_in_metres_at_its_frame() -> None:
    package, _, _ = marram()
    assert package.frames is not None
    found, notices = read(survey(GOOD, shot("C", 36.4, "starboard", 9.5, 8.1)))
    assert notices == []
    assert found.plate.measured.tolist() == pytest.approx([0.0102, 0.0081])
    assert found.plate.as_built.tolist() == pytest.approx([0.0111, 0.0095])
    assert found.plate.side.tolist() == [0, 1]
    assert found.plate.strake.tolist() == [0, 2]
    assert found.plate.x.tolist() == pytest.approx([package.frames.x(31), package.frames.x(36) + 0.4 * 0.6])


def test_a_frame_may_be_written_as_a_position() -> None:
    package, _, _ = marram()
    assert package.frames is not None
    found, _ = read(survey(shot("A", "Fr 36 + 200 mm", "port", 11.1, 10)))
    assert found.plate.x.tolist() == pytest.approx([package.frames.x(36) + 0.2])


def test_pits_and_members_stand_apart_from_plate() -> None:
    rows = (GOOD, "B,36,port,,,pit,11.1,7,2025-10-06,g,afloat", ",,,forepeak,floor 80,plate,7.9,5,2025-10-06,g,afloat")
    found, notices = read(survey(*rows))
    assert notices == []
    assert (len(found.plate), len(found.pits), found.members.names) == (1, 1, (("forepeak", "floor 80"),))


@pytest.mark.parametrize(
    "bad",
    [
        GOOD + ",more",
        GOOD.removesuffix(",afloat"),
        shot("A", 31, "port", 11.1, "thin"),  # type: ignore[arg-type]
        shot("A", 31, "port", 11.1, 0),
        shot("A", 31, "port", 11.1, 900),
        shot("A", 31, "port", 11.1, 10, "2025-02-30"),
        shot("A", 31, "left", 11.1, 10),
        shot("A", 310, "port", 11.1, 10),
        shot("A", "midships", "port", 11.1, 10),
        shot("Q", 31, "port", 11.1, 10),
        shot("", 31, "port", 11.1, 10),
        GOOD.replace("plate", "plank"),
        ",,,keelson,floor 80,plate,7.9,5,2025-10-06,g,afloat",
    ],
)
def test_a_row_that_cannot_be_used_is_told_at_its_line_and_left_out(bad: str) -> None:
    found, (notice,) = read(survey(GOOD, bad, GOOD))
    assert (notice.code, str(notice.place)) == ("bad-survey", "surveys/thickness-2025.csv:3:1")
    assert len(found.plate) == 2


@pytest.mark.parametrize("text", ["", "\n", "a,b,c\n", GOOD + "\n"])
def test_the_first_row_names_the_columns(text: str) -> None:
    found, (notice,) = read(Survey("x", text, Place("surveys/x.csv")))
    assert found is None
    assert notice.code == "bad-survey"
    assert any("strake,frame,side" in hint for hint in notice.hints)


def test_columns_for_tanks_kind_and_instrument_may_be_left_out() -> None:
    head = "strake,frame,side,as_built_mm,measured_mm,date"
    found, notices = read(survey("A,31,port,11.1,10.2,2025-10-06", head=head))
    assert notices == []
    assert len(found.plate) == 1


def test_of_very_many_bad_rows_only_some_are_told_one_by_one() -> None:
    bad = [shot("A", 31, "port", 11.1, 0)] * 5000
    _, notices = read(survey(GOOD, *bad))
    assert len(notices) == MOST_NOTICES + 1
    assert "4980 more rows" in notices[-1].message
    assert all(isinstance(notice, Notice) for notice in notices)


def test_surveys_are_counted_in_order_of_time() -> None:
    package, _, calculated = marram()
    assert [count.name for count in calculated.found(survey_readings).counts] == ["thickness-2007", "thickness-2025"]
    rows = sum(one.text.count("\n") - 1 for one in package.surveys)
    assert sum(count.readings + count.pits for count in calculated.found(survey_readings).counts) == rows
    assert rows >= 3000
    assert all(one.text.startswith(HEAD) for one in package.surveys)


def test_of_a_survey_as_delivered_a_row_is_told_at_its_line_in_the_file() -> None:
    said, _ = read_yaml(
        "surveys/firm.yaml",
        "columns:\n"
        '  - { column: WHERE, reads: ["{strake} {frame} {side}"] }\n'
        '  - { column: P, reads: ["{measured}"], unit: in }\n'
        "same: { as_built: 7/16 in, date: 2025-10-06 }\n",
    )
    columns = Builder(said).build(SurveyColumns, said.data)
    text = "WHERE,P\n\nA 31 P,0.4\n\nQ 31 P,0.4\n"
    delivered, notices = survey_of(Source("surveys/firm.csv", text), columns)
    found, (notice,) = read(delivered)
    assert notices == []
    assert (notice.message, str(notice.place)) == ("`Q` is not a strake of hers", "surveys/firm.csv:5:1")
    assert found.plate.measured.tolist() == pytest.approx([0.01016])
    assert found.plate.as_built.tolist() == pytest.approx([0.0111125])
