"""How many more bad plates a denser survey would likely find, and how much plate to price for them.

Plates nobody gauged are judged from those gauged, strake by strake. Before its own readings count, each strake is
taken to be as bad as the ship's strakes on the whole, with the weight of a few plates; its own readings then pull it
away (Beta prior, binomial readings). How bad the ship is on the whole is itself uncertain, so the strakes are drawn
again and again with replacement, as if another such ship had been gauged (bootstrap). Each draw then counts bad plates
among those not gauged; the counts of all draws give the expectation, and the quantity not exceeded in 50 and 80
draws of a hundred (P50, P80).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.renewal.shell_grid import Floats, Ints
from tenderwright.calculations.schema import listed, number, quantity

PRIOR_WEIGHT = 4.0
"""Weight of the whole ship's share of bad plates, in plates, against a strake's own (common practice, no source)."""
DRAWS = 4000
MOST_DRAWN = 1_000_000
"""Draws by strakes gauged at most, so that none fills the memory."""
SEED = 1

_HALF = 0.5


class Gauged(Struct, frozen=True, eq=False):
    """Plates gauged and not gauged, by strake; arrays of one length."""

    sampled: Ints
    """Plates that readings were taken of."""
    bad: Ints
    """Of those, the plates to be renewed."""
    unsampled: Ints
    """Plates that no reading was taken of."""
    area: Floats
    """Plate renewed for each bad plate, m², by strake."""

    def __post_init__(self) -> None:
        arrays = (self.sampled, self.bad, self.unsampled, self.area)
        if len({array.shape for array in arrays}) != 1 or self.sampled.ndim != 1 or not self.sampled.size:
            raise OutOfRange("give the plates of one or more strakes, each with its numbers and area")
        if any((array < 0).any() for array in arrays) or not np.isfinite(self.area).all():
            raise OutOfRange("numbers and areas of plates cannot be less than nothing")
        if (self.bad > self.sampled).any():
            raise OutOfRange("a strake has more bad plates than plates gauged")
        if not self.sampled.sum():
            raise OutOfRange("with no plate gauged, nothing can be said of the rest")


class Contingent(Struct, frozen=True, eq=False):
    """What a denser survey would likely find beyond the plates known to be bad."""

    plates: float
    """Expected bad plates among those not gauged."""
    plates_p50: int
    plates_p80: int
    area: float
    """Expected plate to renew for them, m²."""
    area_p50: float
    area_p80: float
    by_strake: Floats
    """Expected bad plates, by strake."""
    draws: Ints
    """Bad plates in each draw, for a plot."""
    areas: Floats
    """Plate to renew in each draw, m²."""

    def words(self, gauged: Gauged) -> str:
        """Say in a sentence or two what was found and what is expected."""
        return (
            f"{int(gauged.bad.sum())} of {int(gauged.sampled.sum())} plates gauged are to be renewed; "
            f"{int(gauged.unsampled.sum())} plates were not gauged. Among those a denser survey would likely find "
            f"about {self.plates:.1f} more: {self.plates_p50} or fewer in half of the cases drawn, "
            f"{self.plates_p80} or fewer in four of five."
        )


def contingent_renewal(
    gauged: Gauged, weight: float = PRIOR_WEIGHT, draws: int = DRAWS, seed: int = SEED
) -> Contingent:
    """Expect the bad plates among those that were not gauged.

    Formula: per draw, p0 = (sum k* + 1/2)/(sum n* + 1) over the strakes gauged, drawn with replacement; then by strake
    p ~ Beta(k + w p0, n - k + w (1 - p0)) and bad ~ Binomial(m, p). Symbols: n plates gauged, k of them bad, m not
    gauged; weight w in plates. One strake alone gives the Beta-Binomial distribution itself, of mean
    m (k + w p0)/(n + w). Same seed, same result. Source: Bayes's rule for binomial counts and the bootstrap, derived;
    the 1/2 is Jeffreys's prior. Raises OutOfRange.
    """
    if not (math.isfinite(weight) and weight > 0.0):
        raise OutOfRange(f"the weight of the prior must be more than nothing, got {weight:g} plates")
    with_readings = np.flatnonzero(gauged.sampled)
    if draws < 100 or draws * with_readings.size > MOST_DRAWN:
        most = MOST_DRAWN // max(1, with_readings.size)
        raise OutOfRange(f"draws may be from 100 to {most:,} for {with_readings.size} strakes, got {draws:,}")
    rng = np.random.default_rng(seed)
    taken = rng.choice(with_readings, (draws, with_readings.size))
    known, found = gauged.sampled[taken].sum(axis=1), gauged.bad[taken].sum(axis=1)
    whole = ((found + _HALF) / (known + 1.0))[:, None]
    share = rng.beta(gauged.bad + weight * whole, gauged.sampled - gauged.bad + weight * (1.0 - whole))
    bad = rng.binomial(gauged.unsampled, share)
    plates, area = bad.sum(axis=1), bad @ gauged.area
    return Contingent(
        plates=float(plates.mean()),
        plates_p50=int(_quantile(plates, 0.5)),
        plates_p80=int(_quantile(plates, 0.8)),
        area=float(area.mean()),
        area_p50=_quantile(area, 0.5),
        area_p80=_quantile(area, 0.8),
        by_strake=bad.mean(axis=0),
        draws=plates,
        areas=np.asarray(area, np.float64),
    )


def _quantile(values: Ints | Floats, share: float) -> float:
    """Give the least value drawn that is not exceeded in at least a share of the draws."""
    return float(np.quantile(values, share, method="inverted_cdf"))


def gauged_from_input(strakes: Sequence[Mapping[str, Any]]) -> Gauged:
    """Make the counts of converted records, one for each strake. Raises OutOfRange."""

    def column(name: str) -> Ints:
        return np.array([strake[name] for strake in strakes], np.int64)

    area = np.array([strake["area"] for strake in strakes], np.float64)
    return Gauged(column("sampled"), column("bad"), column("unsampled"), area)


def _kernel(
    strakes: Sequence[Mapping[str, Any]], weight: float = PRIOR_WEIGHT, draws: int = DRAWS, seed: int = SEED
) -> Mapping[str, Any]:
    gauged = gauged_from_input(strakes)
    found = contingent_renewal(gauged, weight, draws, seed)
    return {
        "plates": found.plates,
        "plates_p50": float(found.plates_p50),
        "plates_p80": float(found.plates_p80),
        "area": found.area,
        "area_p50": found.area_p50,
        "area_p80": found.area_p80,
        "by_strake": found.by_strake.tolist(),
        "words": found.words(gauged),
    }


METHOD = Method(
    name="renewal.contingent",
    title="Bad plates that a denser survey would likely find",
    formula="p₀ = (Σk* + ½)/(Σn* + 1), p ~ Beta(k + w p₀, n − k + w(1 − p₀)), bad ~ Binomial(m, p)",
    source=Citation("Bayes's rule for binomial counts, with a bootstrap over strakes", standing="derived"),
    valid="plates gauged much as chance would choose; where the suspect ones were sought out it expects too many",
    inputs={
        "strakes": listed(
            {
                "type": "object",
                "properties": {
                    "sampled": {"type": "integer", "minimum": 0, "description": "Plates gauged."},
                    "bad": {"type": "integer", "minimum": 0, "description": "Of those, plates to be renewed."},
                    "unsampled": {"type": "integer", "minimum": 0, "description": "Plates not gauged."},
                    "area": quantity("area", "Plate renewed for one bad plate."),
                },
                "required": ["sampled", "bad", "unsampled", "area"],
                "additionalProperties": False,
            },
            "The strakes.",
        ),
        "weight": number(
            "Weight of the whole ship against a strake's own readings, in plates; 4 unless given.", exclusiveMinimum=0
        ),
        "draws": {"type": "integer", "minimum": 100, "description": "Draws; 4000 unless given."},
        "seed": {"type": "integer", "minimum": 0, "description": "Seed of the draws; 1 unless given."},
    },
    outputs=(
        Symbol("plates", "bad plates expected", "each", "each"),
        Symbol("plates_p50", "bad plates not exceeded in half of the draws", "each", "each"),
        Symbol("plates_p80", "bad plates not exceeded in four draws of five", "each", "each"),
        Symbol("area", "plate to renew expected", "area", "m2"),
        Symbol("area_p50", "plate not exceeded in half of the draws", "area", "m2"),
        Symbol("area_p80", "plate not exceeded in four draws of five", "area", "m2"),
        Symbol("by_strake", "bad plates expected by strake", "each", "each"),
        Symbol("words", "the same in words", "text", ""),
    ),
    kernel=_kernel,
    example={
        "strakes": [
            {"sampled": 24, "bad": 2, "unsampled": 60, "area": "0.65 m2"},
            {"sampled": 30, "bad": 6, "unsampled": 54, "area": "0.62 m2"},
            {"sampled": 20, "bad": 0, "unsampled": 64, "area": "0.60 m2"},
        ]
    },
    optional=frozenset({"weight", "draws", "seed"}),
    cautions=(
        "bad plates lie together: neighbours of a bad plate are likelier to be bad than this says, others less",
        "a blast shows what a gauge did not; the expectation is for readings of the same kind",
    ),
)
