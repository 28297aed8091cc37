"""The contract is the awarded part of the bid, by the rule of arithmetic that the tender declares."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

from tenderwright.pipeline import OwnersSide
from tenderwright.pricing.in_dock.ledger import Ledger

from .sandling import AWARD, BID, PROGRAMME, compiled, ledger_of, write_docked


def test_it_is_the_base_price_and_holds_contingent_lines_with_nothing(ledger: Ledger) -> None:
    contract = ledger.contract
    assert contract.amount == Decimal("36760.00")
    assert {number: line.amount for number, line in contract.lines.items() if not line.inside} == dict.fromkeys(
        ("110.b", "110.c", "140.b", "160.a", "160.b", "320.a"), Decimal(0)
    )
    assert (contract.pool, contract.markup, contract.days_line) == (("160.a",), "160.b", "110.b")
    assert contract.contingency == Decimal(12000)


def test_what_is_dropped_is_no_part_of_it(tmp_path: Path) -> None:
    """Without item 210 (3000) and line 130.b (1500) it comes to 32260."""
    award = AWARD.replace("36760", "32260") + 'dropped: ["210", 130.b]\n'
    assert ledger_of(tmp_path / "s", award=award).contract.amount == Decimal(32260)


def test_an_option_taken_up_is_part_of_it(tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s", award=AWARD.replace("36760", "39260") + 'options: ["320"]\n')
    item = root / "items" / "320-rivets-renew.yaml"
    text = item.read_text("utf-8").replace("kind: contingent", "kind: option\noption_until: docking - 4 d")
    item.write_text(
        text.replace("    price: rate\n    quantity: 40 each", "    price: rate\n    quantity: 25 each"), "utf-8"
    )
    _, owner = compiled(root)
    assert owner.ledger is not None
    assert owner.ledger.contract.lines["320.a"].amount == Decimal(2500)
    assert owner.ledger.contract.amount == Decimal(39260)


def test_a_wrong_amount_in_the_row_is_put_right_by_the_rate(tmp_path: Path) -> None:
    """Unit price governs: 50 m2 at 90 is 4500, though 5400 stands in the row."""
    bid = BID.replace("420.a: { rate: 90 }", "420.a: { rate: 90, extension: 5400 }")
    assert ledger_of(tmp_path / "s", ostrey=bid).contract.amount == Decimal(36760)


def test_another_amount_is_told_at_its_line(tmp_path: Path) -> None:
    _, owner = compiled(write_docked(tmp_path / "s", award=AWARD.replace("36760", "36670")))
    (notice,) = [one for one in owner.notices if one.code == "sum-differs"]
    assert (notice.place.path, notice.place.line) == ("owner/award.yaml", 3)
    assert notice.message == "the bid `ostrey` makes a contract of 36 760.00, not 36 670.00"


def _with_option(root: Path, *, taken: bool) -> OwnersSide:
    """Make the rivets an option with a contingent line, and order that line."""
    award = AWARD.replace("36760", "39260") + 'options: ["320"]\n' if taken else AWARD
    write_docked(root, award=award)
    item = root / "items" / "320-rivets-renew.yaml"
    text = item.read_text("utf-8").replace("kind: contingent", "kind: option\noption_until: docking - 4 d")
    more = "  - { line: b, text: Renew one stud, kind: contingent, price: rate, quantity: 9 each, basis: assumed }\n"
    item.write_text(text.replace("quantity: 40 each", "quantity: 25 each") + more, "utf-8")
    (root / "owner/bids/ostrey.yaml").write_text(BID + "  320.b: { rate: 30 }\n", "utf-8")
    order = "{ change: CO-01, day: 2028-04-07, line: 320.b, quantity: 4 each, cause: owner's change, what: studs }"
    (root / "owner/in-dock/week-1.yaml").write_text(f"until: 2028-04-09\nchanges:\n  - {order}\n", "utf-8")
    rates = root / "owner/rates.yaml"
    rates.write_text(rates.read_text("utf-8").replace("  420.a:", "  320.b: { rate: 28 }\n  420.a:"), "utf-8")
    return compiled(root)[1]


def test_a_contingent_line_of_an_option_is_ordered_only_with_the_option(tmp_path: Path) -> None:
    taken = _with_option(tmp_path / "taken", taken=True)
    assert taken.ledger is not None
    line = taken.ledger.contract.lines["320.b"]
    assert (line.amount, line.corrected.line.section.code) == (Decimal(0), "F")
    assert taken.ledger.contract.amount == Decimal(39260)
    assert [one.amount for one in taken.ledger.changes] == [Decimal(120)]
    left = _with_option(tmp_path / "left", taken=False)
    assert left.ledger is not None
    assert left.ledger.changes == ()
    (notice,) = [one for one in left.notices if one.code == "in-dock-price"]
    assert notice.message == "change CO-01: line 320.b goes with option 320, not taken up"


def test_where_the_total_is_absolute_the_contract_is_the_total_as_written(tmp_path: Path) -> None:
    """The lines make 36760 and contingent lines 11 160; a total of 100 more than both stands as it was written."""
    root = write_docked(tmp_path / "s", award=AWARD.replace("36760", "36860"))
    package = root / "package.yaml"
    package.write_text(package.read_text("utf-8").replace("unit price governs", "total absolute"), "utf-8")
    lines = {"110.b": 2100, "110.c": 1000, "140.b": 2000, "160.a": 3300, "160.b": 2240, "320.a": 4000}
    total = 36760 + sum(lines.values()) + 100
    (root / "owner/bids/ostrey.yaml").write_text(BID + f"total: {total}\n", "utf-8")
    _, owner = compiled(root)
    assert owner.ledger is not None
    assert (owner.ledger.contract.beyond, owner.ledger.contract.amount) == (Decimal(100), Decimal(36860))
    assert [one.message for one in owner.notices if one.severity == "error"] == []


def test_the_line_for_further_days_is_that_of_the_programme_where_the_award_names_none(tmp_path: Path) -> None:
    programme = PROGRAMME + "day_lines:\n  - { line: 110.b, days: further dock days }\n"
    award = AWARD.replace("days_line: 110.b\n", "")
    assert ledger_of(tmp_path / "s", award=award, programme=programme).contract.days_line == "110.b"


def test_without_an_award_or_its_bid_there_is_none(tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s")
    (root / "owner/bids/ostrey.yaml").unlink()
    assert compiled(root)[1].ledger is None
    (root / "owner/award.yaml").unlink()
    assert compiled(root)[1].ledger is None
