"""`tenderwright bids read` as a user runs it: what it writes, refuses and tells."""

from __future__ import annotations

import io
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tenderwright.commands.bids_read import check_text, slug
from tenderwright.documents.bid_entry import bid_entry
from tenderwright.documents.desk import Desk
from tenderwright.documents.form import price_form
from tenderwright.model.bid import Bid
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tenderwright.writing.yaml_file import yaml_text
from tests.reading.workbook import hostile

from .run import Runner, package

SHEET = "Price form"
DAY = ("--received", "2027-12-09")


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return package(tmp_path / "sandling")


def _form(root: Path) -> bytes:
    compiled = compile_package(read(root))
    return price_form_workbook(price_form(Desk(compiled.package, compiled.links, compiled.calculated), "draft"))


def returned(root: Path, *changes: Callable[[Any], None]) -> Path:
    """Put a form into a file that is filled in whole, with changes."""
    book = openpyxl.load_workbook(io.BytesIO(_form(root)))
    sheet = book[SHEET]
    for row in range(5, sheet.max_row + 1):
        if sheet.cell(row, 3).value and sheet.cell(row, 9).value != "the owner's sum":
            sheet.cell(row, 6).value, sheet.cell(row, 7).value = "priced", 120.5
    for change in changes:
        change(book)
    file = root.parent / "returned.xlsx"
    output = io.BytesIO()
    book.save(output)
    file.write_bytes(output.getvalue())
    return file


def row_of(book: Any, number: str) -> int:
    sheet = book[SHEET]
    return next(row for row in range(5, sheet.max_row + 1) if sheet.cell(row, 1).value == number)


def put(number: str, price: object, status: object = None) -> Callable[[Any], None]:
    def change(book: Any) -> None:
        row = row_of(book, number)
        book[SHEET].cell(row, 6).value, book[SHEET].cell(row, 7).value = status, price

    return change


def bids(root: Path) -> dict[str, Bid]:
    files = read(root)
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    assert [notice for notice in owner.notices if notice.severity == "error"] == []
    return dict(owner.papers.bids)


def test_a_bid_is_written_for_review_and_the_package_stays_sound(run: Runner, root: Path) -> None:
    changes = (put("110.a", "EUR 1 234,50"), put("320.a", None, "included"), put("210.a", "no bid"))
    ran = run("bids", "read", root, returned(root, *changes), "--yard", "Ostrey Dock Ltd.", *DAY)
    assert ran.code == 0, ran.err
    path = "owner/bids/ostrey-dock-ltd.yaml"
    assert f"{root / path}: written" in ran.out
    assert "1 included, 1 no bid; " in ran.out
    bid = bids(root)[path]
    assert (bid.yard, bid.received, bid.file) == ("Ostrey Dock Ltd.", date(2027, 12, 9), "returned.xlsx")
    assert (bid.lines["110.a"].rate, bid.lines["110.a"].as_written) == (Decimal("1234.5"), "EUR 1 234,50")
    assert [bid.lines[number].status for number in ("110.a", "320.a", "210.a")] == ["priced", "included", "no bid"]
    assert run("check", root).code == 0


def test_the_yard_is_taken_from_the_signature(run: Runner, root: Path) -> None:
    def sign(book: Any) -> None:
        sheet = book["Acknowledgements"]
        row = next(row for row in range(1, 60) if sheet.cell(row, 1).value == "Yard")
        sheet.cell(row, 4).value = "Ærø Værft"

    assert run("bids", "read", root, returned(root, sign), *DAY).code == 0
    assert [path.name for path in (root / "owner" / "bids").iterdir()] == ["aero-vaerft.yaml"]


def test_without_a_name_nothing_is_written(run: Runner, root: Path) -> None:
    ran = run("bids", "read", root, returned(root), *DAY)
    assert ran.code == 2
    assert "give it with --yard" in ran.err
    assert not (root / "owner" / "bids").exists()


def test_a_bid_that_is_there_is_never_written_over(run: Runner, root: Path) -> None:
    file = returned(root)
    assert run("bids", "read", root, file, "--yard", "Ostrey", *DAY).code == 0
    before = (root / "owner/bids/ostrey.yaml").read_bytes()
    again = run("bids", "read", root, file, "--yard", "Ostrey", *DAY)
    assert (again.code, f"{root / 'owner/bids/ostrey.yaml'}: there already, the same" in again.out) == (0, True)
    ran = run("bids", "read", root, file, "--yard", "OSTREY", *DAY)
    assert ran.code == 2
    assert "owner/bids/ostrey.yaml is there already; nothing was written" in ran.err
    assert (root / "owner/bids/ostrey.yaml").read_bytes() == before


def test_signed_forms_that_came_along_are_kept_in_the_bid(run: Runner, root: Path) -> None:
    file, path = returned(root), root / "owner/bids/ostrey.yaml"
    words = ("bids", "read", root, file, "--yard", "Ostrey", *DAY)
    assert run(*words, "--signed", "declaration", "--signed", "offer").code == 0
    assert "signed: [offer, declaration]\n" in path.read_text("utf-8")
    assert "there already, the same" in run(*words).out


@pytest.mark.parametrize(
    ("change", "code", "address"),
    [
        (put("110.a", "on request"), "bid-amount", "Price form!G"),
        (put("110.a", "=2*2"), "no-stored-result", "Price form!G"),
        (lambda book: book[SHEET].delete_rows(row_of(book, "320.a")), "bid-form-changed", "320.a"),
    ],
)
def test_a_faulty_bid_is_recorded_with_its_doubts_and_the_place_is_named(
    run: Runner, root: Path, change: Callable[[Any], None], code: str, address: str
) -> None:
    file = returned(root, change)
    ran = run("bids", "read", root, file, "--yard", "Ostrey", *DAY)
    assert ran.code == 1
    assert f"error[{code}]" in ran.err
    assert f"{file}:" in ran.err
    assert address in ran.err
    assert "settled in owner/evaluation.yaml before bids are compared" in ran.out
    (bid,) = bids(root).values()
    assert any(address in doubt for doubt in bid.doubts)


def test_warnings_are_told_and_stay_with_the_bid(run: Runner, root: Path) -> None:
    ran = run("bids", "read", root, returned(root, put("110.a", "1,234")), "--yard", "Ostrey", *DAY)
    assert ran.code == 0
    assert "warning[ambiguous-amount]: 1 amount is typed with marks that can mean two things: `Price form!G" in ran.err
    (bid,) = bids(root).values()
    assert any("`1,234` is read as 1234, or means 1.234" in doubt for doubt in bid.doubts)


def test_a_hostile_workbook_is_refused(run: Runner, root: Path) -> None:
    file = returned(root)
    file.write_bytes(hostile.with_member("xl/vbaProject.bin", b"", file.read_bytes()))
    ran = run("bids", "read", root, file, "--yard", "Ostrey", *DAY)
    assert ran.code == 1
    assert f"{file}:1:1: error[unsafe-workbook]: the workbook holds macros" in ran.err


def test_a_damaged_workbook_is_refused(run: Runner, root: Path) -> None:
    file = returned(root)
    data = hostile.changed(hostile.BOOK, 'r:id="rId1"', 'r:id="rId77"', file.read_bytes())
    file.write_bytes(data)
    ran = run("bids", "read", root, file, "--yard", "Ostrey", *DAY)
    assert ran.code == 1
    assert "error[unreadable-workbook]" in ran.err


def test_a_bid_for_a_broken_package_is_not_read(run: Runner, tmp_path: Path) -> None:
    good = package(tmp_path / "good")
    file = returned(good)
    broken = package(tmp_path / "broken", ("package.yaml", "currency:", "curency:"))
    ran = run("bids", "read", broken, file, "--yard", "Ostrey", *DAY)
    assert ran.code == 1
    assert "the package has" in ran.err


def test_a_form_of_another_edition_is_refused(run: Runner, tmp_path: Path, root: Path) -> None:
    file = returned(root)
    other = package(tmp_path / "later", ("items/210-hull-wash.yaml", "title: ", "title: The "))
    ran = run("bids", "read", other, file, "--yard", "Ostrey", *DAY)
    assert ran.code == 1
    assert "error[bid-edition]" in ran.err
    assert "nothing was written" in ran.err
    assert not (other / "owner" / "bids").exists()


@pytest.mark.parametrize(
    ("words", "told"),
    [(("--received", "9/12/2027"), "is not a date written year-month-day"), (("--colour",), "unrecognized arguments")],
)
def test_wrong_use(run: Runner, root: Path, words: tuple[str, ...], told: str) -> None:
    ran = run("bids", "read", root, root / "none.xlsx", *DAY, *words)
    assert ran.code == 2
    assert told in ran.err


def test_bids_needs_to_be_told_what(run: Runner) -> None:
    ran = run("bids")
    assert ran.code == 2
    assert "WHAT" in ran.err


def test_the_day_received_must_be_given(run: Runner, root: Path) -> None:
    ran = run("bids", "read", root, returned(root), "--yard", "Ostrey")
    assert ran.code == 2
    assert "required: --received" in ran.err
    assert not (root / "owner" / "bids").exists()


@pytest.mark.parametrize(
    ("name", "file"),
    [("Corve Harbour Dock", "corve-harbour-dock"), ("Å & Ö Varv AB", "a-o-varv-ab"), ("../x", "x"), ("船", "")],
)
def test_names_of_files(name: str, file: str) -> None:
    assert slug(name) == file


def test_what_does_not_read_back_is_our_own_mistake(run: Runner, root: Path) -> None:
    assert run("bids", "read", root, returned(root), "--yard", "Ostrey", *DAY).code == 0
    ((path, bid),) = bids(root).items()
    text = yaml_text(bid_entry(bid))
    check_text(path, text, bid)
    with pytest.raises(RuntimeError, match="does not read back"):
        check_text(path, text.replace("120.5", "120.6"), bid)
    with pytest.raises(RuntimeError, match="is not sound"):
        check_text(path, text.replace("status: priced", "status: dear"), bid)


def test_where_the_folder_leads_out_nothing_is_written(run: Runner, root: Path, tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (root / "owner" / "bids").symlink_to(tmp_path / "elsewhere", target_is_directory=True)
    ran = run("bids", "read", root, returned(root), "--yard", "Ostrey", *DAY)
    assert ran.code == 2
    assert "the bid cannot be written" in ran.err
    assert list((tmp_path / "elsewhere").iterdir()) == []
