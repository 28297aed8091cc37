"""A rigid body on springs that cannot pull: the plane in which it settles and what each spring carries."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike, NDArray

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange

ROUNDS = 100


class Bearing(Struct, frozen=True, eq=False):
    """What each spring carries and which of them bear."""

    reaction: Floats
    """In the unit of the load, shape (n,)."""
    bears: NDArray[np.bool_]
    rounds: int


def on_springs(
    load: float,
    at: ArrayLike,
    places: ArrayLike,
    stiffness: ArrayLike,
    preload: ArrayLike = 0.0,
    rocking: ArrayLike = 0.0,
) -> Bearing:
    """Share a load between springs under a rigid body, dropping and taking up springs until none pulls.

    Formula: R_i = R0_i + k_i (w + sum_a g_a r_ia) >= 0, with sum R = load, sum R r + sum g m = load * at; a spring that
        would pull is dropped, one that the body comes down on is taken up again.
    Symbols: load; `at` its place (axes,) [m]; places r (n, axes) [m]; stiffness k (n,), on any common scale; preload R0
        (n,); rocking m (n, axes), each spring's own stiffness against rotation along each axis [k m2].
    Source: statics of a rigid body on elastic supports (derived).
    Raises OutOfRange where the load does not stand within its supports.
    """
    r = np.asarray(places, dtype=np.float64)
    r = r[:, None] if r.ndim == 1 else r
    k = np.asarray(stiffness, dtype=np.float64)
    centre = np.average(r, axis=0, weights=k)
    arms = np.column_stack([np.ones(len(r)), r - centre])
    wanted = load * np.append(1.0, np.asarray(at, dtype=np.float64) - centre)
    first = np.broadcast_to(np.asarray(preload, dtype=np.float64), k.shape)
    own = np.broadcast_to(np.asarray(rocking, dtype=np.float64), r.shape)
    bears = np.ones(len(k), dtype=np.bool_)
    seen: set[bytes] = set()
    for done in range(1, ROUNDS + 1):
        held = np.where(bears, k, 0.0)
        matrix = (arms * held[:, None]).T @ arms
        matrix[1:, 1:] += np.diag((own * bears[:, None]).sum(axis=0))
        if np.linalg.matrix_rank(matrix, tol=1e-10 * float(np.abs(matrix).max())) < len(wanted):
            break
        moved = np.linalg.solve(matrix, wanted - (first * bears) @ arms)
        reaction = first + k * (arms @ moved)
        now = reaction > 0.0
        if np.array_equal(now, bears):
            return Bearing(np.where(bears, reaction, 0.0), bears, done)
        bears = next_bearing(bears, now, reaction, seen)
    raise OutOfRange("the load does not stand within its supports: no share without pull was found")


def next_bearing(
    bears: NDArray[np.bool_], now: NDArray[np.bool_], reaction: Floats, seen: set[bytes]
) -> NDArray[np.bool_]:
    """Choose which supports bear in the next round: all that push, or, where that set comes round again, one fewer."""
    if now.tobytes() not in seen:
        seen.add(now.tobytes())
        return now
    left = bears.copy()
    left[int(np.argmin(np.where(bears, reaction, np.inf)))] = False
    return left
