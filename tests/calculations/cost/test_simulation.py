from __future__ import annotations

from typing import get_args

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.calculations.cost.correlated import CorrelatedDraws
from tenderwright.calculations.cost.simulation import METHOD, Part, deviation_bounds, exact_mean, part_rows, simulate
from tenderwright.calculations.cost.three_point import Shape, ThreePoint
from tenderwright.calculations.cost.totals import percentiles, share_at_or_below
from tenderwright.calculations.method import OutOfRange
from tests.replacing import replace

AIRCRAFT = {
    "airframe": (17955.0, 19645.0, 21785.0),
    "propulsion": (8500.0, 10553.0, 13000.0),
    "communications": (4000.0, 4306.0, 5100.0),
    "navigation": (4100.0, 4305.0, 4650.0),
    "computer": (550.0, 600.0, 650.0),
    "software": (32300.0, 35547.0, 52500.0),
    "integration": (1950.0, 2136.0, 2600.0),
}
"""GAO-20-195G, Table 12: least, likeliest and greatest cost, thousands of US dollars."""

LIKELY = 77_092.0
TRIALS = 100_000


def aircraft(shape: Shape) -> list[Part]:
    return [Part(name, ThreePoint(*points, shape)) for name, points in AIRCRAFT.items()]


def test_sums_of_the_published_table() -> None:
    # GAO-20-195G, Table 12: the likeliest add up to about 77 million, 32 of them to 2.47 thousand million.
    parts = aircraft("triangular")
    assert sum(part.estimate.likely for part in parts) == LIKELY
    assert pytest.approx(2.47, abs=0.005) == 32 * LIKELY / 1e6
    assert sum(part.estimate.low for part in parts) == 69_355.0
    assert sum(part.estimate.high for part in parts) == 100_285.0


def test_means_and_deviations_are_exact() -> None:
    # Identities of both distributions on GAO-20-195G, Table 12 (derived); 3515.5 by the rule of thumb (h - l)/6.
    triangular, pert = aircraft("triangular"), aircraft("pert")
    assert exact_mean(triangular) == pytest.approx(82_244.0, abs=0.05)
    assert deviation_bounds(triangular)[0] == pytest.approx(4_599.6, abs=0.05)
    assert exact_mean(pert) == pytest.approx(79_668.0, abs=0.05)
    thumb = sum(part.estimate.textbook_deviation**2 for part in pert) ** 0.5
    assert thumb == pytest.approx(3_515.5, abs=0.05)


def test_independent_parts_of_the_published_table() -> None:
    # Percentiles of GAO-20-195G, Table 12, by another simulation of 400 000 trials (derived), to half a per cent.
    total = simulate(aircraft("triangular"), CorrelatedDraws(TRIALS, 1, 0.0, 0.0))
    assert percentiles(total, (0.5, 0.8)) == pytest.approx([81_600.0, 86_430.0], rel=0.005)
    assert share_at_or_below(LIKELY, total) == pytest.approx(0.125, abs=0.005)
    assert total.mean() == pytest.approx(82_244.0, abs=5 * 4_599.6 / TRIALS**0.5)
    assert total.std() == pytest.approx(4_599.6, rel=0.01)


def test_fully_correlated_parts_of_the_published_table() -> None:
    # With one uniform for all, a percentile of the sum is the sum of the percentiles (exact, derived).
    parts = aircraft("triangular")
    exact = sum(part.estimate.quantile(np.array([0.5, 0.8])) for part in parts)
    assert exact == pytest.approx([81_421.7, 88_354.8], abs=0.5)
    total = simulate(parts, CorrelatedDraws(TRIALS, 1, 1.0, 1.0))
    assert percentiles(total, (0.5, 0.8)) == pytest.approx(exact, rel=0.005)
    assert total.std() == pytest.approx(deviation_bounds(parts)[1], rel=0.03)


def test_correlation_widens_the_total_and_leaves_its_mean() -> None:
    parts = aircraft("pert")
    totals = [simulate(parts, CorrelatedDraws(TRIALS, 1, within, 0.0)) for within in (0.0, 0.3, 0.6, 0.9)]
    deviations = [total.std() for total in totals]
    assert deviations == sorted(deviations)
    least, most = deviation_bounds(parts)
    assert deviations[0] == pytest.approx(least, rel=0.01)
    assert deviations[-1] < most * 1.01
    for total, deviation in zip(totals, deviations, strict=True):
        assert total.mean() == pytest.approx(exact_mean(parts), abs=5 * deviation / TRIALS**0.5)


@st.composite
def parts_of_a_total(draw: st.DrawFn) -> list[Part]:
    made = []
    for number in range(draw(st.integers(1, 6))):
        low, likely, high = sorted(draw(st.lists(st.floats(-1e4, 1e6), min_size=3, max_size=3)))
        shape = draw(st.sampled_from(get_args(Shape)))
        made.append(Part(f"part {number}", ThreePoint(low, likely, high, shape), draw(st.integers(0, 2))))
    return made


@settings(max_examples=40)
@given(parts_of_a_total(), st.integers(0, 1000))
def test_a_total_stays_within_its_bounds_and_near_its_mean(parts: list[Part], seed: int) -> None:
    total = simulate(parts, CorrelatedDraws(2000, seed, 0.5, 0.2))
    slack = 1e-6 * len(parts) * 1e6
    assert total.min() >= sum(part.estimate.low for part in parts) - slack
    assert total.max() <= sum(part.estimate.high for part in parts) + slack
    near = 6 * deviation_bounds(parts)[1] / 2000**0.5
    assert total.mean() == pytest.approx(exact_mean(parts), abs=near + slack)


@settings(max_examples=40)
@given(parts_of_a_total(), st.data())
def test_a_dearer_part_makes_no_trial_cheaper(parts: list[Part], data: st.DataObject) -> None:
    number = data.draw(st.integers(0, len(parts) - 1))
    own = parts[number].estimate
    dearer = replace(own, low=own.low + 10.0, likely=own.likely + 20.0, high=own.high + 30.0)
    changed = [*parts[:number], replace(parts[number], estimate=dearer), *parts[number + 1 :]]
    draws = CorrelatedDraws(200, 1, 0.5, 0.2)
    rise = simulate(changed, draws) - simulate(parts, draws)
    assert rise.min() >= -12.0
    assert exact_mean(changed) - exact_mean(parts) == pytest.approx(20.0, abs=1e-6)


@settings(max_examples=40)
@given(parts_of_a_total(), st.randoms(use_true_random=False))
def test_order_changes_nothing_and_rows_add_up(parts: list[Part], random: object) -> None:
    draws = CorrelatedDraws(200, 4, 0.5, 0.2)
    total = simulate(parts, draws)
    assert np.stack(list(part_rows(parts, draws))).sum(axis=0) == pytest.approx(total, rel=1e-9, abs=1e-6)
    assert simulate(parts[::-1], draws) == pytest.approx(total, rel=1e-9, abs=1e-6)


def test_two_parts_of_one_name_are_refused() -> None:
    part = Part("wash", ThreePoint(1.0, 2.0, 3.0))
    with pytest.raises(OutOfRange, match="name of its own"):
        simulate([part, part], CorrelatedDraws(100, 1, 0.0, 0.0))


def test_nothing_costs_nothing() -> None:
    assert (simulate([], CorrelatedDraws(100, 1, 0.0, 0.0)) == 0.0).all()


def test_method_gives_its_outputs() -> None:
    asked = [{"name": name, "low": low, "likely": m, "high": h} for name, (low, m, h) in AIRCRAFT.items()]
    outputs = METHOD.run(parts=[entry | {"shape": "triangular"} for entry in asked], within=0.3, across=0.0)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["likely"] == LIKELY
    assert outputs["exact_mean"] == pytest.approx(82_244.0, abs=0.05)
    assert outputs["independent"] == pytest.approx(4_599.6, abs=0.05)
    assert outputs["independent"] < outputs["deviation"] < outputs["as_one"]
    assert sum(outputs["contributions"]) == pytest.approx(1.0)
    assert outputs["p80"] > 86_430.0
    assert max(zip(outputs["contributions"], AIRCRAFT, strict=True))[1] == "software"
