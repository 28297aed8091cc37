from __future__ import annotations

import csv
import io
import random
from datetime import date

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness import cells
from tenderwright.calculations.thickness.table import Kind, Refused, Table, read_table

HEADER = "strake,frame,side,as_built_mm,measured_mm,date,instrument,stage\n"
SURVEY: dict[str, Kind] = {
    "strake": "name",
    "frame": "name",
    "side": "name",
    "as_built_mm": "number",
    "measured_mm": "number",
    "date": "date",
    "instrument": "name",
    "stage": "name",
}
ROW = "A,8,port,12.7,12.0,2025-10-06,probe,afloat\n"


def named(table: Table, column: str) -> list[str]:
    codes = table.names[column]
    return [codes.names[code] for code in codes.code.tolist()]


def test_reads_a_survey_by_column() -> None:
    table = read_table(HEADER + ROW + "B,Fr 9,starboard, 9.5 ,.8,1934-06-01,probe,afloat", SURVEY)
    assert named(table, "strake") == ["A", "B"]
    assert named(table, "frame") == ["8", "Fr 9"]
    assert table.numbers["as_built_mm"].tolist() == [12.7, 9.5]
    assert table.numbers["measured_mm"].tolist() == [12.0, 0.8]
    assert table.dates["date"].tolist() == [
        date(2025, 10, 6).toordinal() - 719163,
        date(1934, 6, 1).toordinal() - 719163,
    ]
    assert table.years("date")[1] - table.years("date")[0] == pytest.approx(-91.348, abs=0.001)
    assert table.line.tolist() == [2, 3]
    assert table.refused == ()


def test_lists_the_rows_that_cannot_be_read_by_line() -> None:
    rows = [
        ROW,
        "\n",
        "A,8,port,12.7\n",
        "A,8,port,12.7,twelve,2025-10-06,probe,afloat\n",
        "A,8,port,12.7,12.0,2025-02-30,probe,afloat\n",
        "A,8,port,12,7,12,0,2025-10-06,probe,afloat\n",
        ROW,
    ]
    table = read_table(HEADER + "".join(rows), SURVEY)
    assert table.line.tolist() == [2, 8]
    assert table.refused == (
        Refused(4, "it has 4 cells, not 8"),
        Refused(5, "'twelve' is no number (measured_mm)"),
        Refused(6, "'2025-02-30' is no date (date)"),
        Refused(7, "it has 10 cells, not 8"),
    )


def test_takes_windows_line_ends_and_a_byte_order_mark() -> None:
    text = "\ufeff" + HEADER + ROW + "\n" + ROW
    table = read_table(text.replace("\n", "\r\n"), SURVEY)
    assert table.line.tolist() == [2, 4]
    assert named(table, "stage") == ["afloat", "afloat"]
    assert table.refused == ()


def test_understands_quoted_cells_and_keeps_their_lines() -> None:
    text = 'name,value\n"a, with comma",1.5\n"two\nlines",2.5\nplain,bad\n'
    table = read_table(text, {"name": "name", "value": "number"})
    assert named(table, "name") == ["a, with comma", "two lines"]
    assert table.line.tolist() == [2, 3]
    assert table.refused == (Refused(5, "'bad' is no number (value)"),)


def test_blocks_make_no_difference(monkeypatch: pytest.MonkeyPatch) -> None:
    chance = random.Random(3)
    rows = [f"{chance.choice('ABCDEFGH')}{chance.randrange(200)},{chance.uniform(0, 20):.2f}\n" for _ in range(500)]
    text = "name,value\n" + "".join(rows)
    whole = read_table(text, {"name": "name", "value": "number"})
    monkeypatch.setattr(cells, "_BLOCK", 100)
    parts = read_table(text, {"name": "name", "value": "number"})
    assert named(parts, "name") == named(whole, "name")
    assert parts.names["name"].names == whole.names["name"].names
    assert (parts.numbers["value"] == whole.numbers["value"]).all()
    assert (parts.line == whole.line).all()


def test_passes_over_other_columns_and_takes_optional_ones() -> None:
    table = read_table(
        "note,value\nx,1\ny,\n", {"value": "number", "tank": "name"}, optional=["tank"], may_be_empty=["value"]
    )
    assert table.names == {}
    assert np.isnan(table.numbers["value"]).tolist() == [False, True]


@pytest.mark.parametrize("text", [HEADER, HEADER.strip(), HEADER + "\n\n"])
def test_a_header_alone_gives_no_rows(text: str) -> None:
    table = read_table(text, SURVEY)
    assert table.line.size == 0
    assert table.numbers["measured_mm"].size == 0
    assert table.names["strake"].names == ()


@pytest.mark.parametrize(
    ("header", "why"), [("strake,frame\n", "no column"), ("value,value\n", "twice"), ("", "no column")]
)
def test_refuses_a_header_that_lacks_a_column_or_repeats_one(header: str, why: str) -> None:
    with pytest.raises(OutOfRange, match=why):
        read_table(header, {"value": "number"})


decimals = st.decimals(-1000, 1000, allow_nan=False, places=3).map(str)


@given(
    st.lists(
        st.one_of(decimals, st.floats(0, 1e6, allow_nan=False).map(repr), st.sampled_from(["1.", "+2", "1e1"])),
        min_size=1,
    )
)
@example(["-0.5", "12.345678901234567890", "1e-3"])
def test_numbers_are_read_as_python_reads_them(texts: list[str]) -> None:
    table = read_table("value\n" + "\n".join(texts), {"value": "number"})
    assert table.refused == ()
    assert table.numbers["value"].tolist() == [float(text) for text in texts]


@pytest.mark.parametrize(
    "text", ["1.2.3", ".", "-", "+.", "1_000", "nan", "inf", "0x10", "1 2", "1e", "1e999", "1-2", "--1"]
)
def test_refuses_what_is_no_number(text: str) -> None:
    table = read_table(f"value\n{text}\n7\n", {"value": "number"})
    assert [row.line for row in table.refused] == [2]
    assert table.numbers["value"].tolist() == [7.0]


cell = st.text(
    st.characters(codec="utf-8", exclude_characters=",\n\r\x1f", exclude_categories=["Cc", "Zs"]), max_size=40
)


@given(st.lists(st.tuples(cell, decimals), min_size=1, max_size=30))
def test_agrees_with_the_csv_module(rows: list[tuple[str, str]]) -> None:
    kept = [(name.strip(), value) for name, value in rows]
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerows([("name", "value"), *kept])
    table = read_table(out.getvalue(), {"name": "name", "value": "number"})
    expected = list(csv.reader(io.StringIO(out.getvalue())))[1:]
    assert named(table, "name") == [name for name, _ in expected]
    assert table.numbers["value"].tolist() == [float(value) for _, value in expected]


def test_tells_long_names_apart_by_their_last_letter() -> None:
    names = [f"ultrasonic gauge of the yard and probe number {n}" for n in range(3000)]
    table = read_table("name\n" + "\n".join(names * 2), {"name": "name"})
    assert named(table, "name") == names * 2
    assert len(table.names["name"].names) == 3000
