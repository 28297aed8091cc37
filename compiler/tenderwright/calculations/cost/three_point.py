"""Three-point estimates: low, likely and high as a PERT or a triangular distribution."""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import cached_property, lru_cache
from typing import Any, Literal, get_args

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number

Floats = NDArray[np.float64]
Shape = Literal["pert", "triangular"]

PERT = Citation(
    "D. G. Malcolm and others, Application of a Technique for R&D Program Evaluation, 1959", standing="from memory"
)
WEIGHT = 4.0
"""Weight of the likely value in the mean of a PERT distribution, against 1 each of low and high."""

_PER_SCORE = 64
_HALF = 8 * _PER_SCORE
"""Steps of the table of quantiles for a normal score of 1, and from its middle to either end, at scores of 8."""


class ThreePoint(Struct, frozen=True, dict=True):
    """An uncertain quantity: no less than low, likeliest at likely, no more than high, all in one unit.

    PERT: the beta distribution on [l, h] with shapes a = 1 + 4 (m - l)/(h - l) and b = 6 - a. Triangular: density
    rises from l to m and falls to h. Source: `PERT`; textbook identities. Where low, likely and high are one figure,
    the quantity is certain. Raises OutOfRange unless low <= likely <= high, all finite.
    """

    low: float
    likely: float
    high: float
    shape: Shape = "pert"

    def __post_init__(self) -> None:
        if not all(math.isfinite(value) for value in (self.low, self.likely, self.high, self.high - self.low)):
            raise OutOfRange("low, likely and high must be numbers")
        if not self.low <= self.likely <= self.high:
            raise OutOfRange(
                f"low, likely and high must rise, got {self.low:.12g}, {self.likely:.12g} and {self.high:.12g}"
            )
        if self.shape not in get_args(Shape):
            raise OutOfRange(f"the shape must be pert or triangular, got {self.shape}")

    @property
    def mean(self) -> float:
        """Give the mean: (l + 4m + h)/6 for PERT, (l + m + h)/3 for triangular."""
        weight = WEIGHT if self.shape == "pert" else 1.0
        return (self.low + weight * self.likely + self.high) / (2.0 + weight)

    @property
    def variance(self) -> float:
        """Give the variance: (mean - l)(h - mean)/7 for PERT, (r² - (m - l)(h - m))/18, r = h - l, for triangular.

        The first is that of the beta distribution that is drawn from; `textbook_deviation` is its common rounding.
        """
        if self.shape == "pert":
            return max(0.0, (self.mean - self.low) * (self.high - self.mean)) / (WEIGHT + 3.0)
        return ((self.high - self.low) ** 2 - (self.likely - self.low) * (self.high - self.likely)) / 18.0

    @property
    def deviation(self) -> float:
        """Give the standard deviation."""
        return math.sqrt(self.variance)

    @property
    def textbook_deviation(self) -> float:
        """Give the standard deviation by the rule of thumb of PERT, (h - l)/6."""
        return (self.high - self.low) / 6.0

    def quantile(self, uniforms: Floats | float) -> Floats:
        """Give the values not exceeded with given probabilities, 0 to 1, any shape of array.

        By a table over normal scores with straight lines between; within 1e-5 of the range h - l. Raises OutOfRange.
        """
        from scipy.special import ndtri

        asked = np.asarray(uniforms, np.float64)
        if not ((asked >= 0.0) & (asked <= 1.0)).all():
            raise OutOfRange("a probability lies from 0 to 1")
        return self.at_scores(ndtri(asked))

    def at_scores(self, scores: Floats) -> Floats:
        """Give the values at standard normal scores: the quantiles of the probabilities Φ(z), only quicker.

        Scores beyond 8 either way give low or high.
        """
        place = np.asarray(np.clip(scores * _PER_SCORE + _HALF, 0.0, 2.0 * _HALF))
        step = place.astype(np.intp)
        place -= step
        values, rises = self._table
        place *= rises.take(step)
        place += values.take(step)
        return place

    @cached_property
    def _table(self) -> tuple[Floats, Floats]:
        """Give the value at each score of the table, and the rise to the next."""
        span = self.high - self.low
        likely = (self.likely - self.low) / span if span > 0.0 else 0.5
        values = self.low + span * _unit_quantiles(self.shape, likely)
        return values, np.append(np.diff(values), 0.0)


@lru_cache(maxsize=256)
def _unit_quantiles(shape: Shape, likely: float) -> Floats:
    """Give the quantiles from 0 to 1 at the scores of the table; the upper half is the lower of the mirror image."""
    lower, upper = _lower_half(shape, likely), 1.0 - _lower_half(shape, 1.0 - likely)
    middle = 0.5 * (lower[-1] + upper[-1])
    table = np.concatenate((lower[:-1], [middle], upper[-2::-1]))
    table[[0, -1]] = 0.0, 1.0
    table.flags.writeable = False
    return table


def _lower_half(shape: Shape, likely: float) -> Floats:
    from scipy.special import betaincinv, ndtr

    share = ndtr(np.arange(-_HALF, 1) / _PER_SCORE)
    if shape == "pert":
        return np.asarray(betaincinv(1.0 + WEIGHT * likely, 1.0 + WEIGHT * (1.0 - likely), share), np.float64)
    rising = np.sqrt(share * likely)
    falling = 1.0 - np.sqrt((1.0 - share) * (1.0 - likely))
    return np.where(share < likely, rising, falling)


def _kernel(low: float, likely: float, high: float, shape: Shape = "pert") -> Mapping[str, Any]:
    estimate = ThreePoint(low, likely, high, shape)
    p10, p50, p80, p90 = estimate.quantile(np.array([0.1, 0.5, 0.8, 0.9])).tolist()
    return {
        "mean": estimate.mean,
        "deviation": estimate.deviation,
        "textbook_deviation": estimate.textbook_deviation,
        "p10": p10,
        "p50": p50,
        "p80": p80,
        "p90": p90,
    }


METHOD = Method(
    name="cost.three-point",
    title="Mean and spread of a three-point estimate",
    formula="PERT: μ = (l + 4m + h)/6, σ² = (μ − l)(h − μ)/7; triangular: μ = (l + m + h)/3, "
    "σ² = (l² + m² + h² − lm − lh − mh)/18",
    source=PERT,
    valid="low ≤ likely ≤ high, in one unit; low and high are the least and the most that can be",
    inputs={
        "low": number("Least that it can be."),
        "likely": number("Likeliest value."),
        "high": number("Most that it can be."),
        "shape": {"type": "string", "enum": list(get_args(Shape)), "description": "Distribution; pert unless given."},
    },
    outputs=(
        Symbol("mean", "mean", "", ""),
        Symbol("deviation", "standard deviation", "", ""),
        Symbol("textbook_deviation", "standard deviation by the rule of thumb (h − l)/6", "", ""),
        Symbol("p10", "not exceeded in one case of ten", "", ""),
        Symbol("p50", "not exceeded in half of the cases", "", ""),
        Symbol("p80", "not exceeded in four cases of five", "", ""),
        Symbol("p90", "not exceeded in nine cases of ten", "", ""),
    ),
    kernel=_kernel,
    example={"low": 32300, "likely": 35547, "high": 52500},
    optional=frozenset({"shape"}),
    cautions=("people's low and high are seldom wide enough; say who gave them and on what evidence",),
)
