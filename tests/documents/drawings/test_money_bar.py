"""The bars of cost and money are to one scale, and nothing of them is lost in black and white."""

from __future__ import annotations

import re
from decimal import Decimal
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.documents.drawings.money_bar import HATCHES, WIDTH, money_bar
from tenderwright.writing.figures import figure_svg

SVG = "{http://www.w3.org/2000/svg}"
COSTS = [("contract", Decimal(36760)), ("ordered", Decimal(6011)), ("waiting", Decimal(4880))]
MONEY = [("in hand", Decimal(39000)), ("promised", Decimal(6000))]


def outlines(svg: str) -> list[tuple[float, float]]:
    """Give the left and right ends of every box drawn with a line."""
    found = []
    for path in ElementTree.fromstring(svg).iter(f"{SVG}path"):
        if path.get("stroke-width") == "0.35":
            xs = [float(pair.split()[0]) for pair in re.split("[ML]", path.get("d", "").rstrip("Z")) if pair]
            found.append((min(xs), max(xs)))
    return found


def test_boxes_are_as_long_as_their_amounts() -> None:
    figure = money_bar("EUR", COSTS, MONEY, Decimal(36760), Decimal(41760))
    boxes = outlines(figure.svg)
    assert len(boxes) == 5
    per = [(right - left) / float(amount) for (left, right), (_, amount) in zip(boxes, [*COSTS, *MONEY], strict=True)]
    assert per == pytest.approx([per[0]] * 5, rel=1e-2)
    assert boxes[0][0] == boxes[3][0] == 22.0
    assert boxes[2][1] == pytest.approx(WIDTH - 4.0, abs=0.01)


def test_the_contract_and_its_limit_are_marked_at_their_amounts() -> None:
    svg = money_bar("EUR", COSTS, MONEY, Decimal(36760), Decimal(41760)).svg
    marks = [line for line in ElementTree.fromstring(svg).iter(f"{SVG}line") if line.get("stroke-width") == "0.8"]
    at = [float(mark.get("x1", "0")) for mark in marks]
    assert at[0] == pytest.approx(outlines(svg)[0][1], abs=0.01)
    assert (at[1] - 22.0) / (at[0] - 22.0) == pytest.approx(41760 / 36760, rel=1e-3)
    assert [mark.get("stroke-dasharray") for mark in marks] == [None, "1.8 0.9"], "told apart without their words"


def test_hatchings_differ_by_more_than_colour() -> None:
    ways = {(hatch.angles, hatch.spacing, hatch.dash) for word, hatch in HATCHES.items() if word != "in hand"}
    assert len(ways) == 4


def test_without_money_there_is_one_bar_and_nothing_is_drawn_for_nothing() -> None:
    figure = money_bar("EUR", [("contract", Decimal(100)), ("ordered", Decimal(0))], [], Decimal(100), None)
    assert len(outlines(figure.svg)) == 1
    assert "Money" not in figure.svg


amounts = st.decimals(0, 10**7, places=2)


@given(amounts, amounts, amounts, amounts, amounts, st.none() | amounts)
def test_any_amounts_stay_inside_the_drawing(
    contract: Decimal, ordered: Decimal, waiting: Decimal, hand: Decimal, promised: Decimal, limit: Decimal | None
) -> None:
    costs = [("contract", contract), ("ordered", ordered), ("waiting", waiting)]
    figure = money_bar("EUR", costs, [("in hand", hand), ("promised", promised)], contract, limit)
    assert all(22.0 <= left <= right <= WIDTH for left, right in outlines(figure.svg))
    assert figure_svg(figure)
