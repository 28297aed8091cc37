"""The donors' page: what a gift does, how far the docking is paid for, and nothing that is not marked for it."""

from __future__ import annotations

import re
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.documents.drawings.donor_ship import donor_ship
from tenderwright.documents.edition import Bullets, Edition, Figure, plain
from tenderwright.documents.owner.donors import donor_sheet
from tenderwright.documents.owner.funding import asked, secured
from tenderwright.documents.owner.gifts import unit_price
from tenderwright.model.funding import Gift
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.writing.pdf import Typesetter
from tests.documents.composed import Composed, changed, composed, rows, tables, words
from tests.documents.drawings.ship import marram
from tests.outcomes import result_of
from tests.pipeline.packages import edit, starter
from tests.planning.test_ladder import FUNDING, SCOPE, SETTINGS

GIFTS = """gifts:
  - { line: 320.a, one: a rivet driven hot, many: rivets driven hot }
  - { line: 420.a, one: a square metre coated, many: square metres coated }
"""


def _public(root: Path) -> None:
    scope = SCOPE.replace('"320": { risk', '"320": { public: "Drive new hot rivets.", risk')
    (root / "owner" / "scope.yaml").write_text(scope + GIFTS, "utf-8")
    (root / "owner" / "funding.yaml").write_text(FUNDING, "utf-8")
    edit(root, "owner/rates.yaml", "lines:", SETTINGS)


@cache
def public() -> Composed:
    return changed(_public)


def sheet(made: Composed) -> Edition:
    found = donor_sheet(made.owner_desk(), made.edition("owner"))
    assert found is not None
    return found


def figures(edition: Edition) -> list[Figure]:
    return [one for part in edition.parts for one in part.blocks if isinstance(one, Figure)]


def test_a_gift_pays_for_whole_units_at_what_they_come_to_rounded_up() -> None:
    desk = composed("marram").owner_desk()
    ladder, scope = asked(desk), desk.foresight and desk.foresight.papers.scope
    assert ladder is not None
    assert scope is not None
    (table,) = tables(sheet(composed("marram")))
    told = {row[0].replace("\N{NO-BREAK SPACE}", " "): row[1] for row in rows(table)}
    assert list(told) == ["EUR 50", "EUR 500", "EUR 5 000"]
    prices = {gift.many: unit_price(desk, gift, ladder) for gift in scope.gifts}
    for size, words_ in told.items():
        money = int(re.sub(r"\D", "", size))
        for one in words_.split("; or "):
            count, _, many = one.partition(" ")
            assert int(count) == int(money / prices[many])
    lines = {line.number: line for line in desk.estimate.lines}
    assert all(unit_price(desk, gift, ladder) >= lines[gift.line].rate for gift in scope.gifts)


def test_no_gift_is_offered_for_work_that_is_safe_while_other_work_waits() -> None:
    desk = public().owner_desk()
    ladder = asked(desk)
    assert ladder is not None
    rung = secured(desk, ladder)
    safe = set(rung.items) if rung is not None else set()
    offered = words(tables(sheet(public())))
    assert ("rivets driven hot" in offered) == ("320" not in safe or {"320", "420"} <= safe)


def test_one_unit_is_told_in_its_own_words() -> None:
    desk = public().owner_desk()
    ladder = asked(desk)
    assert ladder is not None
    gift = Gift(line="320.a", one="a rivet", many="rivets", here=desk.tender.here)
    price = unit_price(desk, gift, ladder)
    assert price == price.to_integral_value()
    assert price >= Decimal(1)


def test_what_the_whole_comes_to_stands_only_where_it_may() -> None:
    told, kept = words(sheet(composed("marram"))), words(sheet(public()))
    assert "The docking comes to EUR\N{NO-BREAK SPACE}1\N{NO-BREAK SPACE}401\N{NO-BREAK SPACE}000." in told
    assert "is still wanted. Others have been asked for all of that, and may yet say no." in told
    assert "The docking comes to" not in kept
    assert [one.name for one in figures(sheet(composed("marram")))] == ["donor-ship"]
    assert [one.name for one in figures(sheet(public()))] == ["donor-bar"]


def test_a_cost_that_may_be_told_says_what_gift_completes_the_work() -> None:
    entries = [plain(entry) for block in sheet(composed("marram")).parts[0].blocks if isinstance(block, Bullets)
               for entry in block.entries]  # fmt: skip
    completing = [one for one in entries if one.endswith("does all of it.")]
    assert len(completing) == 2
    assert all(re.search(r"EUR[\s\d]+00 does all of it\.$", one) for one in completing)


@pytest.mark.parametrize("shares", [(73, 27, 0), (0, 0, 100), (100, 0, 0), (40, 30, 30)])
def test_the_ship_is_filled_to_the_shares(shares: tuple[int, int, int]) -> None:
    form = result_of(marram()[1], hull_outline).form
    told = list(zip(("safe", "asked for", "still wanted"), shares, strict=True))
    drawn = donor_ship("Marram", form, told)
    assert re.findall(r'class="dw-share">(\d+) of every 100 ([a-z ]+)<', drawn.svg) == [
        (str(share), word) for word, share in told if share
    ]
    assert drawn.audience == "public"


def test_it_is_one_page() -> None:
    assert Typesetter().typeset(sheet(composed("marram")), 1_822_635_000, "donors").page_count == 1


def test_a_gift_for_a_line_that_is_not_there_is_a_dead_reference(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    _public(root)
    edit(root, "owner/scope.yaml", "line: 420.a, one", "line: 420.q, one")
    files = read(root)
    (notice,) = [one for one in compile_owner(files, compile_package(files)).notices if one.severity == "error"]
    assert notice.code == "dead-reference"
    assert "420.q" in notice.message
    assert notice.place.path == "owner/scope.yaml"
