"""A CSV file of things is read as YAML would be: each cell with its place."""

from __future__ import annotations

import csv
import io

from hypothesis import given
from hypothesis import strategies as st

from tenderwright.reading.csv_rows import read_rows
from tenderwright.reading.scalars import Todo

HEAD = "file,date,caption\n"


def test_every_cell_knows_its_place() -> None:
    source, notices = read_rows("p.csv", HEAD + 'a.jpg,2026-05-20,"Seam, weeping"\nb.jpg,todo,Grid\n', "rows")
    assert notices == []
    assert source.data == {
        "rows": [
            {"file": "a.jpg", "date": "2026-05-20", "caption": "Seam, weeping"},
            {"file": "b.jpg", "date": "todo", "caption": "Grid"},
        ]
    }
    assert str(source.place(("rows", 0, "caption"))) == "p.csv:2:18"
    assert str(source.place(("rows", 1, "date"))) == "p.csv:3:7"
    assert str(source.place(("rows", 1))) == "p.csv:3:1"
    assert str(source.key_place(("rows", 1, "date"))) == "p.csv:1:6"
    assert source.todos == (("rows", 1, "date"),)
    assert isinstance(source.data["rows"][1]["date"], Todo)
    assert str(source.find_in(("rows", 0, "caption"), "weeping")) == "p.csv:2:25"


def test_headings_are_read_as_people_write_them_and_spreadsheets_part_them() -> None:
    for separator in ",;\t":
        text = separator.join(("File", "May be published", "")) + "\n" + separator.join(("a.jpg", " yes ", "")) + "\n\n"
        source, notices = read_rows("p.csv", text, "rows")
        assert notices == []
        assert source.data == {"rows": [{"file": "a.jpg", "may_be_published": "yes"}]}


def test_nothing_of_a_row_is_dropped_in_silence() -> None:
    source, (twice, long) = read_rows("p.csv", "file,date,file\na.jpg,2026-05-20,,Seam\n", "rows")
    assert (long.code, str(long.place)) == ("row-too-long", "p.csv:2:19")
    assert (twice.code, str(twice.place)) == ("duplicate-key", "p.csv:1:11")
    assert source.data == {"rows": [{"file": "a.jpg", "date": "2026-05-20"}]}


def test_an_empty_file_has_no_rows() -> None:
    for text in ("", "\n", HEAD, HEAD + ",,\n"):
        assert read_rows("p.csv", text, "rows")[0].data == {"rows": []}


CELL = st.text(st.sampled_from('ab ,;"\n\té'), max_size=8)


@given(st.lists(st.tuples(CELL, CELL), max_size=5))
def test_what_the_library_writes_is_read_back(rows: list[tuple[str, str]]) -> None:
    written = io.StringIO()
    csv.writer(written, lineterminator="\n").writerows([("one", "two"), *rows])
    source, notices = read_rows("p.csv", written.getvalue(), "rows")
    wanted = [
        {key: cell.strip() for key, cell in zip(("one", "two"), row, strict=True) if cell.strip()} for row in rows
    ]
    assert notices == []
    assert source.data == {"rows": [row for row in wanted if row]}
    for at, (line, _, _) in source.values.items():
        if len(at) == 3:
            start, end = source.ends[at]
            assert written.getvalue().count("\n", 0, start) + 1 == line
            assert source.data["rows"][at[1]][at[2]].split("\n")[0].split('"')[0] in source.text[start:end]
