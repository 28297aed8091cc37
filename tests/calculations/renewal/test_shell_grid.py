from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.shell_grid import ShellGrid

FRAMES = np.array([0.0, 0.5, 1.0, 1.6])


def test_cells_are_marked_by_strake_and_bay() -> None:
    grid = ShellGrid(FRAMES, np.array([0.0, 1.0, 2.2]))
    marked = grid.cells(np.array([0, 1, 1]), np.array([0.1, 0.5, 1.6]))
    assert marked.tolist() == [[True, False, False], [False, True, True]]
    assert (grid.strakes, grid.bays) == (2, 3)


def test_breadth_is_the_mean_along_the_bays_where_she_narrows() -> None:
    narrowing = ShellGrid(FRAMES, np.array([[0.0, 0.0, 0.0], [1.0, 0.8, 0.5]]))
    assert narrowing.breadth(0, 1, 0, 2) == pytest.approx(0.9)
    assert narrowing.breadth(0, 1, 1, 3) == pytest.approx((0.8 * 0.5 + 0.5 * 0.6) / 1.1)
    assert ShellGrid(FRAMES, np.array([0.0, 1.0, 2.2])).breadth(0, 2, 0, 3) == pytest.approx(2.2)


def test_refuses_what_is_no_grid() -> None:
    with pytest.raises(OutOfRange, match="frames"):
        ShellGrid(FRAMES[::-1], np.array([0.0, 1.0]))
    with pytest.raises(OutOfRange, match="seams must rise"):
        ShellGrid(FRAMES, np.array([1.0, 0.0]))
    with pytest.raises(OutOfRange, match="each frame bay"):
        ShellGrid(FRAMES, np.array([[0.0], [1.0]]))
    with pytest.raises(OutOfRange, match="beyond the frames"):
        ShellGrid(FRAMES, np.array([0.0, 1.0])).bay_of(np.array([1.7]))
    with pytest.raises(OutOfRange, match="strake"):
        ShellGrid(FRAMES, np.array([0.0, 1.0])).cells(np.array([1]), np.array([0.1]))
