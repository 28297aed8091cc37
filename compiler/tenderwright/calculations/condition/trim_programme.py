"""The linear programme behind a target trim: the least liquid moved that meets the moments asked for."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange

MET = 1e-6
"""Moments missed by less than this [t m] are met."""

KEPT = 1e-9
"""How closely the solver keeps a limit [t, t m]: well within what is missed, so that a nearest answer can be held."""


class Bounds(Struct, frozen=True, eq=False):
    """Least and greatest mass to add to and take from each tank [t]."""

    up_least: Floats
    up_most: Floats
    down_least: Floats
    down_most: Floats


class Moments(Struct, frozen=True, eq=False):
    """Per tank the moment of each tonne added, and the moments to be reached in all [t m]."""

    arms: Floats
    """Shape (moments, tanks), [m]."""
    wanted: Floats
    """Shape (moments,)."""


def least_movement(
    bounds: Bounds, groups: Sequence[str], exchanged: Sequence[str], moments: Moments
) -> tuple[Floats, bool]:
    """Find the change of mass in each tank [t] and whether it meets the moments.

    Formula: minimise what is pumped, sum(u) + sum(out), subject to sum(u) + out = sum(v) + in for each liquid
    and arms*(u - v) = wanted. Where nothing meets the moments, the sum of what is missed is made least
    first.
    Symbols: u, v mass added to and taken from each tank; in, out mass from and to the sea, only for liquids
    exchanged with it [t].
    Source: linear programming (derived); solved by HiGHS. Raises OutOfRange where even the tanks' own limits
    cannot be kept.
    """
    tanks, rows = len(groups), len(moments.wanted)
    liquids = sorted(set(groups))
    seas = [k for k, name in enumerate(liquids) if name in exchanged]
    balance = _balance(groups, liquids, seas, 2 * rows)
    reach = np.concatenate(
        [moments.arms, -moments.arms, np.zeros((rows, 2 * len(seas))), np.eye(rows), -np.eye(rows)], axis=1
    )
    equal, to = np.concatenate([balance, reach]), np.concatenate([np.zeros(len(liquids)), moments.wanted])
    low = np.concatenate([bounds.up_least, bounds.down_least, np.zeros(2 * len(seas) + 2 * rows)])
    high = np.concatenate([bounds.up_most, bounds.down_most, np.full(2 * len(seas) + 2 * rows, np.inf)])
    pumped = np.zeros(low.size)
    pumped[:tanks] = 1.0
    pumped[2 * tanks + len(seas) : 2 * tanks + 2 * len(seas)] = 1.0
    missed = np.zeros(low.size)
    missed[-2 * rows :] = 1.0
    nearest = _solve(missed, equal, to, low, high)
    if nearest is None:
        raise OutOfRange("the tanks cannot be brought within their own least and greatest contents")
    met = float(missed @ nearest) <= MET
    high[-2 * rows :] = nearest[-2 * rows :] + MET / 10
    result = _solve(pumped, equal, to, low, high)
    if result is None:
        raise RuntimeError("the least movement was not found though a solution is known")
    return result[:tanks] - result[tanks : 2 * tanks], met


def _balance(groups: Sequence[str], liquids: Sequence[str], seas: Sequence[int], slack: int) -> Floats:
    member = np.array([[1.0 if g == name else 0.0 for g in groups] for name in liquids])
    sea = np.zeros((len(liquids), len(seas)))
    for column, row in enumerate(seas):
        sea[row, column] = 1.0
    return np.concatenate([member, -member, -sea, sea, np.zeros((len(liquids), slack))], axis=1)


def _solve(cost: Floats, equal: Floats, to: Floats, low: Floats, high: Floats) -> NDArray[np.float64] | None:
    """Make the cost least within the limits where the equations hold; None where they contradict each other."""
    import highspy  # the solver itself: scipy, which offers it too, takes half a second to import

    solver = highspy.Highs()  # type: ignore[no-untyped-call]
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("primal_feasibility_tolerance", KEPT)
    programme = highspy.HighsLp()
    programme.num_col_, programme.num_row_ = cost.size, to.size
    programme.col_cost_, programme.col_lower_, programme.col_upper_ = cost, low, high
    programme.row_lower_, programme.row_upper_ = to, to
    rows = [np.flatnonzero(row) for row in equal]
    programme.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    programme.a_matrix_.start_ = np.cumsum([0, *(row.size for row in rows)])
    programme.a_matrix_.index_ = np.concatenate(rows)
    programme.a_matrix_.value_ = np.concatenate([line[row] for line, row in zip(equal, rows, strict=True)])
    solver.passModel(programme)
    solver.run()
    status = solver.getModelStatus()
    if status == highspy.HighsModelStatus.kInfeasible:
        return None
    if status != highspy.HighsModelStatus.kOptimal:
        raise RuntimeError(f"the linear programme was not solved: {solver.modelStatusToString(status)}")
    return np.asarray(solver.getSolution().col_value, dtype=np.float64)
