from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from tenderwright.calculations.cost.totals import contributions, percentiles, share_at_or_below
from tenderwright.calculations.method import OutOfRange

TOTALS = arrays(np.float64, st.integers(1, 60), elements=st.floats(-1e6, 1e6))


def test_percentiles_of_ten_trials() -> None:
    total = np.arange(10.0, 0.0, -1.0)
    assert percentiles(total, (0.0, 0.1, 0.5, 0.8, 1.0)).tolist() == [1.0, 1.0, 5.0, 8.0, 10.0]
    assert share_at_or_below(8.0, total) == 0.8
    assert share_at_or_below(7.99, total) == 0.7


@given(TOTALS, st.floats(0.001, 1.0))
def test_a_percentile_is_the_least_trial_that_carries_its_share(total: np.ndarray, level: float) -> None:
    (point,) = percentiles(total, [level])
    assert point in total
    assert share_at_or_below(point, total) >= level - 1e-9
    below = np.count_nonzero(total < point) / total.size
    assert below < level + 1e-9


@given(arrays(np.float64, st.tuples(st.integers(1, 6), st.integers(2, 50)), elements=st.floats(-1e3, 1e3)))
def test_contributions_add_up_to_one(parts: np.ndarray) -> None:
    total = parts.sum(axis=0)
    shares = contributions(parts, total)
    if total.std() > 1e-6:
        assert shares.sum() == pytest.approx(1.0, abs=1e-6)
    assert shares.shape == (parts.shape[0],)


def test_contributions_of_independent_parts_are_their_variances() -> None:
    # Derived: two parts whose values are crossed evenly have no covariance; variances 1 and 9 give 10 and 90 %.
    parts = np.array([[-1.0, -1.0, 1.0, 1.0], [-3.0, 3.0, -3.0, 3.0]])
    assert contributions(parts, parts.sum(axis=0)) == pytest.approx([0.1, 0.9])
    assert contributions(iter(parts), parts.sum(axis=0)) == pytest.approx([0.1, 0.9])


def test_a_part_that_offsets_another_counts_below_nothing() -> None:
    parts = np.array([[0.0, 2.0, 4.0], [0.0, -1.0, -2.0]])
    assert contributions(parts, parts.sum(axis=0)) == pytest.approx([2.0, -1.0])


def test_a_total_without_spread_has_no_driver() -> None:
    parts = np.ones((2, 5))
    assert contributions(parts, parts.sum(axis=0)).tolist() == [0.0, 0.0]


def test_what_is_no_total_is_refused() -> None:
    for total in (np.array([]), np.ones((2, 2))):
        with pytest.raises(OutOfRange, match="trials"):
            percentiles(total, [0.5])
        with pytest.raises(OutOfRange, match="trials"):
            share_at_or_below(1.0, total)
    with pytest.raises(OutOfRange, match="percentile"):
        percentiles(np.ones(3), [1.5])
    with pytest.raises(OutOfRange, match="as many trials"):
        contributions(np.ones((2, 3)), np.ones(4))
