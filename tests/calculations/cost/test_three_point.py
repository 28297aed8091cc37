from __future__ import annotations

from typing import get_args

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from tenderwright.calculations.cost.three_point import METHOD, Shape, ThreePoint
from tenderwright.calculations.method import OutOfRange

SHAPES = st.sampled_from(get_args(Shape))
LEVELS = np.array([0.0, 1e-9, 1e-4, 0.01, 0.1, 0.25, 0.5, 0.75, 0.8, 0.9, 0.99, 0.9999, 1.0])
LIKELIES = [0.0, 0.02, 0.3, 0.5, 0.77, 1.0]


@st.composite
def estimates(draw: st.DrawFn) -> ThreePoint:
    low, likely, high = sorted(draw(st.lists(st.floats(-1e6, 1e6), min_size=3, max_size=3)))
    return ThreePoint(low, likely, high, draw(SHAPES))


def reference(shape: Shape, likely: float, low: float = 200.0, span: float = 50.0):  # type: ignore[no-untyped-def]
    if shape == "pert":
        return stats.beta(1 + 4 * likely, 5 - 4 * likely, low, span)
    return stats.triang(likely, low, span)


@pytest.mark.parametrize("likely", LIKELIES)
@pytest.mark.parametrize("shape", get_args(Shape))
def test_against_scipy(shape: Shape, likely: float) -> None:
    # scipy.stats: triang, and beta with the shapes of PERT.
    ours, theirs = ThreePoint(200.0, 200.0 + 50.0 * likely, 250.0, shape), reference(shape, likely)
    assert ours.mean == pytest.approx(theirs.mean())
    assert ours.variance == pytest.approx(theirs.var())
    assert ours.quantile(LEVELS) == pytest.approx(theirs.ppf(LEVELS), abs=1e-5 * 50.0)


@pytest.mark.parametrize("likely", LIKELIES)
@pytest.mark.parametrize("shape", get_args(Shape))
def test_the_table_is_fine_everywhere(shape: Shape, likely: float) -> None:
    # scipy.stats, at probabilities between those of the table.
    scores = np.linspace(-6.0, 6.0, 10_007)
    values = ThreePoint(0.0, likely, 1.0, shape).at_scores(scores)
    exact = reference(shape, likely, 0.0, 1.0).ppf(stats.norm.cdf(scores))
    assert np.abs(values - exact).max() < 1e-5


def test_published_identities() -> None:
    # PERT: mean (a + 4m + b)/6, deviation (b - a)/6; triangular: variance (a² + m² + b² - am - ab - mb)/18.
    pert, triangular = ThreePoint(2.0, 3.0, 10.0), ThreePoint(2.0, 3.0, 10.0, "triangular")
    assert pert.mean == pytest.approx(4.0)
    assert pert.textbook_deviation == pytest.approx(8.0 / 6.0)
    assert pert.variance == pytest.approx(2.0 * 6.0 / 7.0)
    assert triangular.mean == pytest.approx(5.0)
    assert triangular.variance == pytest.approx((4 + 9 + 100 - 6 - 20 - 30) / 18.0)


def test_rule_of_thumb_is_less_than_the_deviation_of_a_symmetric_estimate() -> None:
    # Derived: at m midway the deviation of the beta distribution is (b - a)/(2 sqrt 7), 13 % above (b - a)/6.
    estimate = ThreePoint(0.0, 3.0, 6.0)
    assert estimate.deviation == pytest.approx(6.0 / (2.0 * 7.0**0.5))
    assert estimate.deviation / estimate.textbook_deviation == pytest.approx(3.0 / 7.0**0.5)


@given(estimates())
def test_values_rise_with_probability_and_stay_between_low_and_high(estimate: ThreePoint) -> None:
    values = estimate.quantile(LEVELS)
    slack = 1e-9 * max(1.0, abs(estimate.low), abs(estimate.high))
    assert (np.diff(values) >= -slack).all()
    assert values[0] == pytest.approx(estimate.low, abs=slack)
    assert values[-1] == pytest.approx(estimate.high, abs=slack)
    assert estimate.low - slack <= estimate.mean <= estimate.high + slack
    assert estimate.deviation <= 0.5 * (estimate.high - estimate.low) + slack


@given(estimates())
def test_the_mirror_image_has_the_mirrored_quantiles(estimate: ThreePoint) -> None:
    mirrored = ThreePoint(-estimate.high, -estimate.likely, -estimate.low, estimate.shape)
    slack = 1e-5 * (estimate.high - estimate.low) + 1e-9 * max(abs(estimate.low), abs(estimate.high))
    assert mirrored.quantile(1.0 - LEVELS[3:-3]) == pytest.approx(-estimate.quantile(LEVELS[3:-3]), abs=slack)
    assert mirrored.variance == pytest.approx(estimate.variance, abs=1e-9, rel=1e-6)


@given(estimates(), st.floats(0.01, 100.0), st.floats(-1e6, 1e6))
def test_scale_and_shift_carry_through(estimate: ThreePoint, scale: float, shift: float) -> None:
    low, likely, high = (scale * point + shift for point in (estimate.low, estimate.likely, estimate.high))
    moved = ThreePoint(low, likely, high, estimate.shape)
    near = 1e-6 * (1.0 + abs(shift) + scale * max(abs(estimate.low), abs(estimate.high)))
    assert moved.mean == pytest.approx(scale * estimate.mean + shift, abs=near)
    assert moved.deviation == pytest.approx(scale * estimate.deviation, abs=near)


@given(st.floats(-1e9, 1e9), SHAPES)
def test_what_is_certain_is_drawn_as_it_is(value: float, shape: Shape) -> None:
    certain = ThreePoint(value, value, value, shape)
    assert certain.mean == pytest.approx(value)
    assert certain.variance == 0.0
    assert (certain.at_scores(np.array([-9.0, -1.0, 0.0, 2.5, 9.0])) == value).all()


def test_one_probability_may_stand_alone_and_any_shape_of_array_is_kept() -> None:
    estimate = ThreePoint(0.0, 5.0, 10.0)
    assert float(estimate.quantile(0.5)) == pytest.approx(5.0)
    assert estimate.quantile(np.full((2, 3), 0.5)).shape == (2, 3)


@pytest.mark.parametrize("points", [(2.0, 1.0, 3.0), (1.0, 4.0, 3.0), (3.0, 3.0, 1.0)])
def test_points_that_do_not_rise_are_refused(points: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRange, match="must rise"):
        ThreePoint(*points)


def test_what_is_no_estimate_is_refused() -> None:
    for bad in (float("nan"), float("inf")):
        with pytest.raises(OutOfRange, match="must be numbers"):
            ThreePoint(0.0, 1.0, bad)
    with pytest.raises(OutOfRange, match="shape"):
        ThreePoint(0.0, 1.0, 2.0, "square")  # type: ignore[arg-type]
    for level in (-0.1, 1.1, float("nan")):
        with pytest.raises(OutOfRange, match="probability"):
            ThreePoint(0.0, 1.0, 2.0).quantile(level)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(**METHOD.example)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["p10"] < outputs["p50"] < outputs["mean"] < outputs["p80"] < outputs["p90"]
