"""Trials of cost and time: exact means, parts that add up, and time and money that move together."""

from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.cost.three_point import ThreePoint
from tenderwright.pipeline import OwnersSide, compile_owner, compile_package
from tenderwright.planning.outlook import Outlook, outlook
from tenderwright.planning.trials import GENERAL, Trials, trials
from tenderwright.pricing.money import total
from tenderwright.reading.package import Files
from tests.model.packages import change, put

RATES = "owner/rates.yaml"
SETTINGS = "simulation: { within: 50 %, across: 20 %, trials: 20000, seed: 7 }\nlines:"
RISKS = """risks:
  - { risk: rain, what: It rains., likelihood: 50 %, low: 1000, high: 3000, days_low: 2 d, days_high: 4 d }
  - { risk: grant, what: No grant., likelihood: 50 %, low: 100000, high: 300000, bears_on: money }
  - { risk: rivets, what: More rivets., item: "320", likelihood: 20 %, low: 5000, high: 9000 }
"""


def side(files: Files) -> OwnersSide:
    made = compile_owner(files, compile_package(files))
    assert [notice for notice in made.notices if notice.severity == "error"] == []
    return made


def run(files: Files) -> Trials:
    made = side(files)
    assert made.estimate is not None
    return trials(made.papers, made.estimate, made.schedule)


def seen(files: Files) -> Outlook:
    made = side(files)
    assert made.estimate is not None
    return outlook(trials(made.papers, made.estimate, made.schedule), made.estimate, 14)


@pytest.fixture(scope="module")
def risky(planned: Files) -> Files:
    files = change(planned, RATES, "lines:", SETTINGS)
    files = change(
        files, RATES, "320.a: { rate: 95,", "320.a: { quantity_low: 10 each, quantity_high: 120 each, rate: 95,"
    )
    return put(files, "owner/risks.yaml", RISKS)


def test_the_mean_of_a_line_is_the_product_of_its_means(risky: Files) -> None:
    """Rate and quantity are drawn apart, so that the mean of their product is the product of their means."""
    made = run(risky)
    row = made.costs[made.parts.index("320.a")]
    exact = ThreePoint(70, 95, 140).mean * ThreePoint(10, 40, 120).mean
    assert abs(row.mean() / exact - 1) < 4 * row.std() / exact / np.sqrt(row.size)


def test_the_mean_of_a_risk_is_its_likelihood_times_the_middle(risky: Files) -> None:
    made = run(risky)
    row = made.costs[made.parts.index("rivets")]
    assert abs(row.mean() - 0.2 * 7000) < 4 * row.std() / np.sqrt(row.size)
    assert made.items[made.parts.index("rivets")] == "320"
    assert made.items[made.parts.index("rain")] == GENERAL


def test_what_bears_on_the_money_is_no_cost(risky: Files) -> None:
    assert "grant" not in run(risky).parts


def test_shares_of_the_spread_add_up_to_one(risky: Files) -> None:
    assert abs(sum(run(risky).shares.values()) - 1) < 1e-9


def test_what_the_items_are_given_adds_up_to_the_whole_to_the_cent(risky: Files) -> None:
    made = seen(risky).cost
    for level in (0.5, 0.8):
        assert total([parts[level] for parts in made.by_item.values()]) == made.levels[level]


def test_days_of_a_risk_lengthen_the_time_on_blocks(risky: Files) -> None:
    without = run(put(risky, "owner/risks.yaml", RISKS.replace("days_low: 2 d, days_high: 4 d", "bears_on: cost")))
    with_days = run(risky)
    assert without.days is not None
    assert with_days.days is not None
    longer = with_days.days.dock - without.days.dock
    assert longer.min() >= 0
    assert abs(longer.mean() - 0.5 * 3) < 0.06


def test_a_line_counted_in_days_follows_the_programme(risky: Files) -> None:
    files = change(
        risky,
        "owner/programme.yaml",
        "activities:",
        'day_lines: [{ line: "110.b", days: dock days, less: 3 }]\nactivities:',
    )
    made = run(files)
    assert made.days is not None
    days = np.maximum(np.ceil(made.days.dock - 1e-6) - 3, 0)
    row = made.costs[made.parts.index("110.b")]
    assert np.array_equal(row == 0, days == 0)
    rate = row[days > 0] / days[days > 0]
    assert 325 <= rate.min() < rate.max() <= 1300  # EUR 650, class 5: from half to twice as much


def test_the_same_seed_gives_the_same_trials_and_another_does_not(risky: Files) -> None:
    assert np.array_equal(run(risky).total, run(risky).total)
    assert not np.array_equal(run(risky).total, run(change(risky, RATES, "seed: 7", "seed: 8")).total)


def test_a_line_added_leaves_the_draws_of_the_others_as_they_are(risky: Files) -> None:
    frost = "  - { risk: frost, what: Frost., likelihood: 10 %, low: 1, high: 2 }\n"
    first, second = run(risky), run(put(risky, "owner/risks.yaml", RISKS + frost))
    assert np.array_equal(first.costs, second.costs[: len(first.costs)])


def test_options_are_not_in_the_total(risky: Files) -> None:
    made = run(risky)
    counted = sum(row for row, option in zip(made.costs, made.options, strict=True) if not option)
    assert np.allclose(made.total, counted)


def test_a_point_estimate_is_placed_on_its_own_curve(risky: Files) -> None:
    made = seen(risky).cost
    assert 0 < made.point_at < 0.6
    assert made.levels[0.05] < made.levels[0.5] < made.levels[0.8] < made.levels[0.95]
    assert made.contingency == made.levels[0.8] - made.point


def test_without_a_programme_there_is_no_time(starter: Files) -> None:
    assert seen(change(starter, RATES, "lines:", SETTINGS)).time is None
