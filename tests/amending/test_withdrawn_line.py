"""A line that is withdrawn keeps its number, is told in the addendum, and is nowhere priced."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import openpyxl
import pytest

from tenderwright.commands.explain import explain_item
from tenderwright.documents.edition import Table, plain
from tenderwright.pipeline import compile_owner, compile_package, compose_yard, read
from tenderwright.pricing.bids.tendered import tender_lines
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.documents.composed import part, rows, tables, words
from tests.pipeline.packages import edit, starter

from .conftest import AFTER, LISTED, Pair, amended

RIVETS = "items/320-rivets-renew.yaml"
CAULK = "{ line: b, text: Caulk the seam, price: rate, quantity: 3 m, where: A }"


def withdraw(root: Path) -> None:
    edit(root, "package.yaml", "owner:", LISTED)
    edit(root, RIVETS, "title: Rivets, renew\n", "title: Rivets, renew\nrevision: 1\n")
    edit(
        root,
        RIVETS,
        "  - line: a\n",
        f"  - {CAULK}\n  - line: a\n    withdrawn: true\n",
    )


@pytest.fixture(scope="module")
def pair(tmp_path_factory: pytest.TempPathFactory) -> Pair:
    return amended(tmp_path_factory.mktemp("withdrawn"), withdraw)


def test_the_addendum_tells_that_it_is_withdrawn(pair: Pair) -> None:
    found = {line.number: line.manner for line in pair.amended.comparison.lines}
    assert found == {"320.a": "withdrawn", "320.b": "added"}
    edition = pair.amended.amendment.edition
    told = {row[0]: row[1] for table in tables(part(edition, "addendum-changes")) for row in rows(table)}
    assert told["Line a (withdrawn)"] == "Withdrawn, and not priced. Its number stays taken."
    assert "line a (withdrawn)" in words(part(edition, "addendum-summary"))
    assert "320.a withdrawn" in [row[0] for row in rows(tables(part(edition, "addendum-lines"))[0])]


def test_it_is_shown_as_withdrawn_in_item_schedule_and_price_form(pair: Pair) -> None:
    edition, form = compose_yard(pair.after.compiled, AFTER)
    (lines,) = [
        block for block in part(edition, "item-320").blocks if isinstance(block, Table) and block.anchor == "lines-320"
    ]
    shown = {plain(row.cells[0]): [plain(cell) for cell in row.cells[1:]] for row in lines.rows}
    assert list(shown) == ["320.b", "320.a"]
    assert shown["320.a"] == ["Renew one rivet — withdrawn, not priced; its number stays taken", "–", "", "–"]
    said = "Withdrawn, nothing to price: 320.a Rivets, renew: Renew one rivet"
    assert f"{said}." in words(part(edition, "schedule"))
    sheet = openpyxl.load_workbook(BytesIO(price_form_workbook(form)))["Price form"]
    assert [cell.value for cell in sheet["B"] if cell.value and "Withdrawn" in str(cell.value)] == [said]
    assert "320.a" not in [cell.value for cell in sheet["A"]]


def test_nothing_is_priced_by_it_and_its_name_stays_known(pair: Pair) -> None:
    compiled = pair.after.compiled
    assert "320.a" not in [line.number for line in tender_lines(compiled.package, compiled.calculated, None)]
    files = read(compiled.files.root)
    owner = compile_owner(files, compiled)
    assert [one.code for one in owner.notices if "320.a" in one.message] == []
    assert "320.a  Renew one rivet: withdrawn, not priced" in explain_item(
        compiled.package.item_by_name["320"], compiled, owner
    )


def test_its_letter_is_not_free_again(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    withdraw(root)
    edit(root, RIVETS, "line: b", "line: a")
    assert "duplicate-name" in [notice.code for notice in compile_package(read(root)).notices]
