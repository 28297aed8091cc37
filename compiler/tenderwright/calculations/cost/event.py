"""A risk that happens or does not: its cost in each trial, and its exact mean and spread."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Event:
    """A risk of a likelihood p from 0 to 1 that, if it happens, costs from low to high, evenly spread (assumed).

    Formula: mean = p (l + h)/2; variance = p (l² + l h + h²)/3 - mean². Source: mean and variance of a mixture of
    nothing and a uniform distribution, derived. Raises OutOfRange.
    """

    likelihood: float
    low: float
    high: float

    def __post_init__(self) -> None:
        if not 0.0 <= self.likelihood <= 1.0:
            raise OutOfRange(f"a likelihood lies from 0 to 1, got {self.likelihood:g}")
        if not (math.isfinite(self.low) and math.isfinite(self.high) and self.low <= self.high):
            raise OutOfRange(f"low must be no more than high, got {self.low:.12g} and {self.high:.12g}")

    @property
    def mean(self) -> float:
        """Give the mean cost, over the cases in which it happens and those in which it does not."""
        return self.likelihood * 0.5 * (self.low + self.high)

    @property
    def variance(self) -> float:
        """Give the variance of the cost."""
        square = (self.low**2 + self.low * self.high + self.high**2) / 3.0
        return max(0.0, self.likelihood * square - self.mean**2)

    @property
    def deviation(self) -> float:
        """Give the standard deviation of the cost."""
        return math.sqrt(self.variance)

    def at_uniforms(self, uniforms: Floats) -> Floats:
        """Give the cost in each trial: nothing where u <= 1 - p, and above it from low to high as u goes to 1.

        One uniform says both whether it happens and how dear it is, so that a high draw is always the dear side.
        """
        over = uniforms - (1.0 - self.likelihood)
        happened = over > 0.0
        costs = np.zeros_like(over)
        costs[happened] = self.low + (self.high - self.low) * np.minimum(over[happened] / self.likelihood, 1.0)
        return costs


def _kernel(likelihood: float, low: float, high: float) -> Mapping[str, float]:
    risk = Event(likelihood, low, high)
    return {"mean": risk.mean, "deviation": risk.deviation}


METHOD = Method(
    name="cost.event",
    title="Mean and spread of the cost of a risk",
    formula="μ = p(l + h)/2, σ² = p(l² + lh + h²)/3 − μ²",
    source=Citation("mixture of nothing and a uniform distribution", standing="derived"),
    valid="a risk that happens once or not at all; its cost evenly spread from low to high",
    inputs={
        "likelihood": quantity("fraction", "How likely it is to happen."),
        "low": number("Least that it costs if it happens."),
        "high": number("Most that it costs if it happens."),
    },
    outputs=(
        Symbol("mean", "mean cost", "", ""),
        Symbol("deviation", "standard deviation of the cost", "", ""),
    ),
    kernel=_kernel,
    example={"likelihood": "30 %", "low": 6000, "high": 28000},
    cautions=("the mean pays for no single case: either nothing is spent, or much more than the mean",),
)
