from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.drawn_rate import METHOD, neighbours_of

BATTING = [400, 378, 356, 333, 311, 311, 289, 267, 244, 244, 222, 222, 222, 222, 222, 200, 178, 156]
DRAWN = [294, 289, 285, 280, 275, 275, 270, 266, 261, 261, 256, 256, 256, 256, 256, 251, 247, 242]


def test_the_published_example_of_eighteen_means() -> None:
    """B. Efron and C. Morris, Stein's Paradox in Statistics, Scientific American 236 (1977), table (from memory)."""
    own = np.array(BATTING) / 1000.0
    mean = own.mean()
    deviation = np.full(18, math.sqrt(mean * (1.0 - mean) / 45.0))
    found = neighbours_of(own, deviation)
    rate, _, share = found.drawn(own, deviation)
    assert found.rate == pytest.approx(0.265, abs=5e-4)
    assert 1.0 - share == pytest.approx(0.212, abs=2e-3)
    assert np.rint(1000.0 * rate) == pytest.approx(DRAWN, abs=1.0)


@given(st.lists(st.tuples(st.floats(-1, 1), st.floats(0.01, 1)), min_size=4, max_size=30))
def test_the_spread_makes_the_scatter_what_is_expected_of_it(places: list[tuple[float, float]]) -> None:
    """DerSimonian and Laird: with weights 1/s², the scatter expected at the spread found is the scatter there is."""
    own, deviation = (np.array(column) for column in zip(*places, strict=True))
    found = neighbours_of(own, deviation)
    weight = deviation**-2.0
    scatter = float((weight * (own - np.average(own, weights=weight)) ** 2).sum())

    def expected(beyond: float) -> float:
        return (own.size - 1) + beyond * float(weight.sum() - (weight**2).sum() / weight.sum())

    if expected(0.0) < scatter * (1 - 1e-9):
        root = brentq(lambda beyond: expected(beyond) - scatter, 0.0, 1e6)
        assert found.spread**2 == pytest.approx(root, rel=1e-6, abs=1e-9)
    elif expected(0.0) > scatter:
        assert found.spread == 0.0


@given(st.lists(st.tuples(st.floats(-1, 1), st.floats(0.01, 1)), min_size=1, max_size=20))
def test_a_rate_drawn_lies_between_its_own_and_the_mean(places: list[tuple[float, float]]) -> None:
    own, deviation = (np.array(column) for column in zip(*places, strict=True))
    found = neighbours_of(own, deviation)
    rate, _, share = found.drawn(own, deviation)
    assert ((share >= 0.0) & (share < 1.0)).all()
    low, high = np.minimum(own, found.rate), np.maximum(own, found.rate)
    assert ((rate >= low - 1e-12) & (rate <= high + 1e-12)).all()
    if own.size < 4:
        assert rate == pytest.approx(own)


def test_the_thinner_the_evidence_the_more_it_is_drawn() -> None:
    own = np.array([0.0, 1.0, 2.0, 3.0, 4.0])
    _, _, share = neighbours_of(own, np.array([0.1, 0.2, 0.4, 0.8, 1.6])).drawn(
        own, np.array([0.1, 0.2, 0.4, 0.8, 1.6])
    )
    assert (np.diff(share) > 0.0).all()


def test_a_place_without_a_rate_takes_the_mean_and_the_whole_spread() -> None:
    own, deviation = np.array([1.0, 2.0, 3.0, 4.0, math.nan]), np.array([0.1, 0.1, 0.1, 0.1, math.nan])
    found = neighbours_of(own, deviation)
    rate, total, share = found.drawn(own, deviation, 0.3)
    assert rate[4] == found.rate == pytest.approx(2.5)
    assert total[4] == pytest.approx(math.hypot(found.spread, found.uncertainty, 0.3))
    assert share[4] == 1.0
    assert total[4] > total[:4].max()


def test_of_fewer_than_four_rates_another_place_may_differ_by_as_much_as_their_mean() -> None:
    own, deviation = np.array([0.04, 0.06, math.nan]), np.array([0.01, 0.01, math.nan])
    found = neighbours_of(own, deviation)
    _, total, _ = found.drawn(own, deviation)
    assert total[2] == pytest.approx(math.hypot(0.05, found.uncertainty))


def test_draws_of_known_spread_are_covered_as_often_as_is_said() -> None:
    """Monte Carlo: true rates within z times the uncertainty nine times of ten, one-sided."""
    rng = np.random.default_rng(3)
    within = []
    for _ in range(400):
        true = rng.normal(0.05, 0.02, 25)
        deviation = rng.uniform(0.01, 0.04, 25)
        own = rng.normal(true, deviation)
        rate, total, _ = neighbours_of(own, deviation).drawn(own, deviation)
        within.append(true <= rate + 1.2816 * total)
    assert np.mean(within) == pytest.approx(0.90, abs=0.015)


def test_method_gives_its_outputs_and_refuses_rates_without_an_uncertainty() -> None:
    found = METHOD.run(places=[{"rate": 1.0, "uncertainty": 0.5}, {}])
    assert found["places"][1]["rate"] == found["mean"] == 1.0
    with pytest.raises(OutOfRange, match="uncertainty"):
        METHOD.run(places=[{"rate": 1.0}])
    with pytest.raises(OutOfRange, match="more than nothing"):
        METHOD.run(places=[{"rate": 1.0, "uncertainty": 0.0}])
    with pytest.raises(OutOfRange, match="of its own"):
        METHOD.run(places=[{}])


def test_a_rate_beyond_all_others_in_sureness_is_refused() -> None:
    own = np.array([0.02e-3, 0.03e-3, 0.05e-3, 0.11e-3])
    with pytest.raises(OutOfRange, match="surer than the others"):
        neighbours_of(own, np.array([0.02e-3, 0.01e-3, 0.02e-3, 3e-14]))
