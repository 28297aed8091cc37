"""Prices of an older form, carried to a newer one: of the same lines alone, and over nothing that is there."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tenderwright.cli import main
from tenderwright.documents.price_form import PriceForm
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.pricing.bids.filled import PRICED, PRICES, Fill, filled, form, put, read, rows
from tests.replacing import replace


def changed(**of: dict[str, object]) -> PriceForm:
    """Give the sample form with some lines changed, by number with an underscore for the point."""
    issued = form()
    sections = tuple(
        replace(
            section,
            lines=tuple(replace(one, **of.get(one.number.replace(".", "_"), {})) for one in section.lines),
        )
        for section in issued.sections
    )
    return replace(issued, sections=sections, edition_hash="0123456789abcdef")


def carried(folder: Path, new: PriceForm, *fills: Fill) -> tuple[Any, int]:
    (folder / "old.xlsx").write_bytes(filled(*fills))
    (folder / "new.xlsx").write_bytes(price_form_workbook(new))
    before = [(folder / name).read_bytes() for name in ("old.xlsx", "new.xlsx")]
    code = main(
        ["carry", *(str(folder / name) for name in ("old.xlsx", "new.xlsx")), "--out", str(folder / "out.xlsx")]
    )
    assert [(folder / name).read_bytes() for name in ("old.xlsx", "new.xlsx")] == before
    out = folder / "out.xlsx"
    return (openpyxl.load_workbook(out) if out.exists() else None), code


def answers(book: Any) -> dict[str, tuple[object, object]]:
    sheet = book[PRICES]
    return {number: (sheet.cell(row, 6).value, sheet.cell(row, 7).value) for number, row in rows(book).items()}


FILLS = (
    put("105.a", 48000, "priced"),
    put("305.a", 21.335),
    put("420.a", None, "included"),
    put("410.a", 0, "priced"),
    put("900.b", 0.125, "priced"),
    put("705.a", 9900),
)


def test_every_answer_is_carried_where_nothing_changed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book, code = carried(tmp_path, changed(), *FILLS)
    assert code == 0
    found = {number: answer for number, answer in answers(book).items() if answer != (None, None)}
    assert found == {
        "105.a": ("priced", 48000),
        "305.a": (None, 21.335),
        "420.a": ("included", None),
        "410.a": ("priced", 0),
        "900.b": ("priced", 0.125),
        "705.a": (None, 9900),
    }
    told = capsys.readouterr().out
    assert "with the prices of 6 lines" in told
    assert "not carried" not in told


def test_the_form_stays_a_form_and_is_read_like_any_other(tmp_path: Path) -> None:
    book, _ = carried(tmp_path, changed(), *(put(number, 1, "priced") for number in PRICED))
    issued = openpyxl.load_workbook(tmp_path / "new.xlsx")
    assert book.sheetnames == issued.sheetnames
    for sheet in issued:
        assert book[sheet.title].protection.sheet
        assert len(book[sheet.title].data_validations.dataValidation) == len(sheet.data_validations.dataValidation)
        assert book[sheet.title].print_title_rows == sheet.print_title_rows
        locked = [cell.coordinate for row in sheet.iter_rows() for cell in row if not cell.protection.locked]
        assert all(not book[sheet.title][one].protection.locked for one in locked)
    lines = read((tmp_path / "out.xlsx").read_bytes()).bid.lines
    assert {line.rate for number, line in lines.items() if number != "900.b"} == {Decimal(1)}


def test_a_line_whose_words_or_unit_changed_is_left_and_told_of(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    new = changed(
        **{"305_a": {"text": "Blast to Sa 3"}, "705_a": {"unit": "each"}, "410_a": {"quantity": Decimal(130)}}
    )
    book, code = carried(tmp_path, new, *FILLS)
    assert code == 0
    found = answers(book)
    assert (found["305.a"], found["705.a"]) == ((None, None), (None, None))
    assert found["410.a"] == ("priced", 0)
    told = capsys.readouterr().out
    assert "305.a: its words changed, from `=Blast to Sa 2" in told
    assert "705.a: its unit was lump, and is no." in told
    assert "410.a: its quantity was 120, and is 130" in told


def test_lines_that_came_and_went_are_listed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    new = changed(**{"705_a": {"number": "705.b"}})
    _, code = carried(tmp_path, new, *FILLS)
    assert code == 0
    told = capsys.readouterr().out
    assert "705.b: not on the older form" in told
    assert "no longer asked:\n    705.a" in told


@pytest.mark.parametrize(
    ("typed", "shown_as", "found"), [(12.5, "0.00", 0.125), (0.5, "General", None), (0.5, "0%", 0.5)]
)
def test_a_percentage_is_carried_as_the_newer_form_shows_it(
    typed: float, shown_as: str, found: float | None, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    def percent(book: Any) -> None:
        cell = book[PRICES].cell(rows(book)["900.b"], 7)
        cell.value, cell.number_format = typed, shown_as

    book, _ = carried(tmp_path, changed(), percent)
    assert answers(book)["900.b"] == (None, found)
    assert ("`0.5` may mean 0.5 % or 50.0 %" in capsys.readouterr().out) == (found is None)


def test_forms_of_two_tenders_are_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book, code = carried(tmp_path, replace(changed(), tender="HP-2026-02"), *FILLS)
    assert (book, code) == (None, 2)
    assert "one form is of tender HP-2026-01, the other of HP-2026-02" in capsys.readouterr().err


def test_nothing_is_written_over(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "out.xlsx").write_bytes(b"mine")
    (tmp_path / "old.xlsx").write_bytes(filled())
    code = main(["carry", *(str(tmp_path / "old.xlsx"),) * 2, "--out", str(tmp_path / "out.xlsx")])
    assert code == 2
    assert (tmp_path / "out.xlsx").read_bytes() == b"mine"
    assert "is there already" in capsys.readouterr().err


def test_a_file_that_is_no_workbook_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "old.xlsx").write_bytes(b"line,rate")
    (tmp_path / "new.xlsx").write_bytes(price_form_workbook(form()))
    names = [str(tmp_path / name) for name in ("old.xlsx", "new.xlsx")]
    assert main(["carry", *names, "--out", str(tmp_path / "out.xlsx")]) == 1
    assert "unreadable-workbook" in capsys.readouterr().err
