"""A network worked through in many trials at once."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.method import Citation, OutOfRange
from tenderwright.calculations.schedule.critical_path import ROUNDING
from tenderwright.calculations.schedule.order import Links, neighbours, topological_order

Floats = NDArray[np.float64]

SOURCE = Citation(
    "R. M. Van Slyke, Monte Carlo methods and the PERT problem", "Operations Research 11 (1963), 839", "from memory"
)


def finish_times(durations: Floats, links: Links) -> Floats:
    """Give the earliest finish of each activity in each trial, shape (activities, trials).

    Formula: as `critical_path`, trial by trial. Symbols: durations, shape (activities, trials), none less than 0.
    Source: `SOURCE`. Raises OutOfRange, and Circle.
    """
    if durations.ndim != 2:
        raise OutOfRange("durations stand in rows of activities by columns of trials")
    if not (durations >= 0.0).all() or np.isinf(durations).any():
        raise OutOfRange("a duration must be a number, no less than nothing")
    order = topological_order(len(durations), links)
    before, _ = neighbours(len(durations), links)
    finish = np.zeros_like(durations, dtype=np.float64)
    for place in order:
        row = finish[place]
        for other in before[place]:
            np.maximum(row, finish[other], out=row)
        row += durations[place]
    return finish


def criticality(durations: Floats, links: Links, finish: Floats) -> Floats:
    """Give the share of the trials in which each activity is critical, shape (activities,).

    Formula: the share of trials with LF - EF no more than `ROUNDING` of the length of the trial (criticality index).
    Symbols: durations as `finish_times` takes them, finish as it gives it. Holds one further array of their size.
    Source: `SOURCE`. Raises OutOfRange, and Circle.
    """
    if finish.shape != durations.shape:
        raise OutOfRange("give the finish of each duration")
    order = topological_order(len(durations), links)
    _, after = neighbours(len(durations), links)
    shares = np.zeros(len(durations))
    if not durations.size:
        return shares
    length = finish.max(axis=0)
    slack = ROUNDING * length
    late_start = np.empty_like(finish)
    for place in reversed(order):
        row = late_start[place]
        row[:] = length
        for other in after[place]:
            np.minimum(row, late_start[other], out=row)
        shares[place] = np.count_nonzero(row - finish[place] <= slack) / row.size
        row -= durations[place]
    return shares
