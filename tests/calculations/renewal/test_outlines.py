from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.outlines import Outline, OutlineRules, insert_outlines, outline_area
from tenderwright.calculations.renewal.shell_grid import ShellGrid

GRID = ShellGrid(np.linspace(0.0, 7.2, 13), np.linspace(0.0, 5.5, 6))
"""Twelve bays of 0.6 m by five strakes of 1.1 m."""


def cells(*marked: tuple[int, int], grid: ShellGrid = GRID) -> np.ndarray:
    bad = np.zeros((grid.strakes, grid.bays), np.bool_)
    for strake, bay in marked:
        bad[strake, bay] = True
    return bad


def test_one_bad_cell_makes_an_insert_of_one_frame_space_and_one_strake() -> None:
    # USCG NVIC 7-68: one frame space at least, cut on existing seams.
    assert insert_outlines(GRID, cells((2, 4))) == (Outline(2, 3, 4, 5),)


def test_neighbours_become_one_and_far_ones_stay_apart() -> None:
    found = insert_outlines(GRID, cells((2, 4), (2, 5), (3, 4), (3, 5), (0, 10)))
    assert found == (Outline(0, 1, 10, 11), Outline(2, 4, 4, 6))


def test_a_gap_of_one_bay_is_bridged_only_where_little_sound_plate_goes() -> None:
    assert insert_outlines(GRID, cells((1, 2), (1, 4))) == (Outline(1, 2, 2, 3), Outline(1, 2, 4, 5))
    long_runs = cells(*((1, bay) for bay in (0, 1, 2, 4, 5, 6)))
    assert insert_outlines(GRID, long_runs) == (Outline(1, 2, 0, 7),)


def test_cells_that_meet_at_a_corner_only_stay_two() -> None:
    assert len(insert_outlines(GRID, cells((1, 2), (2, 3)), OutlineRules(waste=9.0))) == 2


def test_narrow_bays_and_strakes_grow_to_three_hundred_millimetres() -> None:
    # IACS Recommendation 47, Part B (from memory): 300 x 300 mm.
    narrow = ShellGrid(np.linspace(0.0, 2.0, 11), np.linspace(0.0, 1.0, 6))
    (found,) = insert_outlines(narrow, cells((4, 0), grid=narrow))
    assert narrow.length(found.aft, found.forward) == pytest.approx(0.4)
    assert narrow.breadth(found.lower, found.upper, found.aft, found.forward) == pytest.approx(0.4)
    (middle,) = insert_outlines(narrow, cells((2, 5), grid=narrow), OutlineRules(least_bays=3))
    assert (middle.aft, middle.forward) == (4, 7)


@given(arrays(np.bool_, (5, 12)), st.sampled_from([0.0, 0.25, 1.0]), st.integers(1, 3))
def test_every_bad_cell_is_renewed_once_and_no_plate_twice(bad: np.ndarray, waste: float, least: int) -> None:
    found = insert_outlines(GRID, bad, OutlineRules(least_bays=least, waste=waste))
    renewed = np.zeros(bad.shape, np.int64)
    for outline in found:
        renewed[outline.lower : outline.upper, outline.aft : outline.forward] += 1
        assert len(outline.bays) >= least
    assert renewed.max(initial=0) <= 1
    assert (renewed[bad] == 1).all()
    assert sum(outline_area(GRID, outline) for outline in found) == pytest.approx(renewed.sum() * 0.66)


@given(arrays(np.bool_, (5, 12)))
def test_without_waste_or_growth_only_bad_plate_is_renewed(bad: np.ndarray) -> None:
    found = insert_outlines(GRID, bad, OutlineRules(waste=0.0))
    assert sum(outline_area(GRID, outline) for outline in found) == pytest.approx(bad.sum() * 0.66)


@given(arrays(np.bool_, (5, 12)), st.integers(0, 4), st.integers(0, 11))
def test_one_more_bad_cell_is_covered_too(bad: np.ndarray, strake: int, bay: int) -> None:
    bad[strake, bay] = True
    assert any(strake in o.strakes and bay in o.bays for o in insert_outlines(GRID, bad))


def test_sound_plate_asks_for_nothing_and_a_wrong_shape_is_refused() -> None:
    assert insert_outlines(GRID, cells()) == ()
    with pytest.raises(OutOfRange, match="strakes by"):
        insert_outlines(GRID, np.zeros((2, 2), np.bool_))
    with pytest.raises(OutOfRange, match="least"):
        OutlineRules(least_bays=0)
    with pytest.raises(OutOfRange, match="whole length"):
        insert_outlines(ShellGrid(np.array([0.0, 0.2]), np.array([0.0, 1.0])), np.ones((1, 1), np.bool_))
