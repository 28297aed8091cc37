"""Breakdown of a coating with age: the fraction of coated area that acts as bare steel."""

from __future__ import annotations

import math
from typing import Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, OutOfRange

SOURCE = Citation("DNV-RP-B401", "coating breakdown factors", standing="from memory")

Category = Literal["I", "II", "III"]

CATEGORIES: dict[Category, tuple[float, float]] = {"I": (0.10, 0.10), "II": (0.05, 0.025), "III": (0.02, 0.012)}
"""Constants a and b (per year) of coatings at depths of 0 to 30 m, by category, from `SOURCE`."""


class Breakdown(Struct, frozen=True):
    """The fraction of coated area that acts as bare, when new, on average over the life, and at its end."""

    initial: float
    mean: float
    final: float


BARE = Breakdown(1.0, 1.0, 1.0)
"""Steel without a coating."""


def coating_breakdown(a: float, b: float, years: float) -> Breakdown:
    """Find the breakdown of a coating over a life.

    Formula: fc(t) = a + b t, at most 1; mean a + b T / 2; final a + b T; where the final would pass 1,
    mean = 1 - (1 - a)² / (2 b T). Symbols: a and b (per year) of the coating, years T.
    Source: `SOURCE`. Raises OutOfRange for constants outside 0 to 1 or a life below nothing.
    """
    if not (0.0 <= a <= 1.0 and 0.0 <= b <= 1.0):
        raise OutOfRange(f"the constants of a coating lie from 0 to 1, got {a:g} and {b:g}")
    if not (math.isfinite(years) and years >= 0.0):
        raise OutOfRange(f"a life cannot be less than nothing, got {years:g} yr")
    final = a + b * years
    if final <= 1.0:
        return Breakdown(a, a + 0.5 * b * years, final)
    return Breakdown(a, 1.0 - (1.0 - a) ** 2 / (2.0 * b * years), 1.0)
