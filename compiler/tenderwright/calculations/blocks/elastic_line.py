"""The keel line as an elastic beam on separate blocks that cannot pull."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike, NDArray

from tenderwright.calculations.blocks.block_tridiagonal import solve_block_tridiagonal
from tenderwright.calculations.blocks.plane import next_bearing
from tenderwright.calculations.distinct import distinct
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange

ROUNDS = 60


class Girder(Struct, frozen=True, eq=False):
    """The hull girder as a beam of bays between nodes, with its loads; SI, forces in N, down positive."""

    nodes: Floats
    """x of the n nodes [m], rising; every block and every force stands on one."""
    bending_stiffness: Floats
    """EI of each bay [N m2], shape (n - 1,)."""
    load_aft: Floats
    """Load per length at the after end of each bay [N/m], shape (n - 1,); linear to its fore end."""
    load_forward: Floats
    forces: Floats
    """At the nodes [N], shape (n,)."""


class KeelLine(Struct, frozen=True, eq=False):
    """The keel line in equilibrium, by node."""

    nodes: Floats
    deflection: Floats
    """Down [m], shape (n,)."""
    moment: Floats
    """Sagging [N m], shape (n,)."""
    reactions: Floats
    """Of each block, in their order [N]; 0 where the hull has lifted off."""
    bears: NDArray[np.bool_]
    rounds: int


def girder(nodes: ArrayLike, bending_stiffness: ArrayLike, load: ArrayLike = 0.0, forces: ArrayLike = 0.0) -> Girder:
    """Make a checked girder; EI one or by bay, load [N/m] one or by node (linear between), forces one or by node.

    Raises OutOfRange.
    """
    x = np.asarray(nodes, dtype=np.float64)
    if x.ndim != 1 or x.size < 2 or np.any(np.diff(x) <= 0):
        raise OutOfRange("the girder needs at least two nodes, each forward of the one before")
    ei = np.broadcast_to(np.asarray(bending_stiffness, dtype=np.float64), (x.size - 1,))
    q = np.broadcast_to(np.asarray(load, dtype=np.float64), x.shape)
    f = np.broadcast_to(np.asarray(forces, dtype=np.float64), x.shape)
    return checked(Girder(x, ei, q[:-1], q[1:], f))


def checked(one: Girder) -> Girder:
    """Give a girder back if its figures can be reckoned with; raises OutOfRange."""
    everything = (one.nodes, one.bending_stiffness, one.load_aft, one.load_forward, one.forces)
    if not all(np.all(np.isfinite(v)) for v in everything) or np.any(one.bending_stiffness <= 0):
        raise OutOfRange("the loads must be finite numbers and EI more than nothing")
    return one


def elastic_keel_line(
    hull: Girder,
    blocks: ArrayLike,
    stiffness: ArrayLike,
    gaps: ArrayLike = 0.0,
    can_pull: bool = False,
) -> KeelLine:
    """Find how an elastic hull girder stands on its blocks.

    Formula: slope without kink at each node by the three-moment equation, with y down and M sagging,
        -(h1 M1 + 2(h1 + h2) M2 + h2 M3)/(6 EI) - y1/h1 + (1/h1 + 1/h2) y2 - y3/h2 = end slopes of the loaded bays;
        and at each node force + bay loads + (M3 - M2)/h2 - (M2 - M1)/h1 = k (y2 - gap), moments nothing at the ends.
        Blocks that would pull are dropped and those that the hull comes down on taken up until none changes, but where
        `can_pull` says that they hold her down too.
    Symbols: blocks, indices of nodes (b,); stiffness k [N/m], one or (b,); gaps by which a block stands low [m].
    Source: Clapeyron's equation of three moments on elastic supports (derived); solved in blocks of (M, y).
    Range: small deflections, no shear deflection. Raises OutOfRange where she does not stand.
    """
    at = np.asarray(blocks, dtype=np.intp)
    k = np.broadcast_to(np.asarray(stiffness, dtype=np.float64), at.shape)
    low = np.broadcast_to(np.asarray(gaps, dtype=np.float64), at.shape)
    if at.size < 2 or distinct(at).size < at.size or at.min() < 0 or at.max() >= hull.nodes.size:
        raise OutOfRange("she needs at least two blocks, each on a node of its own")
    if np.any(k <= 0):
        raise OutOfRange("every block's stiffness must be more than nothing")
    lower, middle, upper, right = _assemble(hull)
    bears = np.ones(at.size, dtype=np.bool_)
    seen: set[bytes] = set()
    for done in range(1, ROUNDS + 1):
        d, r = middle.copy(), right.copy()
        held = np.where(bears, k, 0.0)
        d[at, 1, 1] += held
        r[at, 1] += held * low
        x = _solved(lower, d, upper, r)
        down = x[at, 1] - low
        now = bears if can_pull else down > 0.0
        if np.array_equal(now, bears):
            return KeelLine(hull.nodes, x[:, 1], x[:, 0], held * down, bears, done)
        if np.count_nonzero(now) < 2:
            break
        bears = next_bearing(bears, now, k * down, seen)
    raise OutOfRange("she does not stand on these blocks: no share of the load without pull was found")


def _solved(lower: Floats, middle: Floats, upper: Floats, right: Floats) -> Floats:
    try:
        return solve_block_tridiagonal(lower, middle, upper, right)
    except np.linalg.LinAlgError as error:
        raise OutOfRange("blocks and girder differ so much in stiffness that the loads cannot be found") from error


def _assemble(hull: Girder) -> tuple[Floats, Floats, Floats, Floats]:
    """Assemble the equations without blocks: unknowns (M, y) at each node."""
    n, h, ei = hull.nodes.size, np.diff(hull.nodes), hull.bending_stiffness
    qa, qf = hull.load_aft, hull.load_forward
    lower, middle, upper = np.zeros((n, 2, 2)), np.zeros((n, 2, 2)), np.zeros((n, 2, 2))
    right = np.zeros((n, 2))
    flex = h / (6 * ei)
    for between, side in ((upper[:-1], slice(None, -1)), (lower[1:], slice(1, None))):
        between[:, 0, 0] = -flex
        between[:, 0, 1] = between[:, 1, 0] = -1 / h
        middle[side, 0, 0] -= 2 * flex
        middle[side, 0, 1] += 1 / h
        middle[side, 1, 0] += 1 / h
    right[:-1, 0] += h**3 * (8 * qa + 7 * qf) / (360 * ei)
    right[1:, 0] += h**3 * (7 * qa + 8 * qf) / (360 * ei)
    right[:, 1] = hull.forces
    right[:-1, 1] += h * (2 * qa + qf) / 6
    right[1:, 1] += h * (qa + 2 * qf) / 6
    for end, between in ((0, upper), (-1, lower)):
        middle[end, 0, 1] = right[end, 0] = 0.0
        between[end, 0] = 0.0
    return lower, middle, upper, right
