from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.diminution import classify, diminution
from tenderwright.calculations.thickness.plates import OUTSIDE, PlateGrid, bay_of, summarise_plates

GRID = PlateGrid((np.array([0.0, 5.0, 12.0]), np.array([2.0, 10.0])))


def test_a_plate_is_a_run_of_a_strake_on_one_side() -> None:
    strake = np.array([0, 0, 0, 0, 1, 1, 1, 0])
    side = np.array([0, 0, 0, 0, 0, 0, 1, 1])
    x = np.array([0.0, 4.9, 5.0, 12.0, 1.0, 10.0, 3.0, 6.0])
    assert GRID.plate_of(strake, side, x).tolist() == [0, 0, 1, 1, OUTSIDE, 2, 5, 4]
    assert GRID.count == 6


@given(
    st.lists(st.floats(-50.0, 50.0), min_size=2, max_size=40, unique=True).map(sorted),
    st.lists(st.tuples(st.integers(0, 39), st.floats(0.0, 1.0))),
)
def test_a_place_lies_in_the_space_that_a_search_finds(ends: list[float], shares: list[tuple[int, float]]) -> None:
    """At the ends themselves and between them, however unevenly they are spaced."""
    frames = np.array(ends)
    spaces = [(ends[at % (len(ends) - 1)], ends[at % (len(ends) - 1) + 1]) for at, _ in shares]
    x = np.array([*ends, *(low + share * (high - low) for (low, high), (_, share) in zip(spaces, shares, strict=True))])
    x = np.clip(x, ends[0], ends[-1])
    wanted = np.minimum(np.searchsorted(frames, x, side="right") - 1, len(ends) - 2)
    assert bay_of(frames, x).tolist() == wanted.tolist()


@pytest.mark.parametrize("x", [-0.1, 12.1, -1e9, 1e9])
def test_a_place_beyond_the_frames_is_refused(x: float) -> None:
    with pytest.raises(OutOfRange, match="beyond the frames"):
        bay_of(np.array([0.0, 0.6, 12.0]), np.array([0.3, x]))


def test_a_plate_knows_its_place() -> None:
    strake, side, aft, forward = GRID.place_of(np.array([1, 2, 5]))
    assert strake.tolist() == [0, 1, 1]
    assert side.tolist() == [0, 0, 1]
    assert aft.tolist() == [5.0, 2.0, 2.0]
    assert forward.tolist() == [12.0, 10.0, 10.0]


def test_summary_of_one_plate_by_hand() -> None:
    measured = np.array([10.0, 9.0, 8.0, 7.0, 11.0]) / 1e3
    built = np.full(5, 0.010)
    found = diminution(built, measured)
    state = classify(found.fraction, 0.25)
    plate = np.array([3, 3, 3, 3, OUTSIDE])
    got = summarise_plates(plate, 6, built, measured, found, state, 0.25)
    assert got.plate.tolist() == [3]
    assert got.count.tolist() == [4]
    assert got.mean[0] == pytest.approx(8.5e-3)
    assert got.least[0] == pytest.approx(7.0e-3)
    assert got.mean_diminution[0] == pytest.approx(0.15)
    assert got.greatest_diminution[0] == pytest.approx(0.30)
    assert (got.share_renew[0], got.share_substantial[0]) == (0.25, 0.5)
    assert got.above_nominal.tolist() == [0]


@given(st.integers(0, 2**32 - 1), st.integers(1, 200))
def test_plates_share_out_all_readings(seed: int, count: int) -> None:
    rng = np.random.default_rng(seed)
    grid = PlateGrid((np.linspace(0.0, 4.8, 9),) * 4)
    strake, side = rng.integers(0, 4, count), rng.integers(0, 2, count)
    plate = grid.plate_of(strake, side, rng.uniform(0.0, 4.8, count))
    built, measured = np.full(count, 0.010), rng.uniform(0.006, 0.011, count)
    found = diminution(built, measured)
    got = summarise_plates(plate, grid.count, built, measured, found, classify(found.fraction, 0.2), 0.2)
    assert got.count.sum() == count
    assert (got.mean * got.count).sum() == pytest.approx(measured.sum())
    assert got.least.min() == measured.min()
    assert (got.least <= got.mean + 1e-12).all()
    assert got.above_nominal.sum() == found.above_nominal.sum()
    back_strake, back_side, aft, forward = grid.place_of(plate)
    assert (back_strake == strake).all()
    assert (back_side == side).all()
    assert (aft < forward).all()


def test_refuses_edges_that_do_not_rise_and_strakes_that_are_not() -> None:
    with pytest.raises(OutOfRange, match="rise"):
        PlateGrid((np.array([1.0, 0.0]),))
    with pytest.raises(OutOfRange, match="strake"):
        GRID.plate_of(np.array([2]), np.array([0]), np.array([3.0]))
    with pytest.raises(OutOfRange, match="side"):
        GRID.plate_of(np.array([0]), np.array([2]), np.array([3.0]))
