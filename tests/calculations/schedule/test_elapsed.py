from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import nbinom

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schedule.elapsed import METHOD, elapsed, elapsed_deviation, elapsed_trials


def test_by_hand() -> None:
    # Derived: ten days of five a week are two weeks; at 70 % workable, 20 days.
    assert elapsed(10.0, 5) == pytest.approx(14.0)
    assert elapsed(10.0, 5, 0.7) == pytest.approx(20.0)
    assert elapsed(10.0) == 10.0


@given(st.floats(0.05, 200.0), st.floats(0.05, 1.0), st.integers(1, 7))
def test_mean_and_spread_are_those_of_the_negative_binomial(days: float, workable: float, week: int) -> None:
    # Reference: scipy.stats.nbinom.
    mean, variance = float(nbinom.mean(days, workable)), float(nbinom.var(days, workable))
    assert elapsed(days, week, workable) == pytest.approx((days + mean) * 7 / week)
    assert elapsed_deviation(days, week, workable) == pytest.approx(np.sqrt(variance) * 7 / week)


@pytest.mark.parametrize(("days", "workable", "week"), [(10.0, 0.7, 7), (2.5, 0.4, 5), (40.0, 0.95, 6)])
def test_draws_have_the_exact_mean_and_spread(days: float, workable: float, week: int) -> None:
    trials = 200_000
    drawn = elapsed_trials(np.full(trials, days), week, workable, np.random.default_rng(3))
    deviation = elapsed_deviation(days, week, workable)
    assert drawn.mean() == pytest.approx(elapsed(days, week, workable), abs=5 * deviation / np.sqrt(trials))
    assert drawn.std() == pytest.approx(deviation, rel=0.02)
    # Reference: scipy.stats.nbinom, share of the trials without a day lost.
    none = float(nbinom.pmf(0, days, workable))
    assert np.mean(drawn <= days * 7 / week + 1e-9) == pytest.approx(none, abs=5 * np.sqrt(none / trials) + 1e-9)


@given(st.lists(st.floats(0.0, 100.0), min_size=1, max_size=20), st.floats(0.05, 1.0), st.integers(0, 99))
def test_weather_only_lengthens_and_the_same_draws_come_again(days: list[float], workable: float, seed: int) -> None:
    worked = np.array(days)
    drawn = elapsed_trials(worked, 5, workable, np.random.default_rng(seed))
    assert np.array_equal(worked, np.array(days))
    assert np.array_equal(drawn, elapsed_trials(worked, 5, workable, np.random.default_rng(seed)))
    lost = drawn * 5 / 7 - worked
    assert lost == pytest.approx(np.round(lost), abs=1e-6)
    assert (lost > -1e-6).all()
    assert not drawn[worked == 0.0].any()


def test_without_weather_nothing_is_drawn() -> None:
    generator = np.random.default_rng(1)
    state = generator.bit_generator.state
    assert elapsed_trials(np.array([1.0, 2.5]), 5, 1.0, generator) == pytest.approx([1.4, 3.5])
    assert generator.bit_generator.state == state
    assert elapsed_trials(np.empty(0), 5, 0.5, generator).size == 0


def test_what_is_no_time_is_refused() -> None:
    for days in (-1.0, float("nan"), float("inf")):
        with pytest.raises(OutOfRange, match="working days"):
            elapsed(days)
    for week in (0.0, 7.5):
        with pytest.raises(OutOfRange, match="week"):
            elapsed(1.0, week)
    for workable in (0.0, 1.01, float("nan")):
        with pytest.raises(OutOfRange, match="workable"):
            elapsed_trials(np.ones(2), 5, workable, np.random.default_rng(1))
    with pytest.raises(OutOfRange, match="more than"):
        elapsed(10.0, 5, 1e-9)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(working=864000.0, week=5, workable=0.7)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["elapsed"] == pytest.approx(20 * 86400)
    assert METHOD.run(working=864000.0)["deviation"] == 0.0
