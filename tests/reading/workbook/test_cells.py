"""Cells are read as values, with the results stored beside formulas; merged cells show what the first of them does."""

from __future__ import annotations

import io
from datetime import date, datetime
from decimal import Decimal

import openpyxl
import pytest

from tenderwright.notices import Place
from tenderwright.reading.workbook import cells as reading
from tenderwright.reading.workbook.cells import Cell, Workbook, read_cells
from tenderwright.reading.workbook.guard import look_through
from tenderwright.reading.workbook.refusal import Area, area_of, column_letters, column_number

from . import hostile


def read(data: bytes) -> Workbook:
    book, notices = read_cells(look_through("bid.xlsx", data))
    assert notices == []
    assert book is not None
    return book


def cell(book: Workbook, address: str, sheet: int = 0) -> Cell:
    area = area_of(address)
    return book.sheets[sheet].at(area.top, area.left)


def test_values_of_each_kind() -> None:
    book = read(
        hostile.harmless(
            A1=" 420.a ",
            B1=12.5,
            C1=9.95,
            D1=3,
            E1=True,
            F1=date(2027, 2, 1),
            G1=datetime(2027, 2, 1, 9, 30),
            H1=0.1 + 0.2,
        )
    )
    values = {address: cell(book, address).value for address in ("B1", "C1", "D1", "E1", "F1", "G1", "H1")}
    assert values == {
        "B1": Decimal("12.5"),
        "C1": Decimal("9.95"),
        "D1": Decimal(3),
        "E1": True,
        "F1": date(2027, 2, 1),
        "G1": datetime(2027, 2, 1, 9, 30),
        "H1": Decimal("0.3"),
    }
    assert (cell(book, "A1").text, cell(book, "B1").text) == ("420.a", "12.5")
    assert cell(book, "Z9").empty


def test_a_cell_knows_its_place_and_its_sheet() -> None:
    found = cell(read(hostile.harmless(F12="x")), "F12")
    assert found.address == "Prices!F12"
    assert found.place == Place("bid.xlsx", 12, 6)


def test_a_formula_is_read_with_its_stored_result_and_never_calculated() -> None:
    row = (
        '<row r="1"><c r="A1"><f>2+2</f><v>5</v></c><c r="B1"><f>2+2</f></c>'
        '<c r="C1" t="e"><f>1/0</f><v>#DIV/0!</v></c></row>'
    )
    book = read(hostile.with_cells(f"<sheetData>{row}</sheetData>"))
    stored, lost, wrong = (cell(book, address) for address in ("A1", "B1", "C1"))
    assert (stored.value, stored.formula) == (Decimal(5), "=2+2")
    assert (lost.value, lost.formula, lost.empty) == (None, "=2+2", False)
    assert (wrong.value, wrong.error, wrong.text) == (None, "#DIV/0!", "#DIV/0!")


def test_text_that_begins_like_a_formula_is_text() -> None:
    row = '<row r="1"><c r="A1" t="inlineStr"><is><t>=cmd</t></is></c></row>'
    found = cell(read(hostile.with_cells(f"<sheetData>{row}</sheetData>")), "A1")
    assert (found.value, found.formula) == ("=cmd", "")


def test_characters_that_show_nothing_are_left_out() -> None:
    row = '<row r="1"><c r="A1" t="inlineStr"><is><t>no&#127; bid&#133;&#13;&#10;here</t></is></c></row>'
    assert cell(read(hostile.with_cells(f"<sheetData>{row}</sheetData>")), "A1").value == "no bid\nhere"


def test_numbers_beyond_all_prices_are_errors() -> None:
    row = '<row r="1"><c r="A1"><v>1e999</v></c><c r="B1"><v>1e18</v></c></row>'
    book = read(hostile.with_cells(f"<sheetData>{row}</sheetData>"))
    assert [cell(book, address).error for address in ("A1", "B1")] == ["#NUM!", "#NUM!"]


def test_merged_cells_show_what_the_first_of_them_holds() -> None:
    book = openpyxl.Workbook()
    sheet = book.create_sheet("Second")
    sheet["B2"] = "420.a"
    sheet.merge_cells("B2:C4")
    output = io.BytesIO()
    book.save(output)
    found = read(output.getvalue()).sheets[1]
    assert found.merged == (Area(2, 2, 4, 3),)
    assert [found.at(row, 3).text for row in (1, 2, 4, 5)] == ["", "420.a", "420.a", ""]
    assert found.at(4, 3).address == "Second!B2"


def test_cells_beyond_the_extent_that_a_sheet_declares_are_read() -> None:
    data = hostile.changed(hostile.SHEET, '<dimension ref="A1:B1"/>', '<dimension ref="A1"/>')
    assert cell(read(data), "B1").value == Decimal("12.5")


def test_hidden_sheets_and_rows_are_read() -> None:
    book = openpyxl.Workbook()
    hidden = book.create_sheet("Hidden")
    hidden["A1"] = 7
    hidden.sheet_state = "veryHidden"
    hidden.row_dimensions[1].hidden = True
    output = io.BytesIO()
    book.save(output)
    assert cell(read(output.getvalue()), "A1", sheet=1).value == 7


def test_a_damaged_workbook_is_told_of() -> None:
    data = hostile.changed(hostile.BOOK, 'r:id="rId1"', 'r:id="rId77"')
    book, (notice,) = read_cells(look_through("bid.xlsx", data))
    assert (book, notice.code) == (None, "unreadable-workbook")
    assert "damaged" in notice.message


def test_one_part_shown_as_many_sheets_is_refused() -> None:
    sheets = "".join(f'<sheet name="s{n}" sheetId="{n + 5}" r:id="rId1"/>' for n in range(reading.MAX_SHEETS + 1))
    contents = hostile.members(hostile.harmless())
    text = contents[hostile.BOOK].decode()
    namespace = 'xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"'
    body = text.replace("<sheets>", f"<sheets {namespace}>{sheets}")
    data = hostile.pack({**contents, hostile.BOOK: body.encode()})
    book, (notice,) = read_cells(look_through("bid.xlsx", data))
    assert (book, notice.code) == (None, "unsafe-workbook")
    assert "sheets; at most 50" in notice.message


def test_cells_are_counted_again_while_they_are_read(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reading, "MAX_CELLS", 1)
    book, (notice,) = read_cells(look_through("bid.xlsx", hostile.harmless()))
    assert (book, notice.code) == (None, "unsafe-workbook")


@pytest.mark.parametrize(("letters", "number"), [("A", 1), ("Z", 26), ("AA", 27), ("GR", 200), ("XFD", 16384)])
def test_letters_of_columns(letters: str, number: int) -> None:
    assert (column_number(letters), column_letters(number)) == (number, letters)
