"""Lines are found by their numbers wherever they stand, and columns by headings or by place."""

from __future__ import annotations

import pytest

from tenderwright.pricing.bids.find_lines import find_lines, line_number, lines_named
from tests.reading.workbook.hostile import harmless

from .filled import (
    EXPECTED,
    PERCENTAGE,
    PRICED,
    PRICES,
    REMARKS,
    cells,
    codes,
    filled,
    of,
    read,
    returned,
    rows,
    sound,
    whole,
)

KNOWN = ("420.a", "110.b", "110.c", "305.a")


@pytest.mark.parametrize(
    "text",
    ["420.a", " 420.A ", "420 a", "420a", "420-a", "420/A", "420. a", "Item 420.a", "No. 420 a", "0420.a", "420.a."],
)
def test_a_number_as_typed(text: str) -> None:
    assert line_number(text, KNOWN) == "420.a"


@pytest.mark.parametrize(
    "text", ["520.a.suction-fire", " 520.A.Suction-Fire ", "520 a.suction-fire", "line 520a.suction-fire"]
)
def test_a_number_of_a_row_as_typed(text: str) -> None:
    assert line_number(text, ("520.a.suction-fire", "520.a.2")) == "520.a.suction-fire"


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("520.a", ("520.a.suction-fire", "520.a.2")),
        ("520.a.2", ("520.a.2",)),
        ("520.a.2, 420.a.", ("520.a.2", "420.a")),
        ("520", ("520.a.suction-fire", "520.a.2")),
    ],
)
def test_lines_of_rows_that_a_text_names(text: str, lines: tuple[str, ...]) -> None:
    assert lines_named(text, ("520.a.suction-fire", "520.a.2", "420.a")) == lines


@pytest.mark.parametrize(("text", "number"), [("999.z", "999.z"), ("999 z", ""), ("20 m", ""), ("420", ""), ("a", "")])
def test_a_number_that_is_not_known_counts_only_as_issued(text: str, number: str) -> None:
    assert line_number(text, KNOWN) == number


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("420.a", ("420.a",)),
        ("420 a, 305a", ("420.a", "305.a")),
        ("110", ("110.b", "110.c")),
        ("item 110; 420.a", ("110.b", "110.c", "420.a")),
        ("110.b and 999.z", ("110.b",)),
        ("all", ()),
        ("", ()),
    ],
)
def test_lines_that_a_text_names(text: str, lines: tuple[str, ...]) -> None:
    assert lines_named(text, KNOWN) == lines


def test_every_line_of_a_form_is_found_once_and_none_among_exclusions() -> None:
    def exclude(book: object) -> None:
        sheet = book[REMARKS]  # type: ignore[index]
        sheet["B5"], sheet["D5"] = "420.a", "not the peaks"

    found = find_lines(cells(filled(exclude)), EXPECTED.by_number)
    assert [one.number for one in found] == [line.number for line in EXPECTED.lines]


def test_without_headings_columns_are_taken_by_their_place() -> None:
    def spoil(book: object) -> None:
        for column in range(1, 13):
            book[PRICES].cell(4, column).value = f"Spalte {column}"  # type: ignore[index]

    found = returned(spoil)
    assert set(codes(found)) == {"bid-unread"}
    assert [f"`Spalte {n}`" in "".join(found.bid.doubts) for n in range(1, 13)] == [True] * 12
    assert {line.rate for line in found.bid.lines.values()} == {100}


def test_moved_columns_are_found_by_their_headings() -> None:
    def move(book: object) -> None:
        sheet = book[PRICES]  # type: ignore[index]
        for row in range(4, sheet.max_row + 1):
            sheet.cell(row, 7).value, sheet.cell(row, 12).value = sheet.cell(row, 12).value, sheet.cell(row, 7).value

    found = returned(move)
    assert found.notices == ()
    assert {line.rate for number, line in found.bid.lines.items() if number != PERCENTAGE} == {100}
    assert {line.note for line in found.bid.lines.values()} == {""}


def test_a_number_merged_over_two_rows_covers_both() -> None:
    def merge(book: object) -> None:
        sheet, row = book[PRICES], rows(book)["305.a"]  # type: ignore[index]
        sheet.insert_rows(row + 1)
        sheet.merge_cells(start_row=row, end_row=row + 1, start_column=1, end_column=1)
        sheet.cell(row + 1, 7).value, sheet.cell(row, 7).value = 55, None
        sheet.cell(row, 6).value = None

    assert returned(merge).bid.lines["305.a"].rate == 55


def test_a_workbook_without_lines_is_told_of_once() -> None:
    found = read(harmless(A1="hello", B1=5))
    assert [n.message for n in found.notices if n.code == "bid-edition"] == [
        "no line of the price form is found in this workbook"
    ]


def test_a_form_laid_out_as_forms_were_before_is_read_whole() -> None:
    """Titles stood before the words of each line, units as they are typed, remarks in the last column."""

    def older(book: object) -> None:
        sheet = book[PRICES]  # type: ignore[index]
        sheet.cell(4, 12).value = "Remarks of the yard"
        for line in EXPECTED.lines:
            row = rows(book)[line.number]
            sheet.cell(row, 2).value, sheet.cell(row, 5).value = f"{line.title}: {line.text}", line.unit
            if line.kind == "fixed":
                sheet.cell(row, 6).value, sheet.cell(row, 7).value = "fixed", "owner's sum"
            else:
                sheet.cell(row, 12).value = f"about {line.number}"

    found = returned(older)
    assert {words.rpartition(": ")[2] for words in of(found, "bid-unread")} == {
        "`Remarks of the yard`",
        "`fixed`",
        "`owner's sum`",
    }
    assert {number: line.note for number, line in found.bid.lines.items()} == {n: f"about {n}" for n in PRICED}


def test_the_form_filled_in_whole_is_read_without_a_notice() -> None:
    found = read(filled(whole))
    assert found.notices == ()
    assert sound(found)
