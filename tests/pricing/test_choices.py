"""Either this or that: one of the two counts, by the owner's choice or as the dearer, wherever prices are added up."""

from __future__ import annotations

import io
from datetime import date
from decimal import Decimal
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import openpyxl
import pytest

from tenderwright.model.bid import Bid, BidLine
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.pricing.bids.arithmetic import correct
from tenderwright.pricing.bids.cases import cases
from tenderwright.pricing.bids.evaluate import EvaluatedBid, evaluate
from tenderwright.pricing.bids.tendered import tender_lines
from tenderwright.pricing.in_dock.contract import Contract
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.documents.composed import Composed, part, words
from tests.fixtures.overlay import notices_of
from tests.fixtures.wider_format import ITEM, Change, of_item, wider, wider_package
from tests.programs import convert

RATE: Change = ("owner/rates.yaml", "  510.c:", "  510.f: { rate: 1900 }\n  510.c:")
NEW = "  - {{ line: f, text: New valves in place of the old, kind: definite, price: lump, instead_of: [510.a]{} }}\n"
LINE_C = '  - { line: c, text: "Blanks, all", price: lump, kind: definite }\n'
A = Decimal("1810.25")
"""The estimate of 510.a in all its rows."""


SHEDS, DISCOUNT = of_item("of: [510.a, 510.c]", "of: [510.c]"), of_item('of: ["510.*"]', "of: [510.b]")
"""What is paid in any case is no percentage of what may not be ordered."""


def _changes(counts: str = "") -> tuple[Change, ...]:
    new = NEW.format(f", counts: {counts}" if counts else "")
    return RATE, SHEDS, DISCOUNT, of_item(LINE_C, LINE_C + new)


def _made(counts: str = "") -> Composed:
    return wider(*_changes(counts))


def _evaluated(rates: dict[str, str], counts: str = "") -> EvaluatedBid:
    composed = _made(counts)
    package = composed.compiled.package
    lines = tender_lines(package, composed.compiled.calculated, None)
    bid = Bid(
        yard="Ostrey",
        received=date(2027, 12, 1),
        lines={number: BidLine(rate=Decimal(rate)) for number, rate in rates.items()},
        here=BidLine().here,
    )
    assert package.tender is not None
    counts = package.tender.award.components
    corrected = correct(bid, lines, "unit price governs", components=counts)
    return evaluate("ostrey", "Ostrey", bid, {"ostrey": corrected}, package.tender, None, cases(lines, counts)[0])


@pytest.mark.parametrize(
    ("counts", "base", "evaluated"),
    [("", A, Decimal(1900)), ("that", A, A), ("this", Decimal(1900), Decimal(1900))],
)
def test_one_of_the_two_counts_in_the_estimate(counts: str, base: Decimal, evaluated: Decimal) -> None:
    estimate, without = _made(counts).owner.estimate, wider(SHEDS, DISCOUNT).owner.estimate
    assert estimate is not None
    assert without is not None
    assert estimate.base - without.base == base - A
    assert estimate.evaluated - without.evaluated == evaluated - A


def test_the_dearer_counts_in_each_bid() -> None:
    rows = {f"510.a.{row}": "100" for row in ("sea-chest", "suction-fire", "suction-bilge")}
    cheap, dear = _evaluated({**rows, "510.f": "250"}), _evaluated({**rows, "510.f": "450"})
    assert (cheap.total, dear.total) == (cheap.corrected.base, dear.corrected.base + 150)
    assert cheap.corrected.base == dear.corrected.base
    assert [one.amount for one in dear.components if one.name == "choices"] == [Decimal(150)]
    assert sum(one.amount for one in dear.components) == dear.total
    assert (cheap.slope("510.a.sea-chest"), cheap.slope("510.f")) == (100, 0)
    assert dear.slope("510.a.sea-chest") == 0


@pytest.mark.needs("soffice")
def test_libreoffice_counts_the_dearer_in_the_evaluated_total(tmp_path: Path) -> None:
    book: Any = openpyxl.load_workbook(io.BytesIO(price_form_workbook(_made().yard[1])))
    sheet = book["Price form"]
    rows = {str(sheet.cell(row, 1).value): row for row in range(5, sheet.max_row + 1)}
    for number, rate in {"510.a.sea-chest": 100, "510.f": 450, "510.c": 10}.items():
        sheet.cell(rows[number], 7).value = rate
    book.save(tmp_path / "form.xlsx")
    (saved,) = convert([tmp_path / "form.xlsx"], "xlsx", tmp_path / "out", tmp_path / "profile")
    shown: Any = openpyxl.load_workbook(saved, data_only=True)
    found = {}
    for name in ("Base_total", "Evaluated_total"):
        title, address = shown.defined_names[name].attr_text.replace("'", "").replace("$", "").split("!")
        found[name] = shown[title][address].value
    assert found == {"Base_total": 110, "Evaluated_total": 460}


def test_it_is_printed_with_the_rule() -> None:
    said = words(part(_made().yard[0], "item-510"))
    assert "lump sum; alternative; instead of 510.a, of which the dearer counts in the price" in said
    assert "this counts in the price" in words(part(_made("this").yard[0], "item-510"))


def _contract(award: str, counts: str = "") -> Contract:
    rates = {"510.a.sea-chest": 100, "510.a.suction-fire": 100, "510.a.suction-bilge": 100, "510.f": 450}
    lines = "".join(f"  {number}: {{ rate: {rate} }}\n" for number, rate in rates.items())
    with TemporaryDirectory() as folder:
        root = wider_package(Path(folder) / "p", *_changes(counts))
        (root / "owner/bids").mkdir()
        (root / "owner/bids/ostrey.yaml").write_text(f"yard: Ostrey\nreceived: 2027-12-09\nlines:\n{lines}", "utf-8")
        text = f"bid: ostrey\nawarded: 2028-01-31\namount: 1\n{award}"
        (root / "owner/award.yaml").write_text(text, "utf-8")
        files = read(root)
        ledger = compile_owner(files, compile_package(files)).ledger
    assert ledger is not None
    return ledger.contract


@pytest.mark.parametrize(
    ("counts", "award", "amounts"),
    [
        ("", "", (100, 0)),
        ("", "alternatives: [510.f]\n", (0, 450)),
        ("this", "", (0, 450)),
        ("this", "alternatives: [510.a.sea-chest, 510.a.suction-fire, 510.a.suction-bilge]\n", (100, 0)),
    ],
)
def test_the_award_picks(counts: str, award: str, amounts: tuple[int, int]) -> None:
    made = _contract(award, counts)
    assert (made.lines["510.a.sea-chest"].amount, made.lines["510.f"].amount) == amounts


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (of_item("instead_of: [510.a]", "instead_of: [510.z]"), "dead-reference"),
        (of_item("instead_of: [510.a]", "instead_of: [510.f]"), "bad-choice"),
        (of_item("instead_of: [510.a]", "instead_of: [320.a]"), "bad-choice"),
        (of_item("instead_of: [510.a]", "counts: this"), "bad-choice"),
    ],
)
def test_what_is_no_choice_is_told(change: Change, code: str) -> None:
    with TemporaryDirectory() as folder:
        found = notices_of(wider_package(Path(folder) / "p", *_changes(), change))
    assert {(one.code, one.place.path) for one in found if one.severity == "error"} == {(code, ITEM)}
