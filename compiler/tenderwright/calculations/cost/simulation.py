"""The simulated total of correlated three-point parts."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from tenderwright.calculations.cost.correlated import CorrelatedDraws
from tenderwright.calculations.cost.three_point import Floats, Shape, ThreePoint
from tenderwright.calculations.cost.totals import contributions, percentiles, share_at_or_below
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity, record, text

TRIALS = 100_000
SEED = 1

GUIDE = Citation("GAO-20-195G, Cost Estimating and Assessment Guide, 2020", "step 9, risk and uncertainty")


@dataclass(frozen=True)
class Part:
    """One part of a total, with the group of parts that it moves with."""

    name: str
    """Tells its draws from those of other parts."""
    estimate: ThreePoint
    group: int | str = 0


def part_rows(parts: Sequence[Part], draws: CorrelatedDraws) -> Iterator[Floats]:
    """Yield the value of each part in each trial, one row of shape (trials,) at a time.

    The rows can be made again at will: the same draws give the same rows. Raises OutOfRange where two parts have one
    name, for they would have one row of draws.
    """
    if len({part.name for part in parts}) < len(parts):
        raise OutOfRange("each part must have a name of its own")
    for part in parts:
        yield part.estimate.at_scores(draws.scores(part.name, part.group))


def simulate(parts: Sequence[Part], draws: CorrelatedDraws) -> Floats:
    """Give the total of the parts in each trial, shape (trials,).

    Formula: T = sum of Q_i(Φ(z_i)), with Q_i the quantile of a part and z_i its correlated normal score. Holds one row
    at a time. Source: `GUIDE`. Raises OutOfRange as `part_rows` does.
    """
    total = np.zeros(draws.trials)
    for row in part_rows(parts, draws):
        total += row
    return total


def exact_mean(parts: Sequence[Part]) -> float:
    """Give the mean of the total: the sum of the means of the parts, whatever their correlation."""
    return math.fsum(part.estimate.mean for part in parts)


def deviation_bounds(parts: Sequence[Part]) -> tuple[float, float]:
    """Give the standard deviation of the total were all parts independent, and an upper bound, were they one.

    Formula: sqrt(sum s²) and sum s. Source: variance of a sum.
    """
    variances = [part.estimate.variance for part in parts]
    return math.sqrt(math.fsum(variances)), math.fsum(math.sqrt(variance) for variance in variances)


def _kernel(
    parts: Sequence[Mapping[str, Any]], within: float, across: float, trials: int = TRIALS, seed: int = SEED
) -> Mapping[str, Any]:
    made = [_part(part) for part in parts]
    draws = CorrelatedDraws(trials, seed, within, across)
    total = simulate(made, draws)
    likely = math.fsum(part.estimate.likely for part in made)
    least, most = deviation_bounds(made)
    p10, p50, p80, p90 = percentiles(total, (0.1, 0.5, 0.8, 0.9)).tolist()
    return {
        "likely": likely,
        "share": share_at_or_below(likely, total),
        "mean": float(total.mean()),
        "exact_mean": exact_mean(made),
        "deviation": float(total.std()),
        "independent": least,
        "as_one": most,
        "p10": p10,
        "p50": p50,
        "p80": p80,
        "p90": p90,
        "contributions": contributions(part_rows(made, draws), total).tolist(),
    }


def _part(part: Mapping[str, Any]) -> Part:
    shape: Shape = part.get("shape", "pert")
    return Part(part["name"], ThreePoint(part["low"], part["likely"], part["high"], shape), part.get("group", 0))


METHOD = Method(
    name="cost.simulation",
    title="Total of uncertain parts, by simulation",
    formula="T = Σ Q_i(Φ(z_i)), z_i = √a·common + √(w − a)·group + √(1 − w)·own",
    source=GUIDE,
    valid="parts that add up; correlation across groups no more than within one",
    inputs={
        "parts": listed(
            record(
                "One part.",
                ("name", "low", "likely", "high"),
                name=text("Name, another for each part."),
                low=number("Least that it can be."),
                likely=number("Likeliest value."),
                high=number("Most that it can be."),
                shape={"type": "string", "enum": ["pert", "triangular"], "description": "Pert unless given."},
                group={"type": "integer", "description": "Number of the group that it moves with; 0 unless given."},
            ),
            "The parts of the total.",
        ),
        "within": quantity("fraction", "Correlation of two parts of one group."),
        "across": quantity("fraction", "Correlation of two parts of different groups."),
        "trials": {"type": "integer", "minimum": 100, "description": "Trials; 100000 unless given."},
        "seed": {"type": "integer", "minimum": 0, "description": "Seed of the draws; 1 unless given."},
    },
    outputs=(
        Symbol("likely", "sum of the likely values", "", ""),
        Symbol("share", "share of the trials at or below the sum of the likely values", "fraction", "%"),
        Symbol("mean", "mean of the trials", "", ""),
        Symbol("exact_mean", "mean by the formula, to check the trials by", "", ""),
        Symbol("deviation", "standard deviation of the trials", "", ""),
        Symbol("independent", "the same by the formula, were all parts independent", "", ""),
        Symbol("as_one", "an upper bound of it, were they to move as one", "", ""),
        Symbol("p10", "not exceeded in one trial of ten", "", ""),
        Symbol("p50", "not exceeded in half of the trials", "", ""),
        Symbol("p80", "not exceeded in four trials of five", "", ""),
        Symbol("p90", "not exceeded in nine trials of ten", "", ""),
        Symbol("contributions", "each part's share of the variance, in the order given", "fraction", "%"),
    ),
    kernel=_kernel,
    example={
        "parts": [
            {"name": "wash", "low": 4200, "likely": 4800, "high": 6900, "group": 1},
            {"name": "blast", "low": 21000, "likely": 26000, "high": 41000, "group": 1},
            {"name": "plate", "low": 9000, "likely": 18000, "high": 52000, "group": 2},
        ],
        "within": "50 %",
        "across": "25 %",
        "trials": 20000,
    },
    optional=frozenset({"trials", "seed"}),
    cautions=(
        "the correlations are judgement; parts taken as independent understate the chance of a dear total",
        "what nobody thought of is in none of the parts",
    ),
)
