"""Weight bands with adders: each plate is in one band, and what is harder is added for the part that it is."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tenderwright.notices import Notice
from tests.documents.composed import part, rows, tables, words
from tests.fixtures.overlay import notices_of
from tests.fixtures.wider_format import Change, wider, wider_package

RIVETS = "items/320-rivets-renew.yaml"
LINES = """tables:
  - table: bands
    title: Plates by weight
    columns: [{ column: Band, shows: band }, { column: Plates, shows: name }]
    rows:
      - { row: light, text: Floors and brackets, to: 60 kg/m2, quantity: 400 kg }
      - { row: middle, text: Shell, from: 60 kg/m2, to: 80 kg/m2, quantity: 900 kg }
      - { row: heavy, text: Garboard, from: 80 kg/m2, quantity: 300 kg }
lines:
  - { line: b, text: Renew plate, price: rate, basis: surveyed, where: as marked, each_row_of: bands }
  - { line: c, text: Curved plate, price: rate, quantity: 500 kg, basis: surveyed, where: same, adds_to: [320.b] }
  - { line: d, text: Below the turn of the bilge, price: rate, takes_line: 320.b.middle, share: 30 %, where: same,
      adds_to: [320.b.middle] }
"""
OWN = "  320.b: { rate: 6 }\n  320.c: { rate: 1.5 }\n  320.d: { rate: 2 }\n  420.a:"
RATES: Change = ("owner/rates.yaml", "  420.a:", OWN)
SET: tuple[Change, ...] = (RATES, (RIVETS, "lines:\n", LINES))


def test_bands_are_lines_and_adders_are_paid_beside_them() -> None:
    estimate = wider(*SET).owner.estimate
    assert estimate is not None
    mine = {line.number: line.amount for line in estimate.lines if line.number.startswith(("320.b", "320.c", "320.d"))}
    assert mine == {
        "320.b.light": Decimal(2400),
        "320.b.middle": Decimal(5400),
        "320.b.heavy": Decimal(1800),
        "320.c": Decimal(750),
        "320.d": Decimal(540),  # 30 % of 900 kg
    }


def test_bands_and_adders_are_printed_in_words() -> None:
    page = part(wider(*SET).yard[0], "item-320")
    bands = next(table for table in tables(page) if table.anchor == "table-320-bands")
    assert [row[0] for row in rows(bands)] == ["To 60 kg/m²", "Over 60 kg/m² to 80 kg/m²", "Over 80 kg/m²"]
    assert "added to the rate of 320.b" in words(page)


def _errors(*changes: Change) -> list[Notice]:
    with TemporaryDirectory() as folder:
        found = notices_of(wider_package(Path(folder) / "p", *SET, *changes))
    return [one for one in found if one.severity == "error"]


@pytest.mark.parametrize(
    ("old", "new", "code", "said"),
    [
        ("quantity: 500 kg", "quantity: 5 m2", "bad-addition", "line 320.c is in m2"),
        ("quantity: 500 kg", "quantity: 1700 kg", "bad-addition", "have 1600 kg"),
        ("price: rate, quantity: 500 kg", "price: lump", "bad-addition", "is not priced by a rate itself"),
        ("adds_to: [320.b]", "adds_to: [320.z]", "dead-reference", "`320.z`"),
        ("from: 60 kg/m2", "from: 65 kg/m2", "bad-table", "goes up to 60 kg/m2"),
        ("from: 60 kg/m2", "from: 50 kg/m2", "bad-table", "begins above 50 kg/m2"),
        ("from: 60 kg/m2", "from: 60 mm", "bad-table", "another in mm"),
        ("from: 80 kg/m2", "from: 80 kg/m2, to: 70 kg/m2", "bad-table", "goes up to 70 kg/m2"),
    ],
)
def test_what_does_not_add_up_is_told(old: str, new: str, code: str, said: str) -> None:
    (one,) = _errors((RIVETS, old, new))
    assert one.code == code
    assert said in one.message
