"""A line that is a percentage of others: one sum, rounded once, the same in estimate, form, bid and account."""

from __future__ import annotations

import io
from datetime import date
from decimal import Decimal
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import numpy as np
import openpyxl
import pytest

from tenderwright.commands.bids_read import expected_form
from tenderwright.commands.explain_price import line_price
from tenderwright.model.bid import Bid, BidLine
from tenderwright.notices import Notice
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.planning.trials import trials
from tenderwright.pricing.bids.arithmetic import correct
from tenderwright.pricing.bids.corrected import CorrectedBid
from tenderwright.pricing.bids.read_bid import read_bid
from tenderwright.pricing.bids.tendered import tender_lines
from tenderwright.pricing.in_dock.account import RunningAccount, account
from tenderwright.pricing.money import total
from tenderwright.pricing.percents import percents
from tenderwright.pricing.price import PricedLine
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.fixtures.overlay import notices_of
from tests.fixtures.wider_format import ITEM, Change, of_item, wider, wider_package
from tests.pricing.bids.filled import RECEIVED, cells
from tests.programs import convert

RATES = {
    "510.a.sea-chest": "812.35",
    "510.a.suction-fire": "400.05",
    "510.a.suction-bilge": "1",
    "510.b.fire": "10",
    "510.b.2": "20",
    "510.c": "90.10",
    "510.d": "7.5",
    "510.e": "3",
}
BASE = Decimal("812.35") + Decimal("400.05") + 1 + Decimal("90.10")  # 1303.50
SHEDS = Decimal("97.76")  # 97.7625
ALL = BASE + 2 * 10 + 20
DISCOUNT = Decimal("-40.31")  # 40.305, halves up


def _line(number: str, *changes: Change) -> PricedLine:
    estimate = wider(*changes).owner.estimate
    assert estimate is not None
    return next(line for line in estimate.lines if line.number == number)


def _corrected(bid: Bid, rule: str = "unit price governs") -> CorrectedBid:
    compiled = wider().compiled
    return correct(bid, tender_lines(compiled.package, compiled.calculated, None), rule)


def _bid(**more: BidLine) -> Bid:
    lines = {number: BidLine(rate=Decimal(rate)) for number, rate in RATES.items()}
    return Bid(yard="Ostrey", received=date(2027, 12, 1), lines=lines | more, here=BidLine().here)


def test_a_percentage_is_of_the_lines_that_it_names() -> None:
    of = percents(wider().compiled.package)
    assert of["510.d"] == ("510.a.sea-chest", "510.a.suction-fire", "510.a.suction-bilge", "510.c")
    assert of["510.e"] == (*of["510.d"][:3], "510.b.fire", "510.b.2", "510.c")


def test_the_estimate_takes_it_of_their_amounts() -> None:
    sheds, discount = _line("510.d"), _line("510.e")
    named = [_line(number) for number in sheds.of]
    assert sheds.amount == Decimal("216.82")  # 8 % of 700 + 410.25 + 700 + 900 = 2710.25
    assert sheds.low == (total([one.low for one in named]) * 5 / 100).quantize(Decimal("0.01"))
    assert discount.amount == Decimal("-79.01")  # 2.5 % of 3160.25 = 79.00625
    assert "at 8 % of 2 710.25, the sum of 510.a.sea-chest" in line_price(sheds)[0]


def test_the_trials_take_it_of_what_the_lines_come_to_in_each() -> None:
    composed = wider()
    assert composed.owner.estimate is not None
    made = trials(composed.owner.papers, composed.owner.estimate, None)
    rows = {part: made.costs[place] for place, part in enumerate(made.parts)}
    share = rows["510.d"] / sum(rows[number] for number in _line("510.d").of)
    assert np.all((share > 0.049) & (share < 0.121))
    assert np.all(rows["510.e"] < 0)


def test_a_bid_is_corrected_with_its_own_sum() -> None:
    found = _corrected(_bid())
    assert found.lines["510.d"].line.quantity == BASE
    assert (found.lines["510.d"].amount, found.lines["510.e"].amount) == (SHEDS, DISCOUNT)
    mended = _corrected(_bid(**{"510.d": BidLine(rate=Decimal("7.5"), extension=Decimal("101.00"))}))
    correction = mended.lines["510.d"].correction
    assert correction is not None
    assert (correction.before, correction.after) == (Decimal("101.00"), SHEDS)
    alone = _corrected(_bid(**{"510.d": BidLine(extension=SHEDS)}))
    assert alone.lines["510.d"].rate == Decimal("7.4998")  # to four decimals
    absolute = _corrected(
        _bid(**{"510.d": BidLine(rate=Decimal("7.5"), extension=Decimal("101.00"))}), "total absolute"
    )
    assert [one.line for one in absolute.disqualifying] == ["510.d"]


@pytest.mark.needs("soffice")
def test_libreoffice_calculates_it_and_the_form_is_read_back(tmp_path: Path) -> None:
    form = wider().yard[1]
    book: Any = openpyxl.load_workbook(io.BytesIO(price_form_workbook(form)))
    sheet = book["Price form"]
    rows = {str(sheet.cell(row, 1).value): row for row in range(5, sheet.max_row + 1)}
    for number, rate in RATES.items():
        share = number in ("510.d", "510.e")
        sheet.cell(rows[number], 7).value = float(Decimal(rate) / 100 if share else Decimal(rate))
    book["Tables"].cell(5, 6).value = "Corve Foundry"
    book.save(tmp_path / "form.xlsx")
    (ods,) = convert([tmp_path / "form.xlsx"], "ods", tmp_path / "ods", tmp_path / "profile")
    (saved,) = convert([ods], "xlsx", tmp_path / "xlsx", tmp_path / "profile")
    shown: Any = openpyxl.load_workbook(saved, data_only=True)["Price form"]
    assert shown.cell(rows["510.d"], 4).value == pytest.approx(float(BASE))
    assert shown.cell(rows["510.d"], 8).value == pytest.approx(float(SHEDS))
    assert shown.cell(rows["510.e"], 8).value == pytest.approx(float(DISCOUNT))
    found = read_bid(cells(saved.read_bytes()), expected_form(form, ()), "Ostrey", RECEIVED)
    assert {number: found.bid.lines[number].rate for number in RATES} == {n: Decimal(rate) for n, rate in RATES.items()}
    assert found.bid.lines["510.d"].extension == SHEDS
    assert [dict(one) for one in found.bid.tables.values()] == [{"Make of a new one": "Corve Foundry"}]
    assert [one.code for one in found.notices if one.severity == "error"] == []


WEEK = "until: 2028-03-16\nmeasured:\n  - { line: 510.b.fire, quantity: 4 each, day: 2028-03-15 }\n"
MORE = WEEK + "  - { line: 510.a.suction-fire, quantity: 3 each, day: 2028-03-15 }\n"


def _account(week: str, dropped: str = "") -> RunningAccount:
    lines = "".join(f"  {number}: {{ rate: {rate} }}\n" for number, rate in RATES.items())
    rest = "".join(f"  {n}: {{ rate: 0 }}\n" for n in ("110.a", "130.a", "130.b", "140.a", "210.a", "420.a"))
    amount = total([ALL, SHEDS, DISCOUNT]) if not dropped else Decimal(0)
    award = f"bid: ostrey\nawarded: 2028-01-31\namount: {amount}\n{dropped}"
    with TemporaryDirectory() as folder:
        root = wider_package(Path(folder) / "p")
        for path, text in (
            ("bids/ostrey", f"yard: Ostrey\nreceived: 2027-12-09\nlines:\n{lines}{rest}"),
            ("award", award),
            ("in-dock/week-1", week),
        ):
            (root / "owner" / f"{path}.yaml").parent.mkdir(exist_ok=True)
            (root / "owner" / f"{path}.yaml").write_text(text, "utf-8")
        files = read(root)
        compiled = compile_package(files)
        ledger = compile_owner(files, compiled).ledger
    assert ledger is not None
    return account(ledger, date(2028, 3, 16))


def test_in_dock_it_follows_what_its_lines_come_to() -> None:
    found = {row.line.number: row for row in _account(MORE).lines}
    assert found["510.a.suction-fire"].final == Decimal("1200.15")
    assert found["510.d"].line.amount == SHEDS
    assert found["510.d"].final == Decimal("157.77")  # 7.5 % of 1303.50 + 800.10
    assert found["510.e"].final == -Decimal("64.91")  # 3 % of 1343.50 + 800.10 + 20, rounded once


def test_a_line_that_is_dropped_takes_its_part_of_the_percentage_along() -> None:
    found = {row.line.number: row.line.amount for row in _account(WEEK, 'dropped: ["510.c"]\n').lines}
    assert found["510.c"] == 0
    assert found["510.d"] == Decimal("91.01")  # 7.5 % of 1213.40
    assert found["510.e"] == Decimal("-37.60")  # 3 % of 1253.40


@pytest.mark.parametrize(
    ("old", "new", "code", "words"),
    [
        ("price: percent, of: [510.a, 510.c]", "price: percent", "bad-percent", "does not say of what"),
        ("of: [510.a, 510.c]", "of: [510.a, 510.z]", "dead-reference", "`510.z`"),
        ("of: [510.a, 510.c]", "of: [510.a, 320.a]", "bad-percent", "line 320.a, which is not"),
        ("of: [510.a, 510.c]", "of: [510.e]", "bad-percent", "a percentage itself"),
        ("of: [510.a, 510.c]", "of: [510.d]", "bad-percent", "a percentage itself"),
        ("of: [510.a, 510.c]", "of: [510.a], quantity: 3 each", "bad-percent", "whose quantity"),
        (
            "price: lump, kind: definite",
            "price: lump, kind: definite, of: [510.a]",
            "bad-percent",
            "is not a percentage",
        ),
    ],
)
def test_what_it_cannot_be_of_is_told(old: str, new: str, code: str, words: str) -> None:
    with TemporaryDirectory() as folder:
        found: list[Notice] = notices_of(wider_package(Path(folder) / "p", of_item(old, new)))
    (one,) = [one for one in found if one.severity == "error"]
    assert (one.code, one.place.path) == (code, ITEM)
    assert words in one.message
