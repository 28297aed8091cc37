"""What trials of a total tell: its percentiles, where a figure lies among them, and which parts drive the spread."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.method import OutOfRange

Floats = NDArray[np.float64]


def percentiles(total: Floats, levels: Sequence[float]) -> Floats:
    """Give the least total that is not exceeded in at least a share of the trials, for each of several shares.

    Symbols: total of each trial, shape (trials,); levels from 0 to 1. Source: definition of a quantile.
    Raises OutOfRange.
    """
    _trials(total)
    asked = np.asarray(levels, np.float64)
    if not ((asked >= 0.0) & (asked <= 1.0)).all():
        raise OutOfRange("a percentile lies from 0 to 1")
    return np.asarray(np.quantile(total, asked, method="inverted_cdf"), np.float64)


def share_at_or_below(point: float, total: Floats) -> float:
    """Give the share of the trials whose total is a figure or less: the place of a figure on the S-curve.

    Raises OutOfRange without trials.
    """
    _trials(total)
    return float(np.count_nonzero(total <= point) / total.size)


def contributions(parts: Iterable[Floats], total: Floats) -> Floats:
    """Give each part's share of the variance of the total.

    Formula: c_i = cov(x_i, T)/var(T). As T is the sum of the x_i, the shares add up to 1 exactly (bilinearity of the
    covariance), correlation included; a part that offsets others has a share below nothing. Symbols: parts, the rows
    x_i of shape (trials,), as an array of shape (parts, trials) or one by one; total T of each trial. A total without
    spread gives nothing to each. Source: covariance (Euler) allocation, derived. Raises OutOfRange.
    """
    _trials(total)
    off = total - total.mean()
    spread = float(off @ off)
    with_total = np.array([_row(part, total) @ off for part in parts], np.float64)
    return with_total / spread if spread > 0.0 else np.zeros_like(with_total)


def _row(part: Floats, total: Floats) -> Floats:
    if part.shape != total.shape:
        raise OutOfRange("each part must have as many trials as the total")
    return part


def _trials(total: Floats) -> None:
    if total.ndim != 1 or not total.size:
        raise OutOfRange("a total needs one or more trials")
