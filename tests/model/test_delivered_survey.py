"""Surveys as firms deliver them: inches, their own columns, words and dates; nothing of them is lost in silence."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.model.build import Builder
from tenderwright.model.delivered_survey import survey_of
from tenderwright.model.reading_rows import read_rows
from tenderwright.model.survey import MOST_NOTICES, Survey
from tenderwright.model.survey_columns import SurveyColumns
from tenderwright.notices import Notice
from tenderwright.reading.source import Source
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.validate import validate

HEAD = "strake,frame,side,tank,member,kind,as_built_{0},measured_{0},date,instrument,stage"
LOCATION = """
columns:
  - { column: LOCATION, reads: ["Strake {strake} frame {frame} {side}", "{strake}-{frame}{side}"] }
  - { column: "ORIG (IN)", reads: ["{as_built}"], unit: in }
  - { column: GAUGED, reads: ["{measured}"], unit: mil }
  - { column: DATE, reads: ["{date}", "{date} {any}"] }
dates: month/day/year
left_out: [REMARKS]
same: { stage: afloat }
"""


def delivered(text: str, said: str = "") -> tuple[Survey, list[Notice]]:
    if not said:
        return survey_of(Source("surveys/firm.csv", text))
    source, notices = read_yaml("surveys/firm.yaml", said)
    assert [*notices, *validate(source, "survey-columns")] == []
    return survey_of(Source("surveys/firm.csv", text), Builder(source).build(SurveyColumns, source.data))


def rows(survey: Survey) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(survey.text)))


def mm(survey: Survey) -> list[tuple[float, float]]:
    return [(float(row["as_built_mm"]), float(row["measured_mm"])) for row in rows(survey)]


@pytest.mark.parametrize(
    ("unit", "as_built", "measured"),
    [("mm", "9.525", "8.001"), ("in", "0.375", ".315"), ("mil", "375", "315"), ("in", "3/8 in", "315 mil")],
)
def test_thicknesses_are_in_the_unit_that_the_heading_names(unit: str, as_built: str, measured: str) -> None:
    survey, notices = delivered(f"{HEAD.format(unit)}\nA,10,port,,,plate,{as_built},{measured},2027-06-01,g,afloat\n")
    assert notices == []
    assert mm(survey) == [(pytest.approx(9.525), pytest.approx(8.001))]


@pytest.mark.parametrize(
    "heading", ["measured (in)", "measured [in]", "Measured in", "measured_inches", 'measured (")']
)
def test_a_heading_may_have_its_unit_in_brackets(heading: str) -> None:
    text = io.StringIO()
    csv.writer(text).writerows([["strake", "as_built_mm", heading], ["A", "9.5", "0.25"]])
    survey, notices = delivered(text.getvalue())
    assert notices == []
    assert mm(survey) == [(9.5, pytest.approx(6.35))]


def test_a_row_in_inches_that_cannot_be_read_is_told_at_its_line_and_the_others_keep_theirs() -> None:
    good = "A,10,port,,,plate,.375,.3,2027-06-01,g,afloat"
    survey, (notice,) = delivered(f"{HEAD.format('in')}\n\n{good}\n{good.replace(',.3,', ',thin,')}\n{good}\n")
    assert (notice.code, notice.place.line) == ("bad-survey", 4)
    assert [bool(line) for line in survey.text.splitlines()] == [True, False, True, False, True]


def test_columns_that_nothing_reads_are_named() -> None:
    survey, (notice,) = delivered("strake,frame,side,as_built_mm,measured_mm,date,remarks\nA,1,port,9,8,2027-06-01,x\n")
    assert (notice.code, notice.severity) == ("delivered-unread", "warning")
    assert "`remarks`" in notice.message
    assert survey.text.startswith("strake")


def test_the_file_of_a_firm_is_read_by_what_is_said_of_its_columns() -> None:
    text = (
        "LOCATION,ORIG (IN),GAUGED,DATE,REMARKS\n"
        "Strake A frame 12 P,3/8,315,10/8/2025,\n"
        'STRAKE  B  FRAME 12-13 STBD,0.375,0.3",10/8/25 14:05,"pitted,\nwashed"\n'
        "c-14S,.375,8 mm,10/09/2025,\n"
    )
    survey, notices = delivered(text, LOCATION)
    assert notices == []
    read = [(row["strake"], row["frame"], row["side"], row["date"], row["stage"]) for row in rows(survey)]
    assert read == [
        ("A", "12", "port", "2025-10-08", "afloat"),
        ("B", "12.5", "starboard", "2025-10-08", "afloat"),
        ("C", "14", "starboard", "2025-10-09", "afloat"),
    ]
    assert [one for _, one in mm(survey)] == [pytest.approx(8.001), pytest.approx(7.62), pytest.approx(8.0)]
    assert survey.lines == (1, 2, 4, 5)


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ("amidships,0.375,315,10/8/2025,", "`amidships` under `LOCATION` is of none of the forms"),
        ("A-12P,0.375,thin,10/8/2025,", "`thin` under `GAUGED`"),
        ("A-12P,0.375,315,31/12/2025,", "`31/12/2025` is not a date written month/day/year"),
        ("A-12P,,315,10/8/2025,", "it has no thickness as built"),
        ("A-12P,0.375,315,,", "it has no date"),
        ("A-12P,0.375,315,10/8/2025,,,", "it has 7 cells, and there are 5 headings"),
    ],
)
def test_a_row_of_a_firm_that_cannot_be_read_is_told_at_its_line(row: str, words: str) -> None:
    survey, (notice,) = delivered(
        f"LOCATION,ORIG (IN),GAUGED,DATE,REMARKS\nA-11P,0.375,315,10/8/2025,\n{row}\n", LOCATION
    )
    assert (notice.code, str(notice.place)) == ("bad-survey", "surveys/firm.csv:3:1")
    assert words in notice.message
    assert len(rows(survey)) == 1


def test_of_very_many_bad_rows_of_a_firm_only_some_are_told_one_by_one() -> None:
    bad = "A-12P,0.375,thin,10/8/2025,\n" * 500
    _, notices = delivered(f"LOCATION,ORIG (IN),GAUGED,DATE,REMARKS\n{bad}", LOCATION)
    assert len(notices) == MOST_NOTICES + 1
    assert "480 more rows" in notices[-1].message


def test_each_side_may_have_its_column_and_a_row_without_a_thickness_is_told() -> None:
    said = """
heading_row: 3
separator: semicolon
decimal_comma: true
columns:
  - { column: Plate, reads: ["{strake}"], down: true }
  - { column: Frame, reads: ["{frame}"] }
  - { column: Port, reads: ["{measured}"], side: port }
  - { column: Stbd, reads: ["{measured}"], side: starboard }
  - { column: Part, reads: ["{tank}"] }
words:
  - { of: strake, written: "1", means: A }
  - { of: tank, written: fpt, means: forepeak }
same: { as_built: 3/8 in, date: 2025-10-08, kind: pit }
"""
    text = (
        "Harrow Gauging;;\n;;\nPlate;Frame;Port;Stbd;Part;Seen by\n1;10;8,5;8,25;;\n;11;;7,5;FPT;\n;;;;;\n2;12;;;;J\n"
    )
    survey, notices = delivered(text, said)
    assert [(notice.code, notice.place.line) for notice in notices] == [
        ("delivered-unread", 3),
        ("delivered-unread", 7),
    ]
    read = [(row["strake"], row["frame"], row["side"], row["measured_mm"], row["tank"]) for row in rows(survey)]
    assert read == [
        ("A", "10", "port", "8.5", ""),
        ("A", "10", "starboard", "8.25", ""),
        ("A", "11", "starboard", "7.5", "forepeak"),
    ]
    assert {row["as_built_mm"] for row in rows(survey)} == {"9.525"}
    assert {row["kind"] for row in rows(survey)} == {"pit"}
    assert survey.lines == (1, 4, 4, 5)


@pytest.mark.parametrize(
    ("written", "better", "words"),
    [
        ("column: GAUGED", "column: GAUGE", "has no column `GAUGE`"),
        ("{strake}-", "{plate}-", "reads `plate`"),
        ("{strake}-{frame}", "{strake}-{strake}", "reads `strake` twice"),
        ('["{measured}"]', '["{any}"]', "no column has `{measured}`"),
        ('["{date}", "{date} {any}"]', '["{any}"]', "no column has `{date}`"),
        ('["{as_built}"]', '["{any}"]', "no column has `{as_built}`"),
    ],
)
def test_what_is_said_of_the_columns_must_fit_the_file(written: str, better: str, words: str) -> None:
    survey, notices = delivered(
        "LOCATION,ORIG (IN),GAUGED,DATE,REMARKS\nA-11P,0.375,315,10/8/2025,\n", LOCATION.replace(written, better)
    )
    assert {notice.code for notice in notices} == {"delivered-columns"}
    assert any(words in notice.message for notice in notices)
    assert all(notice.place.path == "surveys/firm.yaml" for notice in notices)
    assert rows(survey) == []


def test_readings_of_a_docking_may_be_in_inches_too() -> None:
    text = f"{HEAD.format('in')}\nA,10,port,,,plate,.375,.3,2027-06-01,g,afloat\n"
    (row,), notices = read_rows(Source("readings.csv", text))
    assert notices == []
    assert (row.as_built, row.measured, row.here.line) == (pytest.approx(9.525), pytest.approx(7.62), 2)


@given(st.text("abcA0123,;.\"/\n {}'-", max_size=80))
def test_any_file_is_read_or_told_and_no_more_rows_come_out_than_lines(text: str) -> None:
    for said in ("", LOCATION):
        survey, _ = delivered(f"LOCATION,ORIG (IN),GAUGED,DATE,REMARKS\n{text}", said)
        assert all(1 <= line <= text.count("\n") + 2 for line in survey.lines)
