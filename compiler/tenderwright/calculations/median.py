"""The middle one of some figures."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray


def median(figures: NDArray[np.float64]) -> float:
    """Give the middle one of some figures: as `np.median`, which loads all of `numpy.ma` when it is first used."""
    ordered = np.sort(figures)
    return float(ordered[(ordered.size - 1) // 2] + ordered[ordered.size // 2]) / 2
