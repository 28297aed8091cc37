"""The cradle: cars to scale with their loads, the line load with its limit, and whether she fits."""

from __future__ import annotations

from itertools import combinations

import pytest

from tenderwright.calculations.cradle.cars import Cradle, judge
from tenderwright.calculations.cradle.train import Car, arrange
from tenderwright.calculations.ship.cradle import cradles
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.steps.outcome import Each, NotAsked
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.cradle_plan import cradle
from tenderwright.documents.edition import Figure
from tenderwright.model.facility import Facility
from tests.outcomes import result_of
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, paths, root, scale, texts

FITS, FAILS = "sallow-haven-shiplift", "tarnmouth-slipway"


def facility(name: str) -> Facility:
    return next(one for one in marram()[0].facilities if one.facility == name)


def drawn_with(fit: Cradle, name: str = FITS) -> Figure:
    return cradle(marram()[0], facility(name), altered({cradles: Each({name: fit})}))


def fit_of(car: Car, number: int, lcg: float = 22.9, unsupported: float | None = 0.6) -> Cradle:
    train = arrange(757_000.0, lcg, 1.0, 42.6, car, number=number)
    return Cradle(train, judge(train, car, unsupported), number, number)


@pytest.mark.parametrize("name", [FITS, FAILS])
def test_every_car_carries_its_load_in_tonnes(name: str) -> None:
    fit = result_of(marram()[1], cradles)[name]
    wanted = [f"{car.load / 1000:.1f} t" for car in fit.train.cars]
    assert of_kind(figure(f"cradle-{name}"), "car-load") == wanted
    assert of_kind(figure(f"cradle-{name}"), "peak") == [f"{car.peak / 1000:.1f}" for car in fit.train.cars]


def test_cars_and_gaps_are_drawn_to_scale() -> None:
    """Cars of 6.0 m with gaps of 0.5 m, as the facility gives them."""
    drawn = figure(f"cradle-{FITS}")
    boxes = [box for box in paths(drawn, stroke_width="0.35", fill="#ffffff") if len(box) == 4]
    assert len(boxes) == 7
    for box in boxes:
        assert max(x for x, _ in box) - min(x for x, _ in box) == pytest.approx(6000 / scale(drawn), abs=0.02)
    gap = min(x for x, _ in boxes[1]) - max(x for x, _ in boxes[0])
    assert gap == pytest.approx(500 / scale(drawn), abs=0.02)


def test_blocks_stand_as_high_as_given() -> None:
    drawn = figure(f"cradle-{FITS}")
    car = next(box for box in paths(drawn, stroke_width="0.35", fill="#ffffff") if len(box) == 4)
    keel = max(y for _, y in paths(drawn, fill="#bbbbbb")[0])
    assert min(y for _, y in car) - keel == pytest.approx(1600 / scale(drawn), abs=0.02)


def test_line_load_and_limit_share_one_scale() -> None:
    drawn, load = figure(f"cradle-{FAILS}"), result_of(marram()[1], cradles)[FAILS].train.load
    assert load is not None
    line = next(p for p in paths(drawn, stroke_width="0.5", stroke="#0072b2"))
    base, aft, forward = line[0][1], line[1][1], line[2][1]
    assert (base - forward) / (base - aft) == pytest.approx(load.load_forward / load.load_aft, abs=0.005)
    limit = next(text for text in texts(drawn) if text.kind == "limit")
    assert limit.content == "limit 20.0"
    height = base - (limit.baseline - 0.34 * limit.size)
    assert height / (base - aft) == pytest.approx(20_000 / load.load_aft, abs=0.005)
    assert of_kind(drawn, "ordinate") == ["15.3", "21.1"]


def test_start_and_end_are_named_by_frames() -> None:
    said = of_kind(figure(f"cradle-{FITS}"), "dimension")
    assert said == [
        "7 cars coupled, Fr -2 + 300 mm to Fr 76 + 500 mm: 45.00 m",
        "straight keel, Fr 2 to Fr 74: 41.60 m, no end unsupported",
    ]


def test_a_dock_that_fits_says_so_and_one_that_does_not_says_why() -> None:
    assert of_kind(figure(f"cradle-{FITS}"), "verdict") == ["Calculated to fit: limits of cars and keel"]
    assert (
        "Calculated to fit, subject to certificate and dockmaster: every limit is met"
        in figure(f"cradle-{FITS}").caption
    )
    failing = figure(f"cradle-{FAILS}")
    assert of_kind(failing, "verdict") == ["Calculated not to fit: limits of cars and keel"]
    assert "cars available 7 against 6" in failing.caption
    assert "line load 22.5 t/m against 20.0 t/m" in failing.caption
    assert of_kind(failing, "limits").count("exceeded, 117 %") == 2


def test_cars_that_the_yard_lacks_are_dashed() -> None:
    dashed = paths(figure(f"cradle-{FAILS}"), stroke_width="0.35", stroke_dasharray="1.4 0.7", fill="#ffffff")
    assert len(dashed) == 1
    assert "cars drawn dashed are not at the yard" in figure(f"cradle-{FAILS}").caption


def test_unsupported_ends_are_dimensioned() -> None:
    car = Car(length=6.0, gap=0.5, capacity=160e3, line_limit=32e3, available=8)
    fit = fit_of(car, 5)
    drawn = drawn_with(fit)
    assert fit.train.unsupported_aft == pytest.approx(4.8)
    assert of_kind(drawn, "unsupported") == ["4.80 m unsupported", "4.80 m unsupported"]
    red = [node for node in root(drawn) if node.get("stroke") == pen.RED and "x1" in node.attrib]
    labels = [text.baseline - 0.34 * text.size for text in texts(drawn) if text.kind == "unsupported"]
    assert [float(node.attrib["y1"]) for node in red if float(node.attrib["y1"]) < max(labels) + 1] == pytest.approx(
        labels, abs=0.02
    )
    assert _overlaps(drawn) == []


def test_many_short_cars_leave_room_for_their_figures() -> None:
    car = Car(length=2.0, gap=0.2, capacity=60e3, line_limit=32e3, available=20)
    drawn = drawn_with(fit_of(car, 19))
    assert len(of_kind(drawn, "car-load")) == 19
    assert _overlaps(drawn) == []


def test_no_load_is_drawn_where_she_cannot_stand() -> None:
    fit = fit_of(Car(length=6.0, gap=0.5, capacity=160e3, available=8), 1, lcg=35.0)
    assert fit.train.load is None
    drawn = drawn_with(fit)
    assert of_kind(drawn, "car-load") == of_kind(drawn, "peak") == []
    assert "cannot stand" in drawn.svg
    assert "not to fit" in drawn.caption


def test_what_is_not_known_is_said() -> None:
    fit = fit_of(Car(length=6.0, gap=0.5, available=8, coupled_limit=8), 7)
    drawn = drawn_with(fit)
    assert fit.verdict.met is None
    assert "It cannot be said whether she fits" in drawn.caption
    assert "not known" in of_kind(drawn, "limits")


def test_there_is_no_drawing_without_cars_or_a_train() -> None:
    package, calculated = marram()
    assert cradle(package, facility(FITS), altered({cradles: Each({FITS: LACKING})})) == LACKING
    assert isinstance(cradle(package, replace(facility(FITS), cars=None), calculated), NotAsked)
    assert cradle(package, facility(FITS), altered({hull_outline: LACKING})) == LACKING


def _overlaps(drawn: Figure) -> list[tuple[str, str]]:
    return [(a.content, b.content) for a, b in combinations(texts(drawn), 2) if a.overlaps(b)]
