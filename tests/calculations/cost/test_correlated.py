from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from tenderwright.calculations.cost.correlated import CorrelatedDraws
from tenderwright.calculations.method import OutOfRange

TRIALS = 40_000
NEAR = 5.0 / math.sqrt(TRIALS)
"""Five standard errors of a correlation near nothing, which is more than that of any other."""

CORRELATIONS = st.tuples(st.floats(0.0, 1.0), st.floats(0.0, 1.0)).map(lambda pair: (max(pair), min(pair)))

KEPT = [-1.1589102949769912, -0.6261024296976754, -0.0962087165443073]
"""First scores of a row, kept from an earlier run."""


def rank_correlation(one: np.ndarray, other: np.ndarray) -> float:
    return float(stats.spearmanr(one, other).statistic)


@pytest.mark.parametrize(("within", "across"), [(0.0, 0.0), (0.5, 0.2), (0.8, 0.8), (1.0, 0.0), (1.0, 1.0)])
def test_each_row_is_uniform(within: float, across: float) -> None:
    # scipy.stats: Kolmogorov-Smirnov against the uniform distribution; one seed, so the result is always the same.
    row = CorrelatedDraws(TRIALS, 3, within, across).uniforms("wash", 1)
    assert stats.kstest(row, "uniform").pvalue > 0.001
    assert row.min() > 0.0
    assert row.max() < 1.0


@pytest.mark.parametrize(("within", "across"), [(0.0, 0.0), (0.5, 0.2), (0.7, 0.0), (0.8, 0.8), (0.95, 0.4)])
def test_rank_correlation_is_that_of_the_gaussian_copula(within: float, across: float) -> None:
    # Known of the Gaussian copula: rank correlation is 6/pi asin(rho/2).
    draws = CorrelatedDraws(TRIALS, 5, within, across)
    wash, blast, valve = draws.uniforms("wash", 1), draws.uniforms("blast", 1), draws.uniforms("valve", 2)
    assert rank_correlation(wash, blast) == pytest.approx(6 / math.pi * math.asin(within / 2), abs=NEAR)
    assert rank_correlation(wash, valve) == pytest.approx(6 / math.pi * math.asin(across / 2), abs=NEAR)


@settings(max_examples=25)
@given(CORRELATIONS, st.integers(0, 2**32))
def test_scores_have_the_correlation_asked_for(pair: tuple[float, float], seed: int) -> None:
    within, across = pair
    draws = CorrelatedDraws(TRIALS, seed, within, across)
    rows = np.stack([draws.scores("a", "hull"), draws.scores("b", "hull"), draws.scores("c", "valves")])
    expected = [[1.0, within, across], [within, 1.0, across], [across, across, 1.0]]
    assert np.corrcoef(rows) == pytest.approx(np.array(expected), abs=1.5 * NEAR)
    assert rows.mean(axis=1) == pytest.approx(np.zeros(3), abs=1.5 * NEAR)
    assert rows.std(axis=1) == pytest.approx(np.ones(3), abs=1.5 * NEAR)


@given(st.permutations(["wash", "blast", "valve", "anode"]), st.integers(0, 2**64))
def test_a_row_does_not_depend_on_the_others_or_their_order(names: list[str], seed: int) -> None:
    groups = {"wash": 1, "blast": 1, "valve": 2, "anode": 3}
    draws = CorrelatedDraws(200, seed, 0.6, 0.3)
    together = {name: draws.scores(name, groups[name]) for name in names}
    for name in names:
        alone = CorrelatedDraws(200, seed, 0.6, 0.3).scores(name, groups[name])
        assert (alone == together[name]).all()


@given(CORRELATIONS, st.integers(100, 400))
def test_fewer_trials_are_the_first_of_more(pair: tuple[float, float], trials: int) -> None:
    more = CorrelatedDraws(400, 1, *pair)
    assert (replace(more, trials=trials, _kept={}).scores("wash", 1) == more.scores("wash", 1)[:trials]).all()


def test_draws_stay_the_same_from_version_to_version() -> None:
    # From an earlier run: the figures of a package must not move when its names, seed and correlations do not.
    assert CorrelatedDraws(100, 1, 0.5, 0.25).scores("420.a", 400)[:3] == pytest.approx(KEPT, abs=1e-12)


def test_another_seed_or_name_gives_other_draws() -> None:
    draws = CorrelatedDraws(100, 1, 0.5, 0.25)
    assert not np.allclose(draws.scores("a", 1), draws.scores("b", 1))
    assert not np.allclose(draws.scores("a", 1), draws.scores("a", 2))
    assert not np.allclose(draws.scores("a", 1), CorrelatedDraws(100, 2, 0.5, 0.25).scores("a", 1))


def test_full_correlation_gives_one_row_to_all() -> None:
    draws = CorrelatedDraws(100, 1, 1.0, 1.0)
    assert (draws.scores("a", 1) == draws.scores("b", 2)).all()
    within = CorrelatedDraws(100, 1, 1.0, 0.0)
    assert (within.scores("a", 1) == within.scores("b", 1)).all()
    assert not np.allclose(within.scores("a", 1), within.scores("a", 2))


def test_shared_factors_are_not_changed_by_what_is_done_with_a_row() -> None:
    draws = CorrelatedDraws(100, 1, 1.0, 1.0)
    row = draws.scores("a", 1)
    kept = row.copy()
    row += 1.0
    assert (draws.scores("a", 1) == kept).all()


@pytest.mark.parametrize(("within", "across"), [(0.2, 0.3), (1.1, 0.0), (0.5, -0.1), (float("nan"), 0.0)])
def test_correlations_that_cannot_be_are_refused(within: float, across: float) -> None:
    with pytest.raises(OutOfRange, match="correlation"):
        CorrelatedDraws(100, 1, within, across)


@pytest.mark.parametrize("trials", [99, 200_001, 10**15])
def test_too_few_trials_and_too_many_are_refused(trials: int) -> None:
    with pytest.raises(OutOfRange, match="from 100 to 200,000"):
        CorrelatedDraws(trials, 1, 0.5, 0.2)
