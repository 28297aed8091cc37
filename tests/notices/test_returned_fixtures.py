"""Mistakes of returned workbooks: each is made in a price form of the starter package and told at its cell."""

from __future__ import annotations

import io
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tenderwright.commands.bids_read import read_returned
from tenderwright.documents.desk import Desk
from tenderwright.documents.form import price_form
from tenderwright.pipeline import Compiled, compile_package, read
from tenderwright.starter.write import write_starter
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.reading.workbook import hostile

Spoil = Callable[[bytes], bytes]
SHEET = "Price form"


def _in_form(change: Callable[[Any], None]) -> Spoil:
    def spoil(data: bytes) -> bytes:
        book = openpyxl.load_workbook(io.BytesIO(data))
        change(book)
        output = io.BytesIO()
        book.save(output)
        return output.getvalue()

    return spoil


def _at(address: str, value: object, sheet: str = SHEET) -> Spoil:
    def change(book: Any) -> None:
        book[sheet][address] = value

    return _in_form(change)


def _edition(book: Any) -> None:
    sheet = book["How to fill"]
    row = next(row for row in range(1, 20) if sheet.cell(row, 1).value == "Edition hash")
    sheet.cell(row, 2).value = "another"


def _remark(book: Any) -> None:
    book["Remarks"]["C5"], book["Remarks"]["D5"] = "remark", "No work on Sundays"


RETURNED: dict[str, tuple[tuple[Spoil, str], ...]] = {
    "unreadable-workbook": ((lambda data: data[:-100], ""), (lambda data: b"line,rate\n", "")),
    "unsafe-workbook": (
        (lambda data: hostile.with_member("xl/vbaProject.bin", b"", data), ""),
        (lambda data: hostile.with_member("../outside.xml", b"<a/>", data), ""),
    ),
    "no-stored-result": ((_at("G8", "=2*3"), f"{SHEET}!G8"),),
    "bid-edition": ((_in_form(_edition), "How to fill!B10"),),
    "bid-form-changed": ((_at("D8", 999), f"{SHEET}!D8"), (_at("E8", "lb"), f"{SHEET}!E8")),
    "bid-amount": ((_at("G8", "on request"), f"{SHEET}!G8"),),
    "bid-unread": ((_at("K8", "with the launch"), f"{SHEET}!K8"), (_at("B40", "20 days", "Remarks"), "Remarks!B40")),
    "ambiguous-amount": ((_at("G8", "1,234"), ""),),
    "dash-for-price": ((_at("G8", "–"), f"{SHEET}!G8"),),
    "price-too-small": ((_at("G8", 0.001), f"{SHEET}!G8"),),
    "bid-words-unclear": ((_at("G8", "incl. VAT!"), f"{SHEET}!G8"),),
    "amount-without-rate": ((_at("H8", 1200), f"{SHEET}!H8"),),
    "amount-unread": ((_at("H8", "see letter"), f"{SHEET}!H8"),),
    "bid-form-reworded": ((_at("B8", "Something else"), f"{SHEET}!B8"),),
    "bid-incomplete": ((lambda data: data, ""),),
    "bid-remark": ((_in_form(_remark), "Remarks!D5"),),
    "bid-late": ((lambda data: data, ""),),
}
"""For each code of returned bids, what is done to a price form, and the cell that is named."""


@pytest.fixture(scope="module")
def compiled(tmp_path_factory: pytest.TempPathFactory) -> Compiled:
    root = tmp_path_factory.mktemp("starter") / "package"
    write_starter(root)
    return compile_package(read(root))


@pytest.mark.parametrize(("code", "case"), [(code, n) for code, cases in RETURNED.items() for n in range(len(cases))])
def test_the_mistake_is_told_at_its_cell(code: str, case: int, compiled: Compiled, tmp_path: Path) -> None:
    spoil, address = RETURNED[code][case]
    form = price_form(Desk(compiled.package, compiled.links, compiled.calculated), "")
    file = tmp_path / "returned.xlsx"
    file.write_bytes(spoil(price_form_workbook(form)))
    _, notices = read_returned(file, compiled, "Ostrey", date(2028, 1, 1))
    told = [notice for notice in notices if notice.code == code]
    assert told
    assert {notice.place.path for notice in told} == {str(file)}
    assert any(notice.message.startswith(f"`{address}`: ") for notice in told) if address else True
