"""The field of a chart: figures lie to scale, and ticks stand at round steps."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.documents.drawings.chart import Field, ticks, written

FIELD = Field(10.0, 110.0, 5.0, 55.0, (2.0, 12.0), (-1.0, 4.0))


def test_edges_lie_on_the_edges_of_the_box_and_figures_between_to_scale() -> None:
    assert FIELD.at(2.0, -1.0) == (10.0, 55.0)
    assert FIELD.at(12.0, 4.0) == (110.0, 5.0)
    assert FIELD.at(7.0, 1.5) == (60.0, 30.0)


@given(st.floats(0.001, 1e6), st.floats(0.0, 1e6), st.floats(3.0, 40.0))
def test_ticks_are_no_nearer_than_asked_and_lie_within(reach: float, low: float, apart: float) -> None:
    field = Field(0.0, 100.0, 0.0, 50.0, (low, low + reach), (0.0, 1.0))
    step = field.step_across(apart)
    places = [field.x(one) for one in ticks(*field.across, step)]
    assert all(b - a >= apart * (1 - 1e-6) for a, b in pairwise(places))
    assert all(-0.01 <= x <= 100.01 for x in places)


@pytest.mark.parametrize(
    ("figure", "step", "text"),
    [(0.25, 0.05, "0.25"), (2000.0, 500.0, "2 000"), (-1.5, 0.5, "−1.5"), (-0.0, 0.1, "0.0"), (3.0, 1.0, "3")],
)
def test_a_figure_has_the_decimals_of_its_step(figure: float, step: float, text: str) -> None:
    assert written(figure, step).replace("\N{NO-BREAK SPACE}", " ").replace("\N{THIN SPACE}", " ") == text


def test_ticks_are_drawn_alike_with_their_figures_and_those_without_one_stay_bare() -> None:
    below = FIELD.below(2.0, lambda figure: "" if figure == 4.0 else f"{figure:g}")
    assert re.findall(r">([\d.]+)</text>", below) == ["2", "6", "8", "10", "12"]
    assert below.count("<line") == 6
    assert FIELD.beside(1.0, lines=True).count("<line") == 2 * 6
