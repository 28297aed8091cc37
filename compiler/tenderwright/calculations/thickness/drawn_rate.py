"""Rates of loss of places, each drawn towards the mean of its neighbours as its own evidence is thin."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record
from tenderwright.calculations.thickness.columns import Floats

LEAST_PLACES = 4
"""Of fewer places with a rate none is drawn: the correction leaves nothing to draw by, and their spread says little."""

SOURCE = Citation(
    "C. N. Morris, Parametric Empirical Bayes Inference, J. Am. Statist. Ass. 78 (1983)",
    "means with a common mean; spread by moments, R. DerSimonian and N. Laird, Controlled Clinical Trials 7 (1986)",
    "from memory",
)


class Neighbours(Struct, frozen=True):
    """What the places of one zone have in common; rates in m a year."""

    rate: float
    """Mean of their rates, each counted by what is known of it; nan where no place has one."""
    uncertainty: float
    """Of that mean."""
    spread: float
    """From place to place, beyond what the readings' scatter explains."""
    places: int
    """Places with a rate of their own."""

    def drawn(self, own: Floats, uncertainty: Floats, shared: float = 0.0) -> tuple[Floats, Floats, Floats]:
        """Give each rate drawn, its uncertainty, and the share by which it was drawn; see `neighbours_of`."""
        k = self.places
        variance, beyond = np.square(uncertainty), self.spread**2
        share = np.zeros(own.shape)
        if k >= LEAST_PLACES:
            share = (k - 3) / (k - 1) * variance / (variance + beyond)
        away = own - self.rate
        left = variance * (1.0 - (k - 1) / max(k, 1) * share) + 2.0 / max(k - 3, 1) * share**2 * away**2
        known = ~np.isnan(own)
        beyond_one = self.spread if k >= LEAST_PLACES else max(self.spread, abs(self.rate))
        unknown = math.hypot(beyond_one, self.uncertainty)
        rate = np.where(known, own - share * away, self.rate)
        total = np.hypot(np.where(known, np.sqrt(left), unknown), shared)
        return rate, total, np.where(known, share, 1.0)


def neighbours_of(own: Floats, uncertainty: Floats) -> Neighbours:
    """Find what places have in common, and by how much each is drawn towards it.

    Formula: w = 1/s²; T² = max(0, (sum w (r - rw)² - (k - 1)) / (sum w - sum w²/sum w)), rw the mean by w; then mean
    m and its variance by the weights 1/(s² + T²). A place is drawn by B = (k - 3)/(k - 1) s²/(s² + T²):
    r' = r - B (r - m), u² = s² (1 - (k - 1)/k B) + 2/(k - 3) B² (r - m)², and what all share besides. A place without
    a rate takes m, u² = T² + u(m)²; of fewer than four rates T says little, and |m| stands for it where it is more.
    Symbols: own rates r (nan: none) and their standard uncertainties s in m a year,
    of k places; spread T. Range: fewer than four rates are not drawn. Source: `SOURCE`. Raises OutOfRange.
    """
    known = ~np.isnan(own)
    rate, variance = own[known], np.square(uncertainty[known])
    if not (np.isfinite(variance).all() and (variance > 0.0).all()):
        raise OutOfRange("the uncertainty of a rate must be more than nothing")
    k = int(rate.size)
    if not k:
        return Neighbours(math.nan, math.nan, 0.0, 0)
    weight = 1.0 / variance
    total = float(weight.sum())
    about = float(((rate - float((weight * rate).sum()) / total) ** 2 * weight).sum())
    scale = total - float((weight**2).sum()) / total
    if k > 1 and scale <= 0.0:
        raise OutOfRange("one rate is so much surer than the others that nothing can be said of their spread")
    beyond = max(0.0, (about - (k - 1)) / scale) if k > 1 else 0.0
    weight = 1.0 / (variance + beyond)
    total = float(weight.sum())
    return Neighbours(float((weight * rate).sum()) / total, 1.0 / math.sqrt(total), math.sqrt(beyond), k)


def _kernel(places: Sequence[Mapping[str, Any]], shared: float = 0.0) -> Mapping[str, Any]:
    own = np.array([place.get("rate", math.nan) for place in places], np.float64)
    if np.isnan(own).all():
        raise OutOfRange("at least one place needs a rate of its own")
    missing = [place for place in places if "rate" in place and "uncertainty" not in place]
    if missing:
        raise OutOfRange("a rate needs its uncertainty")
    uncertainty = np.array([place.get("uncertainty", math.nan) for place in places], np.float64)
    found = neighbours_of(own, uncertainty)
    rate, total, share = found.drawn(own, uncertainty, shared)
    columns = zip(rate.tolist(), total.tolist(), share.tolist(), strict=True)
    return {
        "mean": found.rate,
        "mean_uncertainty": found.uncertainty,
        "spread": found.spread,
        "places": [{"rate": r, "uncertainty": u, "share": s} for r, u, s in columns],
    }


METHOD = Method(
    name="thickness.drawn-rate",
    title="Rates of loss drawn towards those of their neighbours",
    formula="r' = r − B (r − m), B = (k − 3)/(k − 1) · s²/(s² + T²)",
    source=SOURCE,
    valid="places that waste alike but for chance and a spread about their mean; fewer than four are not drawn",
    inputs={
        "places": listed(
            record(
                "One place.",
                (),
                rate=quantity("rate_of_loss", "Its own rate; left out where it has none."),
                uncertainty=quantity("rate_of_loss", "Standard uncertainty of that rate."),
            ),
            "The places.",
        ),
        "shared": quantity("rate_of_loss", "Uncertainty that all share, as of calibration."),
    },
    outputs=(
        Symbol("mean", "mean of the neighbours", "rate_of_loss", "mm/yr"),
        Symbol("mean_uncertainty", "its uncertainty, what all share left out", "rate_of_loss", "mm/yr"),
        Symbol("spread", "spread from place to place beyond chance", "rate_of_loss", "mm/yr"),
        Symbol(
            "places",
            "the places in their order",
            "table",
            "",
            (
                Symbol("rate", "rate drawn", "rate_of_loss", "mm/yr"),
                Symbol("uncertainty", "its uncertainty", "rate_of_loss", "mm/yr"),
                Symbol("share", "by how much it was drawn to the mean", "fraction", "%"),
            ),
        ),
    ),
    kernel=_kernel,
    example={
        "places": [
            {"rate": "0.02 mm/yr", "uncertainty": "0.02 mm/yr"},
            {"rate": "0.03 mm/yr", "uncertainty": "0.01 mm/yr"},
            {"rate": "0.05 mm/yr", "uncertainty": "0.02 mm/yr"},
            {"rate": "0.11 mm/yr", "uncertainty": "0.03 mm/yr"},
            {},
        ],
        "shared": "0.008 mm/yr",
    },
    optional=frozenset({"shared"}),
    cautions=(
        "a place that wastes for a cause of its own, such as a leak above it, is drawn too far: judge it by eye",
    ),
)
