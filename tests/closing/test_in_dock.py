"""The final account is held against the papers from the dock, and flows back into the history with rates and causes."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
import yaml

from tenderwright.cli import main
from tenderwright.documents.edition import Table, plain
from tenderwright.documents.owner.former_prices import former_prices, rate_written
from tenderwright.pipeline import owner_desk
from tenderwright.pricing.growth import growth_by_kind
from tenderwright.starter.write import write_starter
from tests.documents.composed import Composed, words
from tests.documents.composed import compiled as composed_of

from .conftest import SMALL, compiled
from .docked import WEEK, put_papers


@pytest.fixture
def root(tmp_path: Path) -> Path:
    write_starter(tmp_path / "sandling")
    return tmp_path / "sandling"


def _told(root: Path, findings: Path = SMALL) -> list[tuple[int, str]]:
    tendered = compiled(root)
    assert [notice.message for notice in tendered.owner.notices] == []
    return [(one.place.line, one.message) for one in tendered.check(findings).notices if one.code == "account-differs"]


def _spoilt(tmp_path: Path, old: str, new: str) -> tuple[Path, int]:
    text = SMALL.read_text("utf-8")
    assert text.count(old) == 1
    file = tmp_path / "findings.yaml"
    file.write_text(text.replace(old, new), "utf-8")
    return file, text.split(old)[0].count("\n") + 1


def test_the_same_account_is_told_nothing_of(root: Path) -> None:
    assert _told(put_papers(root)) == []


def test_without_papers_from_the_dock_nothing_is_held_against_them(root: Path) -> None:
    assert _told(root) == []


def test_another_amount_of_a_change_is_told_once(root: Path, tmp_path: Path) -> None:
    """The line differs too, for the same reason."""
    week = WEEK.replace("quantity: 31 each", "quantity: 30 each")
    ((line, message),) = _told(put_papers(root, week))
    assert message == "change CO-1 comes to 2 945.00 here, and to 2 850.00 in the papers from the dock"
    assert "CO-1" in SMALL.read_text("utf-8").splitlines()[line - 1]


def test_a_change_that_is_in_one_log_alone(root: Path) -> None:
    week = WEEK.replace("change: CO-1", "change: CO-4")
    assert [message for _, message in _told(put_papers(root, week))] == [
        "change CO-4 of 2 945.00, signed in dock, is not in the findings",
        "change CO-1 is not signed in the papers from the dock",
    ]


def test_another_cause_and_another_line(root: Path, tmp_path: Path) -> None:
    put_papers(root)
    file, line = _spoilt(tmp_path, "line: 320.a, cause: condition found", "line: 320.a, cause: weather")
    assert _told(root, file) == [
        (line, "change CO-1 has the cause weather here, and condition found in the papers from the dock")
    ]


def test_another_measure_is_told_at_the_line(root: Path) -> None:
    week = WEEK.replace("quantity: 48 m2", "quantity: 47 m2")
    ((line, message),) = _told(put_papers(root, week))
    assert message == "line 420.a comes to 4 224.00, and by the papers from the dock to 4 136.00"
    assert "420.a" in SMALL.read_text("utf-8").splitlines()[line - 1]


def test_a_line_that_the_findings_leave_out(root: Path) -> None:
    week = WEEK.replace("measured:\n", "measured:\n  - { line: 110.c, quantity: 2 each }\n")
    ((_, message),) = _told(put_papers(root, week))
    assert message == "line 110.c has no price, and by the papers from the dock it comes to 1 000.00"


def test_another_bid(root: Path, tmp_path: Path) -> None:
    put_papers(root)
    bids = root / "owner" / "bids"
    (bids / "other.yaml").write_text((bids / "ostrey.yaml").read_text("utf-8"), "utf-8")
    file, _ = _spoilt(tmp_path, "dock_type: slipway", "dock_type: slipway\nbid: other")
    assert [message for _, message in _told(root, file)] == [
        "the findings rest on bid `other`, and the award is of `ostrey`"
    ]


def test_a_difference_does_not_stop_the_closing(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    put_papers(root, WEEK.replace("quantity: 48 m2", "quantity: 47 m2"))
    assert main(["close", str(root), str(SMALL), "--out", str(root.parent / "made")]) == 0
    assert "account-differs" in capsys.readouterr().err


@pytest.fixture
def closed(root: Path) -> Composed:
    """Close the docking, and compile the package with what was written."""
    assert main(["close", str(root), str(SMALL), "--out", str(root.parent / "made")]) == 0
    return composed_of(root)


def test_prices_flow_back_for_a_unit_with_growth_by_cause(closed: Composed) -> None:
    """31 rivets for 2945 are 95 each; 48 m2 for 4224 are 88."""
    closing = closed.owner.papers.closing_of("docking-2028")
    assert closing is not None
    assert [(paid.unit, paid.rate, paid.growth) for paid in closing.paid] == [
        ("", None, 0),
        ("each", Decimal(95), Decimal(2945)),
        ("m2", Decimal(88), Decimal(-176)),
    ]
    assert [[(one.cause, one.amount) for one in paid.growth_causes] for paid in closing.paid] == [
        [],
        [("condition found", Decimal(2945))],
        [("quantity measured", Decimal(-176))],
    ]


def test_growth_by_kind_reads_them(closed: Composed) -> None:
    grown = growth_by_kind(closed.compiled.package, closed.owner.papers)
    found = {one.kind: (one.ordered, one.final) for one in grown}
    assert found["contingent"] == (Decimal(0), Decimal(2945))
    assert found["measured"] == (Decimal(4400), Decimal(4224))


def test_they_are_printed_for_the_owner_alone(closed: Composed) -> None:
    part = former_prices(owner_desk(closed.compiled, closed.owner))
    assert part is not None
    assert part.audience == "owner"
    tables = {block.caption: block for block in reversed(part.blocks) if isinstance(block, Table)}
    latest = tables["Prices paid"]
    assert [column.title for column in latest.columns][2:4] == ["Quantity", "For a unit"]
    assert [plain(cell) for cell in latest.rows[1].cells][2:] == ["31 each", "95.00 each", "2 945.00", "2 945.00"]
    assert [[plain(cell) for cell in row.cells] for row in tables["Growth by cause"].rows] == [
        ["condition found", "1", "2 945.00"],
        ["quantity measured", "1", "−176.00"],
    ]
    plain_tables = [b for b in part.blocks if isinstance(b, Table) and b.caption == "Prices paid"]
    assert [len(table.columns) for table in plain_tables] == [6, 5], "an older docking without rates has no such column"
    assert "Ostrey Slip Company" in words(part)


def test_confidential_prices_keep_the_rate_with_the_owners_papers(root: Path) -> None:
    assert main(["close", str(root), str(SMALL), "--out", str(root.parent / "made")]) == 0
    account = yaml.safe_load((root / "owner" / "closing" / "docking-2028.yaml").read_text("utf-8"))
    assert {one["line"]: one.get("rate") for one in account["lines"]} == {"110.a": None, "320.a": 95, "420.a": 88}


@pytest.mark.parametrize(
    ("rate", "text"), [("95", "95.00"), ("12.5", "12.50"), ("1234.5678", "1 234.5678"), ("0.333", "0.333")]
)
def test_a_rate_is_written_with_the_decimals_it_has(rate: str, text: str) -> None:
    assert rate_written(Decimal(rate)) == text


SIGNED = "yard: Foreman, owner: Ship keeper"
DONE = (
    "inspections:\n"
    f'  - {{ item: "110", point: H1, day: 2028-03-01, result: passed, {SIGNED} }}\n'
    f'  - {{ item: "140", point: H1, day: 2028-03-05, result: passed, {SIGNED} }}\n'
    f'  - {{ item: "420", point: H1, day: 2028-03-12, result: passed, {SIGNED} }}\n'
    f'  - {{ item: "420", point: H2, day: 2028-03-15, result: passed, {SIGNED} }}\n'
    "openings:\n"
    f"  - {{ opening: stern-tube, {SIGNED} }}\n"
    f"  - {{ tank: bilge-oil, opened: 2028-03-04, closed: 2028-03-14, tested: 2028-03-14, result: passed, {SIGNED} }}\n"
    f'  - {{ shell: "320", opened: 2028-03-05, closed: 2028-03-12, tested: 2028-03-12, result: passed, {SIGNED} }}\n'
)
CLOSED = f"  - {{ opening: sea-chest, opened: 2028-03-04, closed: 2028-03-14, {SIGNED} }}\n"


def test_a_docking_is_not_closed_over_an_opening_that_was_open_when_she_floated(root: Path, tmp_path: Path) -> None:
    week = WEEK.replace(", undocked: 2028-03-16", "") + DONE + "  - { opening: sea-chest, opened: 2028-03-04 }\n"
    found = compiled(put_papers(root, week)).check(SMALL)
    (notice,) = [one for one in found.notices if one.code == "floated-on-open-row"]
    assert "while this was open: sea chest, open" in notice.message
    assert not found.sound
    assert main(["close", str(root), str(SMALL), "--out", str(tmp_path / "made")]) == 1
    assert not (root / "history" / "docking-2028.yaml").exists()


def test_what_is_open_at_the_close_is_named_in_its_record(
    root: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    put_papers(root, WEEK + DONE + CLOSED)
    assert main(["close", str(root), str(SMALL), "--out", str(tmp_path / "made")]) == 0
    assert "points and rows of the inspection plan still open" in capsys.readouterr().err
    (entry,) = (root / "history").glob("docking-2028*.yaml")
    left = yaml.safe_load(entry.read_text("utf-8"))["left_open"]
    assert "item 320 T1, open" in left
    assert not any("sea chest" in one for one in left)
