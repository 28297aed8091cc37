"""How much of a line may be needed in the end: by the survey's own draws, or by the owner's least and most."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.bids.beyond import beyond
from tenderwright.calculations.cost.three_point import ThreePoint
from tenderwright.calculations.ship.renewals import shell_contingent
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.item import Line
from tenderwright.pricing.quantity import LineQuantity
from tenderwright.quantities.display import in_unit

Floats = NDArray[np.float64]
Source = Literal["survey", "owner", "none"]
SURVEY = "shell.contingent."
"""Values of the survey that have a distribution: what a denser survey would likely add."""


class Spread(Struct, frozen=True, eq=False):
    """The quantity of a line as it was tendered, and what it may come to."""

    tendered: Decimal
    source: Source = "none"
    """survey, owner (low, tendered and high as a PERT quantity), or none: it stays as tendered."""
    estimate: ThreePoint | None = None
    draws: Floats | None = None
    """Equally likely outcomes, in the unit of the line."""

    def at(self, share: float) -> Decimal:
        """Give the quantity not exceeded in a share of the cases, to three decimals."""
        if self.draws is not None:
            return _decimal(float(np.quantile(self.draws, share, method="inverted_cdf")))
        if self.estimate is not None:
            return _decimal(float(self.estimate.quantile(share)))
        return self.tendered

    @property
    def least(self) -> float:
        """Give the least that it can be."""
        return float(self.draws.min()) if self.draws is not None else self._end("low")

    @property
    def most(self) -> float:
        """Give the most that it can be."""
        return float(self.draws.max()) if self.draws is not None else self._end("high")

    def _end(self, end: Literal["low", "high"]) -> float:
        return float(self.tendered) if self.estimate is None else float(getattr(self.estimate, end))

    def more(self, quantity: float) -> float:
        """Give how likely it is to be more than a quantity."""
        if self.draws is not None:
            return float((self.draws > quantity).mean())
        if self.estimate is not None:
            return beyond(self.estimate, quantity)
        return 1.0 if self.least > quantity else 0.0

    def less(self, quantity: float) -> float:
        """Give how likely it is to be less than a quantity."""
        if self.draws is not None:
            return float((self.draws < quantity).mean())
        return 1.0 - self.more(quantity) if self.estimate is not None else float(self.most < quantity)


def spread_of(line: Line, quantity: LineQuantity, least: Decimal, most: Decimal, calculated: Calculated) -> Spread:
    """Find the spread of a line; what the survey says of it goes before the owner's least and most."""
    draws = _survey_draws(line, quantity, calculated)
    if draws is not None:
        return Spread(quantity.number, "survey", draws=draws)
    if least < most:
        low, likely, high = float(least), float(quantity.number), float(most)
        return Spread(quantity.number, "owner", ThreePoint(low, likely, high))
    return Spread(quantity.number)


def _survey_draws(line: Line, quantity: LineQuantity, calculated: Calculated) -> Floats | None:
    """Give the draws of the survey in the unit of a line that takes one of its values.

    Mass and joint are reckoned from plate as the survey reckons them: in proportion to its area.
    """
    found, values = calculated.found(shell_contingent), calculated.record.values
    if line.takes is None or found is None or not line.takes.name.startswith(SURVEY):
        return None
    later = found.later
    kind = line.takes.name.removeprefix(SURVEY).partition("-")[0]
    if kind == "spaces":
        draws = later.draws.astype(np.float64)
    elif kind in ("area", "mass", "joint"):
        area, value = values.get(f"{SURVEY}area"), values.get(f"{SURVEY}{kind}")
        if area is None or value is None or not area.si:
            return None
        draws = later.areas * (float(value.si) / float(area.si))
    else:
        return None
    share = line.share.si if line.share is not None else 1.0
    dimension = quantity.value.dimension if quantity.value is not None else ""
    return np.asarray(draws * share * in_unit(1.0, quantity.unit, dimension), np.float64)


def _decimal(number: float) -> Decimal:
    return Decimal(repr(round(number, 3)))
