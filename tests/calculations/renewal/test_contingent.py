from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import betabinom

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.contingent import METHOD, Gauged, contingent_renewal


def gauged(sampled: list[int], bad: list[int], unsampled: list[int], area: float = 0.6) -> Gauged:
    return Gauged(np.array(sampled), np.array(bad), np.array(unsampled), np.full(len(sampled), area))


def test_one_strake_alone_is_the_beta_binomial_distribution() -> None:
    # scipy.stats.betabinom as the reference: prior share (5 + 1/2)/(20 + 1), weight 4.
    found = contingent_renewal(gauged([20], [5], [40]), weight=4.0, draws=40_000)
    share = 5.5 / 21.0
    exact = betabinom(40, 5 + 4 * share, 15 + 4 * (1 - share))
    assert found.plates == pytest.approx(exact.mean(), abs=4 * exact.std() / 200)
    assert found.plates_p50 == pytest.approx(exact.ppf(0.5), abs=1)
    assert found.plates_p80 == pytest.approx(exact.ppf(0.8), abs=1)
    assert found.draws.std() == pytest.approx(exact.std(), rel=0.03)
    assert found.area == pytest.approx(0.6 * found.plates)


def test_a_strake_with_no_readings_is_judged_by_the_others() -> None:
    found = contingent_renewal(gauged([200, 200, 0], [20, 20, 0], [10, 10, 100]))
    assert found.by_strake[2] == pytest.approx(10.0, abs=1.0)


def test_sound_readings_still_leave_a_little_to_expect() -> None:
    found = contingent_renewal(gauged([30, 30], [0, 0], [60, 60]))
    assert 0.0 < found.plates < 5.0
    assert found.plates_p50 <= found.plates_p80


def test_same_seed_same_result() -> None:
    strakes = gauged([10, 12], [1, 4], [30, 20])
    one, two, other = (contingent_renewal(strakes, seed=seed) for seed in (7, 7, 8))
    assert (one.draws == two.draws).all()
    assert (one.draws != other.draws).any()


@settings(max_examples=30)
@given(st.lists(st.tuples(st.integers(0, 30), st.integers(0, 30), st.integers(0, 50)), min_size=1, max_size=6))
def test_no_more_bad_plates_than_there_are(rows: list[tuple[int, int, int]]) -> None:
    sampled = [n + 1 for n, _, _ in rows]
    bad = [min(k, n) for (_, k, _), n in zip(rows, sampled, strict=True)]
    unsampled = [m for _, _, m in rows]
    found = contingent_renewal(gauged(sampled, bad, unsampled), draws=200)
    assert 0 <= found.plates_p50 <= found.plates_p80 <= sum(unsampled)
    assert found.by_strake.sum() == pytest.approx(found.plates)
    assert found.area_p80 == pytest.approx(0.6 * found.plates_p80)


def test_more_plates_left_mean_more_to_expect() -> None:
    few = contingent_renewal(gauged([20, 20], [3, 5], [10, 10]))
    many = contingent_renewal(gauged([20, 20], [3, 5], [40, 40]))
    assert many.plates == pytest.approx(4 * few.plates, rel=0.1)


def test_refuses_what_says_nothing() -> None:
    with pytest.raises(OutOfRange, match="no plate gauged"):
        gauged([0], [0], [10])
    with pytest.raises(OutOfRange, match="more bad"):
        gauged([2], [3], [10])
    with pytest.raises(OutOfRange, match="less than nothing"):
        gauged([2], [1], [-1])
    with pytest.raises(OutOfRange, match=r"draws may be from 100 to"):
        METHOD.run(strakes=[{"sampled": 3, "bad": 1, "unsampled": 5, "area": 2.0}], draws=10**9)
    with pytest.raises(OutOfRange, match="weight"):
        contingent_renewal(gauged([2], [1], [1]), weight=0.0)
    with pytest.raises(OutOfRange, match="draws"):
        contingent_renewal(gauged([2], [1], [1]), draws=5)


def test_method_gives_its_outputs_and_says_them_in_words() -> None:
    outputs = METHOD.run(strakes=[{"sampled": 20, "bad": 5, "unsampled": 40, "area": 0.6}])
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert "5 of 20 plates gauged" in outputs["words"]
    assert f"{outputs['plates']:.1f} more" in outputs["words"]
