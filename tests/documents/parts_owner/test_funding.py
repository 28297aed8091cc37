"""The funding ladder on paper: who pays adds up, and the donors' page tells nothing that was not marked for it."""

from __future__ import annotations

from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from tenderwright.documents.edition import Bullets, Edition, Part, plain
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.donors import donor_sheet
from tenderwright.documents.owner.funding import asked, funding, ladder_table
from tenderwright.pipeline import owner_desk
from tests.documents.composed import Composed, changed, composed, tables, words
from tests.planning.test_ladder import FUNDING, SCOPE, SETTINGS

from .seen import figures, starter_desk

PUBLIC = SCOPE.replace('"320": { risk', '"320": { public: "Drive new hot rivets.", publish_cost: true, risk').replace(
    '"420": { risk', '"420": { public: "Coat her bottom.", risk'
)


def _funded(root: Path) -> None:
    (root / "owner" / "scope.yaml").write_text(PUBLIC, "utf-8")
    funding_text = FUNDING.replace("amount: 9000", "amount: 9000, public: Friends of the rivet")
    (root / "owner" / "funding.yaml").write_text(funding_text.replace("64000", "40000"), "utf-8")
    rates = root / "owner" / "rates.yaml"
    rates.write_text(rates.read_text("utf-8").replace("lines:", SETTINGS, 1), "utf-8")


@cache
def funded() -> Composed:
    return changed(_funded)


@cache
def funded_desk() -> OwnerDesk:
    return owner_desk(funded().compiled, funded().owner)


def part() -> Part:
    found = funding(funded_desk())
    assert found is not None
    return found


def sheet() -> Edition:
    found = donor_sheet(funded_desk(), funded().edition("owner"))
    assert found is not None
    return found


def amount(text: str) -> Decimal:
    return Decimal(text.replace(" ", "").replace("−", "-")) if text not in ("–", "") else Decimal(0)


def test_what_the_sources_pay_adds_up_at_every_rung() -> None:
    (table,) = [one for one in tables(part()) if one.columns[0].title == "Source"]
    *rows, last = [[plain(cell) for cell in row.cells] for row in table.rows]
    for column in range(1, len(table.columns)):
        assert sum(amount(row[column]) for row in rows) == amount(last[column])


def test_the_rungs_of_the_page_are_those_of_the_ladder() -> None:
    ladder = asked(funded_desk())
    assert ladder is not None
    first = next(one for one in tables(part()) if one.columns[1].title == "With")
    assert [amount(plain(row.cells[5])) for row in first.rows] == [rung.cost for rung in ladder.rungs]


def test_the_drawing_names_every_rung() -> None:
    (figure,) = figures(part())
    for name in ("Money in hand", "Gift, promised", "Hoped, hoped for"):
        assert name in figure.svg


def test_the_figures_stand_in_the_csv_too() -> None:
    table = ladder_table(funded_desk())
    assert table is not None
    assert {row[0] for row in table.rows} == {"P50", "P80"}
    assert all(len(row) == len(table.header) for row in table.rows)


def test_there_is_no_page_without_scope_and_sources() -> None:
    assert funding(starter_desk()) is None
    assert donor_sheet(starter_desk(), composed("starter").edition("owner")) is None


def test_donors_see_what_was_marked_for_them_and_nothing_else() -> None:
    text = words(sheet().parts[0])
    assert "Drive new hot rivets." in text
    assert "Coat her bottom." in text
    for secret in ("Reserve", "Gift", "Hoped", "must", "P80", "320", "Rivets, renew", "40 000"):
        assert secret not in text
    assert not sheet().confidential
    assert sheet().tables == {}


def test_a_cost_stands_only_where_it_may() -> None:
    ladder = asked(funded_desk())
    assert ladder is not None
    bullets = [block for block in sheet().parts[0].blocks if isinstance(block, Bullets)]
    told = [plain(entry) for block in bullets for entry in block.entries]
    (priced,) = [text for text in told if "EUR" in text]
    assert priced.startswith("Drive new hot rivets. EUR")
    figure = Decimal("".join(letter for letter in priced.partition("EUR")[2] if letter.isdigit()))
    assert 0 <= figure - ladder.costs["320"] < 100
    assert figure % 100 == 0


@pytest.mark.parametrize("anchor", ["funding"])
def test_the_demonstration_has_its_ladder_in_the_owner_edition_and_a_page_for_donors(anchor: str) -> None:
    edition = composed("marram").edition("owner")
    assert anchor in {one.anchor for one in edition.parts}
    assert "donors" in edition.sheets
    assert "funding-ladder" in edition.tables


def test_each_rung_says_what_it_leaves_undone() -> None:
    ladder = asked(funded_desk())
    assert ladder is not None
    blocks = list(part().blocks)
    place = next(i for i, one in enumerate(blocks) if getattr(one, "text", "") == "What each rung leaves undone")
    bullets = blocks[place + 2]
    assert isinstance(bullets, Bullets)
    told = {plain(entry).split(":")[0]: plain(entry) for entry in bullets.entries}
    for index, rung in enumerate(ladder.rungs):
        left = {"110", "130", "140", "210", "320", "420"} - set(rung.items)
        words_of = told.get(f"Rung {index + 1}", "")
        assert bool(words_of) == bool(left and rung.items)
        assert all(
            (f"{number} " in words_of) == (number in left) for number in ("140", "210", "320", "420") if rung.items
        )
