"""Correlated draws: each quantity's row of normal scores or uniforms, alike within a group and less across groups."""

from __future__ import annotations

import hashlib
import math
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.method import Citation, OutOfRange

Floats = NDArray[np.float64]

COPULA = Citation("Gaussian copula with a common and a group factor", standing="derived")

LEAST_TRIALS, MOST_TRIALS = 100, 200_000


@dataclass(frozen=True, eq=False)
class CorrelatedDraws:
    """Rows of draws, one for each named quantity, made when asked for.

    Formula: z = sqrt(a) common + sqrt(w - a) group + sqrt(1 - w) own, each of the three standard normal; so z is
    standard normal, with correlation w to another of its group and a to those of other groups. Rank correlation is
    (6/pi) asin(correlation/2). A row follows from the seed and the names alone: which other rows there are, and in
    which order they are asked for, changes nothing. Fewer trials are the first of more. Source: `COPULA`.
    Raises OutOfRange unless 0 <= across <= within <= 1.
    """

    trials: int
    seed: int
    within: float
    """Correlation of two normal scores of one group."""
    across: float
    """Correlation of two normal scores of different groups."""
    _kept: dict[str, Floats] = field(default_factory=dict, repr=False)

    def __post_init__(self) -> None:
        if not LEAST_TRIALS <= self.trials <= MOST_TRIALS:
            raise OutOfRange(f"trials may be from {LEAST_TRIALS} to {MOST_TRIALS:,}, got {self.trials:,}")
        if not (math.isfinite(self.within) and 0.0 <= self.across <= self.within <= 1.0):
            raise OutOfRange(
                "correlation must lie from 0 to 1, and across groups be no more than within one, "
                f"got {self.within:g} within and {self.across:g} across"
            )

    def scores(self, name: str, group: int | str) -> Floats:
        """Give a quantity's standard normal scores, one for each trial."""
        row = np.zeros(self.trials)
        for share, kind, key in (
            (self.across, "common", ""),
            (self.within - self.across, "group", str(group)),
        ):
            if share > 0.0:
                row += math.sqrt(share) * self._factor(kind, key)
        if self.within < 1.0:
            row += math.sqrt(1.0 - self.within) * self._normals("own", name)
        return row

    def uniforms(self, name: str, group: int | str) -> Floats:
        """Give the same draws as uniforms between 0 and 1."""
        from scipy.special import ndtr

        return np.asarray(ndtr(self.scores(name, group)), np.float64)

    def _factor(self, kind: str, key: str) -> Floats:
        """Give a row that several quantities share, drawn once."""
        if f"{kind} {key}" not in self._kept:
            self._kept[f"{kind} {key}"] = self._normals(kind, key)
        return self._kept[f"{kind} {key}"]

    def _normals(self, kind: str, key: str) -> Floats:
        digest = hashlib.sha256(f"{self.seed}\0{kind}\0{key}".encode()).digest()
        return np.random.Generator(np.random.PCG64(int.from_bytes(digest, "big"))).standard_normal(self.trials)
