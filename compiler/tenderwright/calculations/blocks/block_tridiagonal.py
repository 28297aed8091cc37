"""Solution of equations whose matrix is block tridiagonal, by reduction of every other block at once."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.hydrostatics.simpson import Floats


def solve_block_tridiagonal(lower: Floats, middle: Floats, upper: Floats, right: Floats) -> Floats:
    """Solve L_i x_(i-1) + D_i x_i + U_i x_(i+1) = r_i for all blocks x_i.

    Formula: odd-even (cyclic) reduction: every odd block but the last is taken out by
        x_i = D_i^-1 (r_i - L_i x_(i-1) - U_i x_(i+1)), which leaves a system of the same form for the others.
    Symbols: L, D, U shape (n, m, m), L_0 and U_(n-1) not read; r shape (n, m). Gives x, shape (n, m).
    Source: Golub and Van Loan, Matrix Computations, on cyclic reduction (from memory).
    Range: every D_i met on the way can be inverted, but for the first and the last block, which stay to the end.
    Raises numpy's LinAlgError otherwise.
    """
    n, m = right.shape
    if n <= 2:
        return _dense(lower, middle, upper, right)
    count = (n - 1) // 2
    odd, kept = slice(1, 2 * count, 2), np.append(np.arange(0, 2 * count, 2), np.arange(2 * count, n))
    # One call gives D^-1 [L U r] of every odd block.
    known = np.concatenate([lower[odd], upper[odd], right[odd, :, None]], axis=2)
    reduced = np.linalg.solve(middle[odd], known)
    to_forward = upper[kept[:count]] @ reduced
    to_aft = lower[kept[1 : count + 1]] @ reduced
    new_lower, new_middle, new_upper, new_right = lower[kept], middle[kept], upper[kept], right[kept]
    before, after = slice(0, count), slice(1, count + 1)
    new_middle[before] -= to_forward[:, :, :m]
    new_upper[before] = -to_forward[:, :, m:-1]
    new_right[before] -= to_forward[:, :, -1]
    new_middle[after] -= to_aft[:, :, m:-1]
    new_lower[after] = -to_aft[:, :, :m]
    new_right[after] -= to_aft[:, :, -1]
    x = np.empty((n, m))
    x[kept] = solve_block_tridiagonal(new_lower, new_middle, new_upper, new_right)
    beside = np.concatenate([x[kept[before]], x[kept[after]]], axis=1)
    x[odd] = reduced[:, :, -1] - (reduced[:, :, :-1] @ beside[..., None])[..., 0]
    return x


def _dense(lower: Floats, middle: Floats, upper: Floats, right: Floats) -> Floats:
    """Solve one or two blocks as one matrix."""
    n, m = right.shape
    matrix = middle[0] if n == 1 else np.block([[middle[0], upper[0]], [lower[1], middle[1]]])
    return np.asarray(np.linalg.solve(matrix, right.ravel()), dtype=np.float64).reshape(n, m)
