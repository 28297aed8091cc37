"""Mistakes and doubts that are told when bids are compared, each at its line."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.commands.bids_compare import compared, doubts_of, mistakes_in
from tenderwright.pipeline import compile_owner, compile_package, read
from tests.fixtures.overlay import Expected, places
from tests.fixtures.returned_bids import BIDS, bids_package, both_sides
from tests.replacing import replace

EVALUATION, OSTREY, SALTHOLM = "owner/evaluation.yaml", "owner/bids/ostrey-dock.yaml", "owner/bids/saltholm-slip.yaml"
ABSOLUTE = ("package.yaml", "arithmetic: unit price governs", "arithmetic: total absolute")
Change = tuple[str, str, str]


def line_of(path: str, words: str) -> int:
    """Find the line of a fixture that holds some words."""
    lines = (BIDS / path).read_text("utf-8").splitlines()
    return next(number for number, line in enumerate(lines, start=1) if words in line)


def adder(entry: str) -> Change:
    """Put an adder before those there are, on the line below `adders:`."""
    return (EVALUATION, "adders:\n", f"adders:\n  - {entry}\n")


_FIRST = line_of(EVALUATION, "adders:") + 1
_CORRECTION = "corrections:\n  - { bid: saltholm-slip, line: 420.a, rate: 91, confirmed: 2027-12-14 }\nadders:"
DOUBTS: Change = (OSTREY, "currency: EUR", 'currency: EUR\ndoubts: ["`G12`: struck out", "`G13`: a comment"]')
_SETTLED = "doubts:\n  - {{ bid: ostrey-dock, doubt: '`G1', by: ship manager, why: asked, {} }}\nadders:"

COMPARED: dict[str, tuple[tuple[tuple[Change, ...], Expected], ...]] = {
    "bid-currency": (
        (((OSTREY, "currency: EUR", "currency: EURO"),), {(OSTREY, line_of(OSTREY, "yard:"), "bid-currency")}),
    ),
    "addition-unclear": (
        ((adder("{ bid: ostrey-dock, why: asked }"),), {(EVALUATION, _FIRST, "addition-unclear")}),
        (
            (adder("{ bid: ostrey-dock, lines: [210.a], amount: 1, take: highest, why: asked }"),),
            {(EVALUATION, _FIRST, "addition-unclear")},
        ),
        (
            ((EVALUATION, ", amount: 1150, why", ", why"),),
            {(EVALUATION, line_of(EVALUATION, "Disposal"), "addition-unclear")},
        ),
    ),
    "doubt-unsettled": (
        ((DOUBTS,), {(OSTREY, line_of(OSTREY, "yard:"), "doubt-unsettled")}),
        (
            (DOUBTS, (EVALUATION, "adders:", _SETTLED.format("rate: 91"))),
            {(EVALUATION, _FIRST, "doubt-unsettled")},
        ),
    ),
    "correction-not-allowed": (
        ((ABSOLUTE, (EVALUATION, "adders:", _CORRECTION)), {(EVALUATION, _FIRST, "correction-not-allowed")}),
    ),
    "bid-arithmetic": (
        (
            (),
            {
                (OSTREY, line_of(OSTREY, "420.a"), "bid-arithmetic"),
                (SALTHOLM, line_of(SALTHOLM, "420.a"), "bid-arithmetic"),
                (
                    "owner/bids/wrackness-yard.yaml",
                    line_of("owner/bids/wrackness-yard.yaml", "140.b"),
                    "bid-arithmetic",
                ),
            },
        ),
    ),
    "exclusion-unpriced": (
        (
            ((EVALUATION, "exclusion: Disposal of spent abrasive, amount", "lines: [420.a], amount"),),
            {(SALTHOLM, line_of(SALTHOLM, "Disposal"), "exclusion-unpriced")},
        ),
    ),
}
"""For each code, changes of the three bids, and the lines at which it is then told."""


@pytest.mark.parametrize(("code", "case"), [(code, n) for code, cases in COMPARED.items() for n in range(len(cases))])
def test_it_is_told_at_its_line(code: str, case: int, tmp_path: Path) -> None:
    changes, wanted = COMPARED[code][case]
    compiled, owner = both_sides(bids_package(tmp_path / "package", *changes))
    found = mistakes_in(compiled, owner)
    if not found:
        found = doubts_of(compared(compiled, owner)[1])
    assert {place for place in places(found) if place[2] == code} == wanted


def test_the_bids_as_they_are_keep_nobody_from_comparing_them(tmp_path: Path) -> None:
    compiled, owner = both_sides(bids_package(tmp_path / "package"))
    assert mistakes_in(compiled, owner) == []


def test_a_line_that_nobody_prices_is_told(tmp_path: Path) -> None:
    gone = [(path, "  140.b:", "  # 140.b:") for path in (OSTREY, SALTHOLM, "owner/bids/wrackness-yard.yaml")]
    compiled, owner = both_sides(bids_package(tmp_path / "package", *gone))
    found = doubts_of(compared(compiled, replace(owner, estimate=None))[1])
    told = [notice for notice in found if notice.code == "exclusion-unpriced"]
    assert len(told) == 3
    assert all("no other bid nor the estimate prices it" in notice.message for notice in told)


def test_settled_doubts_keep_nobody_and_answer_their_line(tmp_path: Path) -> None:
    settled = _SETTLED.format("line: 320.a, rate: 91")
    compiled, owner = both_sides(bids_package(tmp_path / "package", DOUBTS, (EVALUATION, "adders:", settled)))
    assert mistakes_in(compiled, owner) == []
    bid = compared(compiled, owner)[1].bid("ostrey-dock").bid
    assert (str(bid.lines["320.a"].rate), bid.doubts) == ("91", ())
    assert "settled by ship manager: asked" in bid.lines["320.a"].note


def test_a_settlement_of_no_doubt_is_told(tmp_path: Path) -> None:
    settled = _SETTLED.format("line: 320.a, rate: 91").replace("`G1", "`H1")
    root = bids_package(tmp_path / "package", DOUBTS, (EVALUATION, "adders:", settled))
    files = read(root)
    found = compile_owner(files, compile_package(files)).notices
    told = [notice.message for notice in found if notice.severity == "error"]
    assert told == ["bid `ostrey-dock` has no doubt that begins so: `H1"]
