"""The drawing of evaluated prices against a quantity: to scale, crossings where they are, told without colour."""

from __future__ import annotations

import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.bid_sensitivity import HEIGHT, WIDTH, bid_sensitivity
from tenderwright.documents.edition import Figure
from tests.fixtures.returned_bids import compared_bids
from tests.replacing import replace

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def figure() -> Figure:
    _, found = compared_bids()
    made = bid_sensitivity(found)
    return made


def elements(figure: Figure, tag: str) -> list[ElementTree.Element]:
    return list(ElementTree.fromstring(figure.svg).iter(f"{SVG}{tag}"))


def texts(figure: Figure, kind: str) -> list[ElementTree.Element]:
    return [one for one in elements(figure, "text") if one.get("class") == f"{pen.PREFIX}{kind}"]


def number(text: str | None) -> float:
    return float((text or "").replace(" ", ""))


def scale(figure: Figure, side: str) -> tuple[float, float]:
    """Give paper for a figure of an axis: mm at nothing, and mm for one."""
    marks = [one for one in texts(figure, "axis") if (one.get("text-anchor") == "middle") is (side == "x")]
    first, last = marks[0], marks[-1]
    per = (float(last.get(side, "0")) - float(first.get(side, "0"))) / (number(last.text) - number(first.text))
    return float(first.get(side, "0")) - per * number(first.text), per


def lines(figure: Figure) -> list[tuple[list[float], str]]:
    """Give the ends and the dash of the line of each bid, in order of rank."""
    heavy = [one for one in elements(figure, "path") if one.get("stroke-width") == "0.5"]
    return [
        ([float(n) for n in re.findall(r"[\d.]+", one.get("d", ""))], one.get("stroke-dasharray", "")) for one in heavy
    ]


def test_every_bid_is_drawn_to_scale(figure: Figure) -> None:
    _, found = compared_bids()
    (x0, per_unit), (y0, per_euro) = scale(figure, "x"), scale(figure, "y")
    y0 -= 0.9  # figures stand a little below their mark
    assert found.deciding is not None
    for bid, ((x1, y1, x2, y2), _) in zip(found.bids, lines(figure), strict=True):
        slope = float(bid.slope(found.deciding.number))
        for x, y in ((x1, y1), (x2, y2)):
            quantity = (x - x0) / per_unit
            total = float(bid.total) + slope * (quantity - float(found.deciding.quantity))
            assert y == pytest.approx(y0 + per_euro * total, abs=0.05)


def test_crossings_are_marked_where_two_lines_meet(figure: Figure) -> None:
    _, found = compared_bids()
    (x0, per_unit), (y0, per_euro) = scale(figure, "x"), scale(figure, "y")
    drawn = sorted((float(c.get("cx", "0")), float(c.get("cy", "0"))) for c in elements(figure, "circle"))
    wanted = sorted(
        (x0 + per_unit * one.quantity, y0 - 0.9 + per_euro * one.total)
        for one in found.break_evens
        if one.line is found.deciding
    )
    assert len(drawn) == 2
    for (x, y), (a, b) in zip(drawn, wanted, strict=True):
        assert x == pytest.approx(a, abs=0.05)
        assert y == pytest.approx(b, abs=0.05)
    assert [one.text for one in texts(figure, "crossing")] == ["67.1", "92.2"]


def test_tendered_and_p50_and_p80_are_marked(figure: Figure) -> None:
    _, found = compared_bids()
    x0, per_unit = scale(figure, "x")
    assert found.deciding is not None
    spread = found.deciding.spread
    wanted = {"tendered": spread.tendered, "P50": spread.at(0.5), "P80": spread.at(0.8)}
    shown = {one.text: float(one.get("x", "0")) for one in texts(figure, "mark")}
    for name, quantity in wanted.items():
        assert shown[name] == pytest.approx(x0 + per_unit * float(quantity), abs=0.05)


def test_bids_are_told_apart_without_colour_and_named(figure: Figure) -> None:
    dashes = [dash for _, dash in lines(figure)]
    assert len(set(dashes)) == 3
    assert {one.text for one in texts(figure, "bid")} == {"Ostrey Dock", "Wrackness Yard", "Saltholm Slip"}
    heights = sorted(float(one.get("y", "0")) for one in texts(figure, "bid"))
    assert all(below - above > 2.5 for above, below in pairwise(heights))


def test_it_stays_on_its_paper(figure: Figure) -> None:
    for (x1, y1, x2, y2), _ in lines(figure):
        assert all(0 <= x <= WIDTH for x in (x1, x2))
        assert all(0 <= y <= HEIGHT for y in (y1, y2))


def test_without_a_line_that_decides_or_another_bid_there_is_none() -> None:
    _, found = compared_bids()
    assert bid_sensitivity(replace(found, deciding=None)) is None
    assert bid_sensitivity(replace(found, bids=found.bids[:1])) is None


def test_the_same_bids_give_the_same_drawing(figure: Figure) -> None:
    assert bid_sensitivity(compared_bids()[1]) == figure
