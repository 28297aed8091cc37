"""The price form: its XML, its locks, its stored results, and what LibreOffice makes of it."""

from __future__ import annotations

import csv
import io
import re
import zipfile
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tenderwright.documents.price_form import FormSection, PriceForm
from tenderwright.writing.price_form_heights import lines_of
from tenderwright.writing.price_form_sums import line_amount
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.programs import convert

from .sample import line, sample_form

_RATES = {
    "105.a": "48000",
    "105.b": "1850.50",
    "305.a": "21.335",
    "420.a": "0",
    "410.a": "32.10",
    "900.a": "61.75",
    "900.b": "12.5",
    "705.a": "9900",
    "405.z": "110",
}


def _priced(form: PriceForm) -> PriceForm:
    sections = tuple(
        replace(
            section,
            lines=tuple(
                one if one.kind == "fixed" else replace(one, rate=Decimal(_RATES[one.number])) for one in section.lines
            ),
        )
        for section in form.sections
    )
    return replace(form, sections=sections)


# Worked by hand from the quantities of the sample and the rates above.
_BASE = Decimal("48000") + Decimal("2500") + Decimal("13067.69") + Decimal("0") - Decimal("352.00")
_EVALUATED = (
    _BASE + Decimal("7402.00") + Decimal("3852.00") + Decimal("12350.00") + Decimal("16875.00") + Decimal("9900")
)


def _member(book: bytes, name: str) -> str:
    with zipfile.ZipFile(io.BytesIO(book)) as packed:
        return packed.read(name).decode()


def _stored(book: bytes) -> Any:
    return openpyxl.load_workbook(io.BytesIO(book), data_only=True)


def _live(book: bytes) -> Any:
    return openpyxl.load_workbook(io.BytesIO(book))


def _named(book: Any, name: str) -> Any:
    sheet, _, address = book.defined_names[name].attr_text.partition("!")
    return book[sheet.strip("'")][address.replace("$", "")].value


def _rows(book: Any) -> dict[str, int]:
    sheet = book["Price form"]
    return {
        sheet.cell(row, 1).value: row for row in range(5, sheet.max_row + 1) if "." in str(sheet.cell(row, 1).value)
    }


def test_empty_form_stores_the_owners_sums_as_results() -> None:
    stored = _stored(price_form_workbook(sample_form()))
    assert _named(stored, "Base_total") == 2500
    assert _named(stored, "Evaluated_total") == 2500
    assert _named(stored, "Section_A_total") == 2500
    assert _named(stored, "Section_C_total") == 0
    assert stored["Price form"].cell(_rows(stored)["420.a"], 9).value == "to price"


def test_owner_form_stores_the_totals_of_its_rates() -> None:
    stored = _stored(price_form_workbook(_priced(sample_form())))
    assert _named(stored, "Base_total") == pytest.approx(float(_BASE))
    assert _named(stored, "Evaluated_total") == pytest.approx(float(_EVALUATED))
    assert stored["Price form"].cell(_rows(stored)["420.a"], 9).value == "priced at 0"


def test_every_formula_has_a_result() -> None:
    book = price_form_workbook(sample_form())
    formulas = 0
    for number in range(1, 7):
        for cell in re.findall(r"<c [^>]*><f>.*?</c>", _member(book, f"xl/worksheets/sheet{number}.xml")):
            assert re.search(r"<v>[^<]*</v></c>$", cell), cell
            assert "<v></v>" not in cell or "ISNUMBER" in cell, cell  # only a row that is not priced shows nothing
            formulas += 1
    assert formulas > 40


def _between(sheet: Any) -> set[str]:
    """Give the cells that are open only so that a block can be pasted over them: nothing stands in them."""
    rules = [rule for rule in sheet.data_validations.dataValidation if rule.type == "custom"]
    found = {
        cell.coordinate for rule in rules for area in rule.sqref.ranges for row in sheet[area.coord] for cell in row
    }
    assert all(sheet[one].value is None for one in found)
    return found


def test_only_cells_to_fill_in_are_unlocked_and_every_sheet_is_protected() -> None:
    book = _live(price_form_workbook(sample_form()))
    for sheet in book.worksheets:
        assert sheet.protection.sheet
        assert not sheet.protection.password
        between = _between(sheet)
        for row in sheet.iter_rows():
            for cell in row:
                if not cell.protection.locked and cell.coordinate not in between:
                    assert cell.fill.fgColor.rgb == "00FFF6D6"
                    assert cell.border.left.style == "thin"
                    assert cell.data_type != "f"
    rows, sheet = _rows(book), book["Price form"]
    assert sheet.cell(rows["110.a"], 7).coordinate in _between(sheet)
    assert not sheet.cell(rows["420.a"], 7).protection.locked
    assert not sheet.cell(rows["420.a"], 6).protection.locked
    assert sheet.cell(rows["420.a"], 4).protection.locked


def test_status_and_rate_can_be_pasted_as_one_block() -> None:
    sheet = _live(price_form_workbook(sample_form()))["Price form"]
    rows = _rows({"Price form": sheet})
    block = [sheet.cell(row, column) for row in range(min(rows.values()), max(rows.values()) + 1) for column in (6, 7)]
    assert not [cell.coordinate for cell in block if cell.protection.locked]
    assert not [
        area for area in sheet.merged_cells.ranges if area.min_col <= 7 and area.max_col >= 6 and area.min_row > 4
    ]
    assert not [row for row in sheet.row_dimensions.values() if row.hidden]


def test_the_title_of_an_item_stands_once_above_its_lines() -> None:
    sheet = _live(price_form_workbook(sample_form()))["Price form"]
    column = [(sheet.cell(row, 1).value, sheet.cell(row, 2).value) for row in range(5, sheet.max_row + 1)]
    place = column.index(("900", "Work of item 900"))
    assert column[place + 1 : place + 3] == [("900.a", "Labour, all trades"), ("900.b", "Mark-up on materials at cost")]
    assert sum("Work of item 900" in str(words) for _, words in column) == 1


def test_rows_are_as_high_as_their_text_and_grow_with_what_is_typed() -> None:
    long = "Clean double bottom tanks, " * 12
    form = sample_form()
    section = form.sections[1]
    longer = replace(section, lines=(replace(section.lines[0], text=long), *section.lines[1:]))
    book = price_form_workbook(replace(form, sections=(form.sections[0], longer, *form.sections[2:])))
    sheet = _live(book)["Price form"]
    rows = _rows({"Price form": sheet})
    lines = (sheet.row_dimensions[rows["305.a"]].height - 3) / 13
    assert lines == lines_of(long, 62, 10)
    assert 5 <= lines <= 7
    kept = re.findall(r'<row r="(\d+)"[^>]* customHeight="1"', _member(book, "xl/worksheets/sheet2.xml"))
    assert str(rows["305.a"]) not in kept  # a program makes it higher where the yard types more
    assert {int(row) for row in kept} == {area.min_row for area in sheet.merged_cells.ranges}


def test_text_of_the_package_is_never_a_formula() -> None:
    form = replace(sample_form(), title="=HYPERLINK(1)", addenda=("@A1", "-1", "+2"), evaluated_rule="=A1")
    book = _live(price_form_workbook(form))
    sheet = book["Price form"]
    described = sheet.cell(_rows(book)["305.a"], 2)
    assert described.value.startswith("=Blast")
    assert described.data_type == "s"
    assert described.quotePrefix
    formulas = [
        cell.value for one in book.worksheets for row in one.iter_rows() for cell in row if cell.data_type == "f"
    ]
    assert formulas
    assert all(re.match(r"=(IF|SUM|COUNTIF)\(|='Price form'!", formula) for formula in formulas)


def test_sheet_prints_and_scrolls_as_a_form() -> None:
    sheet = _live(price_form_workbook(sample_form()))["Price form"]
    assert sheet.freeze_panes == "C5"
    assert sheet.print_title_rows == "$4:$4"
    assert (sheet.page_setup.orientation, sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (
        "landscape",
        1,
        0,
    )
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert "HP-2026-01" in sheet.oddHeader.left.text
    assert sheet.oddFooter.left.text == "Commit 1a2b3c4"
    rules = {f"{rule.type} {rule.operator}": rule for rule in sheet.data_validations.dataValidation}
    assert "decimal greaterThanOrEqual" in rules
    percentage = rules["decimal between"]
    assert (percentage.formula1, percentage.formula2) == ("0", "1")
    cell = sheet[str(percentage.sqref)]
    assert cell.number_format == "0.00%"
    assert rules["list None"].formula1 == '"priced,included,no bid"'
    assert sheet.cell(_rows(_live(price_form_workbook(sample_form())))["105.a"], 8).number_format.startswith(
        '"GBP" #,##0.00'
    )


def test_form_says_what_it_belongs_to() -> None:
    form = sample_form()
    book = _live(price_form_workbook(form))
    assert _named(book, "Tender_number") == form.tender
    assert _named(book, "Edition_hash") == form.edition_hash
    assert {one.name: one.value for one in book.custom_doc_props.props}["Edition hash"] == form.edition_hash
    assert book.properties.modified == book.properties.created


def test_same_form_gives_the_same_bytes_with_fixed_times() -> None:
    book = price_form_workbook(sample_form())
    assert book == price_form_workbook(sample_form())
    with zipfile.ZipFile(io.BytesIO(book)) as packed:
        assert {member.date_time for member in packed.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert packed.namelist()[0] == "[Content_Types].xml"


def test_a_form_without_sections_still_opens() -> None:
    assert _named(_stored(price_form_workbook(replace(sample_form(), sections=()))), "Evaluated_total") == 0


def test_amounts_of_each_kind() -> None:
    assert line_amount(line("1.a", "lump", "1", "lump"), Decimal("10.005")) == Decimal("10.01")
    assert line_amount(line("1.b", "rate", "2.5", "m2"), Decimal("3.33")) == Decimal("8.33")
    assert line_amount(line("1.c", "credit", "2.5", "t"), Decimal("3.33")) == Decimal("-8.33")
    assert line_amount(line("1.d", "markup", "2000", "GBP"), Decimal("12.5")) == Decimal("2250.00")
    assert line_amount(line("1.e", "rate", "2", "m2"), None) == 0
    with pytest.raises(ValueError, match="no amount"):
        line_amount(line("1.f", "fixed", "1", "sum"), None)


needs_office = pytest.mark.needs("soffice")


@pytest.fixture(scope="module")
def office(tmp_path_factory: pytest.TempPathFactory) -> Callable[[bytes], Any]:
    """Open a workbook in LibreOffice, recalculate it, and read the results back."""
    folder = tmp_path_factory.mktemp("office")

    def recalculated(book: bytes) -> Any:
        source = folder / "form.xlsx"
        source.write_bytes(book)
        (result,) = convert([source], "xlsx", folder / "out", folder / "profile")
        return openpyxl.load_workbook(result, data_only=True)

    return recalculated


@needs_office
def test_libreoffice_recalculates_a_filled_form(office: Callable[[bytes], Any]) -> None:
    book = _live(price_form_workbook(sample_form()))
    rows, sheet = _rows(book), book["Price form"]
    for number, rate in _RATES.items():
        sheet.cell(rows[number], 7).value = float(rate) / (100 if number == "900.b" else 1)
    output = io.BytesIO()
    book.save(output)  # openpyxl stores no results, so LibreOffice must calculate them
    result = office(output.getvalue())
    assert _named(result, "Base_total") == pytest.approx(float(_BASE))
    assert _named(result, "Evaluated_total") == pytest.approx(float(_EVALUATED))
    readings = {number: result["Price form"].cell(row, 9).value for number, row in rows.items()}
    assert readings["420.a"] == "priced at 0"
    assert readings["305.a"] == "priced"


@needs_office
def test_libreoffice_counts_the_owners_days(office: Callable[[bytes], Any]) -> None:
    form = replace(_priced(sample_form()), day_cost=Decimal("450.50"))
    book = price_form_workbook(form)
    assert _named(_stored(book), "Evaluated_total") == pytest.approx(float(_EVALUATED))
    live = _live(book)
    total = live["Evaluated total"]
    days = next(row for row in range(5, total.max_row + 1) if str(total.cell(row, 2).value).startswith("Days from"))
    assert not total.cell(days, 5).protection.locked
    total.cell(days, 5).value = 37
    output = io.BytesIO()
    live.save(output)
    result = office(output.getvalue())
    assert _named(result, "Evaluated_total") == pytest.approx(float(_EVALUATED) + 37 * 450.50)


@needs_office
def test_libreoffice_tells_empty_zero_included_and_no_bid_apart(office: Callable[[bytes], Any]) -> None:
    book = _live(price_form_workbook(sample_form()))
    rows, sheet = _rows(book), book["Price form"]
    filled = {
        "105.b": (None, 0.0, "priced at 0"),
        "305.a": ("included", None, "included"),
        "420.a": ("no bid", None, "no bid"),
        "410.a": ("included", 5.0, "CLEAR THE RATE"),
        "900.a": ("priced", None, "RATE MISSING"),
        "705.a": (None, "about 900", "NOT A NUMBER"),
        "405.z": ("priced", 10.0, "priced"),
        "105.a": (None, None, "to price"),
    }
    for number, (status, rate, _) in filled.items():
        sheet.cell(rows[number], 6).value, sheet.cell(rows[number], 7).value = status, rate
    output = io.BytesIO()
    book.save(output)
    result = office(output.getvalue())
    for number, (_, _, reading) in filled.items():
        assert result["Price form"].cell(rows[number], 9).value == reading, number
    assert _named(result, "Evaluated_total") == pytest.approx(2500 - 32)


@needs_office
@pytest.mark.parametrize("priced", [False, True])
def test_libreoffice_sums_a_form_that_is_partly_filled(priced: bool, office: Callable[[bytes], Any]) -> None:
    """An empty row shows nothing, and breaks no sum, no percentage of it and no comparison with an alternative."""
    form = sample_form()
    percent = line("900.c", "percent", "0", "", of=("305.a", "420.a"))
    pool = form.sections[3]
    assert pool.code == "E"
    other = FormSection("I", "Alternatives", "", False, False, (line("305.b", "lump", "1", "lump"),))
    sections = (*form.sections[:3], replace(pool, lines=(*pool.lines, percent)), *form.sections[4:], other)
    book = _live(price_form_workbook(replace(form, sections=sections, dearer=((("305.b",), ("305.a", "420.a")),))))
    rows, sheet = _rows(book), book["Price form"]
    if priced:
        for number, rate in (("305.a", 10), ("900.c", 0.1), ("305.b", 7000)):
            sheet.cell(rows[number], 7).value = rate
    output = io.BytesIO()
    book.save(output)
    result = office(output.getvalue())
    amounts = {number: result["Price form"].cell(row, 8).value or None for number, row in rows.items()}
    filled = {number: amount for number, amount in amounts.items() if amount is not None}
    assert filled == {"110.a": 2500} | ({"305.a": 6125, "900.c": 612.5, "305.b": 7000} if priced else {})
    assert (result["Price form"].cell(rows["900.c"], 4).value or None) == (6125 if priced else None)
    assert _named(result, "Base_total") == 2500 + (6125 if priced else 0)
    assert _named(result, "Evaluated_total") == 2500 + (6125 + 612.5 + 875 if priced else 0)


@needs_office
def test_libreoffice_shows_the_stored_totals_of_an_untouched_form(tmp_path: Path) -> None:
    source = tmp_path / "form.xlsx"
    source.write_bytes(price_form_workbook(_priced(sample_form())))
    target = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1"
    convert([source], target, tmp_path, tmp_path / "profile")
    shown = list(csv.reader(io.StringIO((tmp_path / "form-Evaluated total.csv").read_text(encoding="utf-8"))))
    (total,) = [row for row in shown if "Total" in row]
    assert [Decimal(cell) for cell in total[3:5]] == [_BASE, _EVALUATED]
