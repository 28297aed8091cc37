from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schedule.critical_path import critical_path
from tenderwright.calculations.schedule.trials import Floats, criticality, finish_times

from .networks import HOUSE, Links, random_networks


def spread(durations: list[float], seed: int, trials: int = 20) -> Floats:
    """Stretch durations at random, some trials in whole numbers so that paths tie."""
    drawn = np.array(durations)[:, None] * np.random.default_rng(seed).uniform(0.5, 2.0, (len(durations), trials))
    drawn[:, ::2] = np.round(drawn[:, ::2])
    return drawn


@given(random_networks(), st.integers(0, 1000))
def test_each_trial_is_a_critical_path(network: tuple[list[float], Links], seed: int) -> None:
    durations, links = network
    trials = spread(durations, seed)
    kept = trials.copy()
    paths = [critical_path(column.tolist(), links) for column in trials.T]
    assert np.array_equal(finish_times(trials, links), np.array([path.early_finish for path in paths]).T)
    assert criticality(trials, links, finish_times(trials, links)) == pytest.approx(
        np.mean([path.critical for path in paths], axis=0)
    )
    assert np.array_equal(trials, kept)


def test_one_trial_of_a_published_network() -> None:
    # Hillier and Lieberman, Introduction to Operations Research, Reliable Construction Co. (from memory): 44 weeks.
    names, durations, links = HOUSE
    trials = np.array(durations)[:, None]
    assert finish_times(trials, links).max() == 44
    assert (
        "".join(
            name
            for name, share in zip(names, criticality(trials, links, finish_times(trials, links)), strict=True)
            if share
        )
        == "ABCEFJLN"
    )


def test_two_like_branches_are_critical_half_of_the_time() -> None:
    # Derived: by symmetry; standard error of the share below 0.002.
    drawn = np.random.default_rng(7).uniform(1.0, 3.0, (3, 100_000))
    links = [(0, 2), (1, 2)]
    shares = criticality(drawn, links, finish_times(drawn, links))
    assert shares == pytest.approx([0.5, 0.5, 1.0], abs=0.01)
    # The mean of the greater of two uniform durations from 1 to 3 is 1 + 2·2/3.
    assert finish_times(drawn[:2], []).max(axis=0).mean() == pytest.approx(7 / 3, abs=0.01)


def test_nothing_and_no_trials() -> None:
    assert criticality(np.empty((0, 5)), [], np.empty((0, 5))).size == 0
    assert finish_times(np.empty((2, 0)), [(0, 1)]).shape == (2, 0)
    assert criticality(np.empty((2, 0)), [(0, 1)], np.empty((2, 0))).tolist() == [0.0, 0.0]


def test_what_is_no_network_is_refused() -> None:
    for wrong in (-1.0, np.nan, np.inf):
        with pytest.raises(OutOfRange, match="duration"):
            finish_times(np.array([[1.0, wrong]]), [])
    with pytest.raises(OutOfRange, match="rows"):
        finish_times(np.ones(3), [])
    with pytest.raises(OutOfRange, match="circle: 0, 1"):
        criticality(np.ones((2, 3)), [(0, 1), (1, 0)], np.ones((2, 3)))
    with pytest.raises(OutOfRange, match="finish of each"):
        criticality(np.ones((2, 3)), [], np.ones((2, 2)))
