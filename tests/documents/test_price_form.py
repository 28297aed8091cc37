"""The price form holds the items' lines, all of them and no others; and text of a package never becomes a formula."""

from __future__ import annotations

import csv
import io
import re
import zipfile
from decimal import Decimal
from html import unescape
from pathlib import Path

import openpyxl
import pytest

from tenderwright.documents.price_form import PriceForm
from tenderwright.model.item import Item, Line
from tenderwright.pricing.quantity import line_quantity
from tenderwright.quantities.display import shown_unit
from tenderwright.writing.edition_files import quantities_csv
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.pipeline.packages import edit

from .composed import Composed, Name, changed, composed, part, rows, tables

TIED = "\N{NO-BREAK SPACE}"
each_package = pytest.mark.parametrize("package", ["starter", "marram"])


def _lines(package: Name) -> dict[str, tuple[Item, Line]]:
    items = composed(package).compiled.package.items
    return {f"{item.number}.{line.line}": (item, line) for item in items if not item.withdrawn for line in item.lines}


def _form_lines(form: PriceForm) -> list[list[str]]:
    return [
        [line.number, line.item, section.code, line.description, line.kind, f"{line.quantity:f}", line.unit, line.basis]
        for section in form.sections
        for line in section.lines
    ]


@each_package
def test_the_lines_of_the_form_are_those_of_the_items(package: Name) -> None:
    form, lines = composed(package).yard[1], _lines(package)
    numbers = [line.number for section in form.sections for line in section.lines]
    assert sorted(numbers) == sorted(lines)
    for section in form.sections:
        for found in section.lines:
            item, line = lines[found.number]
            assert found.title == item.title
            assert found.written.startswith(line.text)
            assert found.kind in ("credit", line.price)
            if line.price == "markup":
                assert (found.quantity, found.unit) == (line.amount, form.currency)
                continue
            quantity = line_quantity(line, composed(package).compiled.record)
            assert quantity is not None
            assert (found.quantity, found.unit) == (quantity.number, quantity.unit)


@each_package
def test_items_print_the_quantities_of_the_form(package: Name) -> None:
    edition, form = composed(package).yard
    asked = {line.number: line for section in form.sections for line in section.lines}
    printed = {
        row[0]: row
        for item in edition.parts
        if item.kind == "item"
        for table in tables(item)
        if table.columns[0].title == "Line"
        for row in rows(table)
    }
    assert printed.keys() == asked.keys()
    for number, line in asked.items():
        if line.kind not in ("fixed", "markup"):
            assert Decimal(printed[number][2].replace(TIED, "")) == line.quantity
            assert printed[number][3] == ("sum" if line.unit == "lump sum" else shown_unit(line.unit))


@each_package
def test_the_schedule_prints_the_lines_of_the_form_in_its_order(package: Name) -> None:
    edition, form = composed(package).yard
    printed = [row for table in tables(part(edition, "schedule")) for row in rows(table)]
    lines = [line for section in form.sections for line in section.lines]
    assert [row[0] for row in printed] == [line.number for line in lines]
    asked = [None if line.of else line.quantity for line in lines]
    assert [None if row[-2] == "–" else Decimal(row[-2].replace(TIED, "")) for row in printed] == asked


@each_package
def test_the_quantities_as_csv_are_those_of_the_form(package: Name) -> None:
    form = composed(package).yard[1]
    header, *read = csv.reader(io.StringIO(quantities_csv(form).decode("utf-8"), newline=""))
    assert header == ["line", "item", "section", "description", "kind", "quantity", "unit", "basis"]
    assert read == _form_lines(form)


@each_package
def test_the_workbook_holds_the_lines_of_the_form(package: Name) -> None:
    form = composed(package).yard[1]
    sheet = openpyxl.load_workbook(io.BytesIO(price_form_workbook(form)))["Price form"]
    found = {str(row[0].value): row for row in sheet.iter_rows() if re.fullmatch(r"\d+\.[a-z]+", str(row[0].value))}
    asked = {line.number: line for section in form.sections for line in section.lines}
    assert list(found) == list(asked)
    for number, line in asked.items():
        row = found[number]
        assert row[1].value == line.text
        assert Decimal(str(round(float(str(row[3].value)), 9))) == line.quantity
        assert (row[4].value or "") == shown_unit(line.unit)
        assert all(cell.protection.locked for cell in row[:5])


@each_package
def test_both_editions_ask_for_the_same_and_carry_one_hash(package: Name) -> None:
    yard, owner = composed(package).yard[1], composed(package).owners[1]
    assert _form_lines(yard) == _form_lines(owner)
    assert yard.edition_hash == owner.edition_hash


def test_the_hash_follows_what_is_asked() -> None:
    def more(root: Path) -> None:
        edit(root, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: 41 each")

    assert changed(more).yard[1].edition_hash != composed("starter").yard[1].edition_hash


FORMULAS = ["=cmd()", "+1", "-1", "@x", "=1+1", "=HYPERLINK(0)", "\\t=1"]


def _formulas(root: Path) -> None:
    """Put something that looks like a formula in front of every kind of text that reaches the form."""
    edit(root, "package.yaml", "title: Docking of", 'title: "=cmd() Docking of')
    edit(root, "package.yaml", "Sandling, 2028", 'Sandling, 2028"')
    edit(root, "package.yaml", "name: Brackwater Tug Trust", 'name: "@x Trust"')
    edit(root, "package.yaml", "number: BWT-2028-01", 'number: "=1+1"')
    edit(root, "package.yaml", "ask: Firm that", "hint: '@x'\n    ask: =HYPERLINK(0) Firm that")
    edit(
        root,
        "package.yaml",
        "currency: EUR",
        "currency: EUR\naddenda:\n  - { number: 1, date: 2027-11-20, summary: =cmd() }",
    )
    edit(root, "package.yaml", "    The lowest evaluated price", "    =1+1 The lowest evaluated price")
    edit(root, "items/110-ship-dock-and-undock.yaml", "title: Ship, dock", "title: =cmd() Ship, dock")
    edit(root, "items/130-fire-watch-provide.yaml", "title: Fire watch", 'title: "+1 Fire watch')
    edit(root, "items/130-fire-watch-provide.yaml", "fire main, provide", 'fire main, provide"')
    edit(root, "items/140-bilge-oil-tank-clean.yaml", "title: Bilge oil tank,", 'title: "@x Bilge oil tank')
    edit(root, "items/140-bilge-oil-tank-clean.yaml", "certify gas-free", 'certify gas-free"')
    edit(root, "items/210-hull-wash.yaml", "title: Hull,", 'title: "-1 Hull')
    edit(root, "items/210-hull-wash.yaml", "sample old coating", 'sample old coating"')
    edit(root, "items/320-rivets-renew.yaml", "title: Rivets, renew", 'title: "\\t=1 Rivets"')


@pytest.fixture(scope="module")
def hostile() -> Composed:
    return changed(_formulas)


def test_text_never_becomes_a_formula_in_the_workbook(hostile: Composed) -> None:
    form = hostile.yard[1]
    book = price_form_workbook(form)
    read = openpyxl.load_workbook(io.BytesIO(book))
    formulas = [str(cell.value) for sheet in read for row in sheet.iter_rows() for cell in row if cell.data_type == "f"]
    honest = price_form_workbook(composed("starter").yard[1])
    usual = [
        str(cell.value)
        for sheet in openpyxl.load_workbook(io.BytesIO(honest))
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    ]
    # The one more addendum moves nothing that is calculated.
    assert formulas == usual
    texts = [str(cell.value) for sheet in read for row in sheet.iter_rows() for cell in row if cell.data_type == "s"]
    for start in ("=cmd() Ship", "+1 Fire", "@x Bilge", "-1 Hull", "=HYPERLINK(0) Firm", "@x"):
        assert any(text.startswith(start) for text in texts), start


def test_text_that_looks_like_a_formula_is_marked_as_text(hostile: Composed) -> None:
    read = openpyxl.load_workbook(io.BytesIO(price_form_workbook(hostile.yard[1])))
    marked = 0
    for sheet in read:
        for row in sheet.iter_rows():
            for cell in row:
                if cell.data_type == "s" and str(cell.value).startswith(("=", "+", "-", "@", "\t")):
                    assert cell.quotePrefix, cell.coordinate
                    marked += 1
    assert marked >= 10


def test_the_parts_of_the_workbook_hold_no_formula_of_the_package(hostile: Composed) -> None:
    with zipfile.ZipFile(io.BytesIO(price_form_workbook(hostile.yard[1]))) as packed:
        for name in packed.namelist():
            for formula in re.findall(r"<f>(.*?)</f>", unescape(packed.read(name).decode("utf-8"))):
                assert not re.search(r"cmd|HYPERLINK|Trust|Docking", formula), name


def test_text_never_becomes_a_formula_in_csv(hostile: Composed) -> None:
    table = quantities_csv(hostile.yard[1]).decode("utf-8")
    _, *read = csv.reader(io.StringIO(table, newline=""))
    descriptions = [row[3] for row in read]
    assert sum(text.startswith("'") for text in descriptions) >= 8
    assert not [cell for row in read for cell in row if cell.startswith(("=", "+", "-", "@", "\t", "\r"))]
