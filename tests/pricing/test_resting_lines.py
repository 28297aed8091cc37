"""A quantity rests on that of another line, as that stands in the form, and never on itself."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tenderwright.notices import Notice
from tests.documents.composed import part, words
from tests.fixtures.overlay import notices_of
from tests.fixtures.wider_format import Change, wider, wider_package

RIVETS, COAT = "items/320-rivets-renew.yaml", "items/420-underwater-shell-coat.yaml"
RATES: Change = ("owner/rates.yaml", "  420.a:", "  320.b: { rate: 4 }\n  320.c: { rate: 5 }\n  420.a:")
WHERE = "    where: as marked by the owner on strakes A and B between Fr 10 and Fr 30\n"
B = "  - {{ line: b, text: Ream the hole, price: rate, takes_line: 320.a{}, basis: assumed, where: strakes A and B }}\n"
C = "  - { line: c, text: Plug the hole, price: rate, takes_line: 320.b, share: 50 %, round_up: 5 each, where: same }\n"


def _changes(more: str = ", share: 30 %") -> tuple[Change, ...]:
    return RATES, (RIVETS, WHERE, WHERE + B.format(more) + C)


def _quantities(*changes: Change) -> dict[str, tuple[Decimal, str, str]]:
    lines = (line for section in wider(*changes).yard[1].sections for line in section.lines)
    return {line.number: (line.quantity, line.unit, line.basis) for line in lines}


def test_it_is_the_share_of_the_other_and_of_what_that_rests_on() -> None:
    found = _quantities(*_changes())
    assert found["320.a"] == (Decimal(40), "each", "surveyed")
    assert found["320.b"] == (Decimal(12), "each", "assumed")
    assert found["320.c"] == (Decimal(10), "each", "assumed")  # half of 12, rounded up to fives


def test_it_follows_the_other() -> None:
    found = _quantities(*_changes(), (RIVETS, "quantity: 40 each", "quantity: 70 each"))
    assert (found["320.b"][0], found["320.c"][0]) == (Decimal(21), Decimal(15))


def test_it_is_printed_with_what_it_rests_on() -> None:
    said = words(part(wider(*_changes()).yard[0], "item-320"))
    assert "30 % of line 320.a" in said
    assert "as much as line 320.a" in words(part(wider(*_changes("")).yard[0], "item-320"))


def _errors(*changes: Change) -> list[Notice]:
    with TemporaryDirectory() as folder:
        found = notices_of(wider_package(Path(folder) / "p", *changes))
    return [one for one in found if one.severity == "error"]


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("takes_line: 320.a,", "takes_line: 320.c,", "cycle"),
        ("takes_line: 320.a,", "takes_line: 320.b,", "cycle"),
        ("takes_line: 320.a,", "takes_line: 320.z,", "dead-reference"),
        ("takes_line: 320.a,", "takes_line: 320.a, quantity: 3 each,", "bad-quantity"),
        ("takes_line: 320.a,", "takes_line: 210.a,", "wrong-dimension"),
        ("takes_line: 320.a,", "takes_line: 320.a, unit: m2,", "wrong-dimension"),
    ],
)
def test_what_it_cannot_rest_on_is_told(old: str, new: str, code: str) -> None:
    found = _errors(*_changes(""), (RIVETS, old, new))
    assert {one.code for one in found} == {code}
    assert len(found) == (2 if "320.c" in new else 1)
