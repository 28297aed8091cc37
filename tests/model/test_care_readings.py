"""Readings between dockings, read from CSV."""

from __future__ import annotations

import pytest

from tenderwright.model.care_readings import MOST_NOTICES, care_readings
from tenderwright.notices import Notice
from tenderwright.reading.source import Source

HEAD = "date,kind,place,value,unit,method,salinity,remark\n"


def read(rows: str, head: str = HEAD) -> tuple[list[object], list[Notice]]:
    found, notices = care_readings(Source("care/log.csv", head + rows))
    return list(found), notices


def test_each_kind_is_read_into_si() -> None:
    rows = (
        "2026-05-04,potential,Fr 24 port,-930,mV,silver,24,\n"
        "2026-05-04,leak,engine room bilge,20,L,,,\n"
        "2026-05-04,pump,engine room bilge,5,min,,,\n"
        "2026-05-04,anode,p1,45,%,,,\n"
        "2026-05-04,alarm,engine room bilge,fault,,,,float stuck\n"
        "2026-05-04,mooring,all lines,,,,,\n"
    )
    found, notices = care_readings(Source("care/log.csv", HEAD + rows))
    assert notices == []
    assert [one.si for one in found] == [pytest.approx(figure) for figure in (-0.93, 0.02, 300.0, 0.45)] + [None, None]
    assert [one.fault for one in found] == [False, False, False, False, True, False]
    assert found[0].here.line == 2


def test_columns_stand_in_any_order_and_those_not_used_are_left_out() -> None:
    found, notices = read("silver,-0.9,V,2026-05-04,aft,potential\n", "method,value,unit,date,place,kind\n")
    assert notices == []
    assert len(found) == 1


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ("04.05.2026,leak,bilge,20,L,,,", "not a day written year-month-day"),
        ("2026-05-04,leaks,bilge,20,L,,,", "none of the kinds"),
        ("2026-05-04,leak,,20,L,,,", "no place"),
        ("2026-05-04,leak,bilge,20,,,,", "needs a value and its unit"),
        ("2026-05-04,leak,bilge,20,V,,,", "volume"),
        ("2026-05-04,potential,aft,-930,V,silver,,", "no likely figure"),
        ("2026-05-04,potential,aft,-0.93,V,zink,,", "`method` must name the reference cell"),
        ("2026-05-04,potential,aft,-0.93,V,silver,0.1,", "open silver cell"),
        ("2026-05-04,alarm,bilge,12,,,,", "`in order`, `fault` or nothing"),
        ("2026-05-04,humidity,hold,120,%,,,", "no likely figure"),
        ("2026-05-04,leak,bilge,20,L,,salt,", "which is not a number"),
        ("2026-05-04,leak,bilge,20,L", "it has 5 cells"),
    ],
)
def test_a_row_that_cannot_be_read_is_told_with_why(row: str, words: str) -> None:
    found, (notice,) = read(f"{row}\n")
    assert found == []
    assert words in notice.message
    assert notice.place.line == 2


@pytest.mark.parametrize(
    ("head", "words"),
    [
        ("date,kind,plaice\n", "no column `plaice`"),
        ("date,kind\n", "does not name the column `place`"),
        ("date,date,kind\n", "is named twice"),
        ("", "does not name the column"),
    ],
)
def test_the_first_row_names_the_columns(head: str, words: str) -> None:
    found, (notice,) = read("", head)
    assert found == []
    assert words in notice.message


def test_of_very_many_bad_rows_only_some_are_told() -> None:
    _, notices = read("x,leak,bilge,1,L,,,\n" * (MOST_NOTICES + 5))
    assert len(notices) == MOST_NOTICES + 1
    assert "5 more rows" in notices[-1].message
