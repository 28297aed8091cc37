"""How sure the cost is: what is said agrees with the trials, and every table adds up."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tenderwright.documents.edition import Facts, Paragraph, Part, Table, plain
from tenderwright.documents.owner.cost_risk import cost_risk, in_words, of_hundred
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.planning.foresight import Foresight
from tenderwright.planning.outlook import CostOutlook
from tenderwright.pricing.money import rounding, total
from tests.documents.composed import composed, rows, tables, walk, words
from tests.replacing import replace

from .seen import figures, foreseen_desk, marram_part, starter_desk
from .test_estimate import estimate, money


def made(desk: OwnerDesk) -> Part:
    found = cost_risk(desk)
    assert found is not None
    return found


def seen(desk: OwnerDesk) -> Foresight:
    assert desk.foresight is not None
    return desk.foresight


def titled(found: Part, title: str) -> Table:
    (table,) = [one for one in tables(found) if one.columns[0].title == title]
    return table


@pytest.mark.parametrize(
    ("share", "told"),
    [
        (0.0, "0 of 100"),
        (0.004, "fewer than 1 of 100"),
        (0.224, "22 of 100"),
        (0.996, "more than 99 of 100"),
        (1.0, "100 of 100"),
    ],
)
def test_shares_are_told_of_a_hundred(share: float, told: str) -> None:
    assert of_hundred(share) == told


def test_the_first_sentences_say_what_a_trustee_asks() -> None:
    levels = {0.50: Decimal("1200.00"), 0.80: Decimal("1500.00")}
    cost = CostOutlook(Decimal("1000.00"), 0.12, Decimal("1250.00"), Decimal("200.00"), levels, (), {})
    assert in_words(cost, "EUR").replace("\N{NO-BREAK SPACE}", " ") == (
        "The sum of the likely prices, EUR 1 000, was enough in 12 of 100 trials. Half the trials cost no more than "
        "EUR 1 200 (P50), four of five no more than EUR 1 500 (P80). To be covered in four of five, set aside EUR 500 "
        "more than the likely sum."
    )
    dear = replace(cost, point=Decimal("1600.00"), point_at=0.9)
    assert "already covers four of five, with EUR\N{NO-BREAK SPACE}100 to spare." in in_words(dear, "EUR")


def test_the_part_opens_with_those_sentences_and_the_curve() -> None:
    found = marram_part("cost-risk")
    first, second, *_ = found.blocks
    assert isinstance(first, Paragraph)
    priced = composed("marram").owner.estimate
    assert priced is not None
    likely = total(line.amount for line in priced.lines if line.section.code != "F")
    about = rounding("EUR", [likely])
    assert plain(first.text).startswith(f"The sum of the likely prices, {about.money(likely)}, was enough in")
    assert second in figures(found)
    assert [one.name for one in figures(found)] == ["cost-curve", "drivers"]


def test_from_the_sum_of_likely_to_p80_every_step_adds_up() -> None:
    desk = foreseen_desk()
    cost = seen(desk).outlook.cost
    likely, risks, reach, mean, more, last = [money(row[1]) for row in rows(titled(made(desk), ""))]
    assert likely + risks + reach == mean == cost.mean
    assert mean + more == last == cost.at(0.80)
    assert likely == cost.point
    assert abs(risks - (Decimal("0.5") * 2000 + Decimal("0.2") * 6500)) < 60  # means of the two risks, by hand


def test_the_parts_of_the_items_make_the_whole_to_the_cent() -> None:
    for found, whole in (
        (made(foreseen_desk()), seen(foreseen_desk()).outlook.cost.levels),
        (marram_part("cost-risk"), None),
    ):
        *items, last = rows(titled(found, "Item, with its risks"))
        for column in (1, 2, 3, 4):
            assert sum(money(row[column]) for row in items) == money(last[column])
        assert all(money(row[4]) == money(row[3]) - money(row[1]) for row in [*items, last])
        if whole is not None:
            assert [money(last[2]), money(last[3])] == [whole[0.50], whole[0.80]]


def test_the_levels_and_the_parts_of_marram_agree_on_p50_and_p80() -> None:
    found = marram_part("cost-risk")
    levels = {row[0]: money(row[1]) for row in rows(titled(found, "Level"))}
    last = rows(titled(found, "Item, with its risks"))[-1]
    assert [levels["P50"], levels["P80"]] == [money(last[2]), money(last[3])]
    options = estimate("marram").section_totals["F"]
    assert money(last[1]) == estimate("marram").everything - options
    assert list(levels.values()) == sorted(levels.values())


def test_a_risk_of_no_item_stands_under_a_name_of_its_own() -> None:
    names = [row[0] for row in rows(titled(made(foreseen_desk()), "Item, with its risks"))]
    assert names[-2] == "Risks of no one item"


def test_risks_that_cost_are_listed_and_those_of_money_are_said_to_be_left_out() -> None:
    found = made(foreseen_desk())
    *risks, last = rows(titled(found, "Risk"))
    assert [row[0].split(".")[0] for row in risks] == ["Late rain", "Thin plate"]
    assert [row[1:5] for row in risks] == [
        ["–", "50 %", "1 000.00 to 3 000.00", "2 to 4"],
        ["320", "20 %", "4 000.00 to 9 000.00", "–"],
    ]
    assert sum(money(row[5]) for row in risks) == money(last[5])
    assert "Risks that bear on the money in hand and not on the cost: no grant." in words(found)


def facts(found: Part) -> dict[str, str]:
    (one,) = [block for block in walk(found) if isinstance(block, Facts)]
    return {term: plain(told) for term, told in one.pairs}


def test_the_settings_of_the_trials_are_told() -> None:
    told = facts(made(foreseen_desk()))
    assert told["Trials"].startswith("20 000, from seed 7")
    assert told["Moving together"].startswith("50 % between lines of one hundred of items, 20 % between any others.")
    assert "110.b (further dock days)" in told["Days"]
    assert told["Risks"].startswith("2 ")


def test_without_settings_programme_and_risks_the_part_says_so() -> None:
    found = made(starter_desk())
    told = facts(found)
    assert told["Moving together"].startswith("Not at all")
    assert told["Risks"] == "None."
    assert told["Days"].startswith("The programme was not drawn")
    assert [one.columns[0].title for one in tables(found)].count("Risk") == 0
    assert len(titled(found, "Level").columns) == 3


def test_there_is_no_part_without_trials() -> None:
    assert cost_risk(replace(starter_desk(), foresight=None)) is None
