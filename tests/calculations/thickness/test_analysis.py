from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.analysis import Analysis, Outlook, assess, look_ahead
from tenderwright.calculations.thickness.diminution import SOUND, SUBSTANTIAL
from tenderwright.calculations.thickness.forecast import CALLS
from tenderwright.calculations.thickness.plates import PlateGrid
from tenderwright.calculations.thickness.readings import Readings

GRID = PlateGrid((np.array([0.0, 10.0, 20.0]), np.array([0.0, 20.0])), sides=1)


FRAMES = np.array([0.0, 10.0, 20.0])


def analyse(readings: Readings, allowable: list[float], outlook: Outlook) -> Analysis:
    """Assess readings by the limits of their strakes and look ahead, frame spaces of 10 m and one zone for a strake."""
    plate = GRID.plate_of(readings.strake, readings.side, readings.x)
    assessed = assess(readings, plate, GRID.count, np.array(allowable)[readings.strake])
    return look_ahead(readings, assessed, GRID.count, outlook, readings.strake, 2, FRAMES)


def ship() -> Readings:
    """Three plates: one gauged twice and losing, one gauged of late only, one gauged long ago only."""
    return Readings(
        strake=np.array([0, 0, 0, 0, 0, 1]),
        side=np.zeros(6, np.int64),
        stage=np.zeros(6, np.int64),
        survey=np.array([0, 1, 1, 1, 1, 0]),
        x=np.array([5.0, 4.0, 6.0, 15.0, 15.0, 3.0]),
        as_built=np.full(6, 0.010),
        measured=np.array([9.5, 8.5, 8.3, 10.2, 9.8, 9.9]) / 1e3,
        year=np.array([2005.0, 2025.0, 2025.0, 2025.0, 2025.0, 2005.0]),
    )


def test_state_comes_from_the_latest_survey_and_rate_from_all() -> None:
    got = analyse(ship(), [0.20, 0.25], Outlook(docking=2027.0, interval=10.0))
    assert got.plates.plate.tolist() == [0, 1, 2]
    assert got.plates.count.tolist() == [2, 2, 1]
    assert got.plates.allowable.tolist() == [0.20, 0.20, 0.25]
    assert got.plates.above_nominal.tolist() == [0, 1, 0]
    assert got.state.tolist() == [SOUND, SOUND, SUBSTANTIAL, SOUND, SOUND, SOUND]
    assert 1e3 * got.zones[0].own[0] == pytest.approx(0.055)
    assert [CALLS[call] for call in got.call] == ["renew now, ahead of its limit", "sound", "watch"]


def test_a_place_gauged_once_takes_the_mean_of_its_neighbours() -> None:
    """The one rate of strake 0 is that of all its spaces; strake 1 has none, and takes that since she was built."""
    got = analyse(ship(), [0.20, 0.25], Outlook(docking=2027.0, interval=10.0, built=1935.0))
    places, governing = got.places, got.governing
    assert places.since_built[governing].tolist() == [False, False, True]
    assert 1e3 * places.rate[governing] == pytest.approx([0.055, 0.055, 0.1 / 70.0])
    ahead = [8.3 - 0.055 * 2, 9.8 - 0.055 * 2, 9.9 - 22 * 0.1 / 70]
    assert 1e3 * places.ahead.at_docking[governing] == pytest.approx(ahead)


def test_the_least_at_the_confidence_holds_rate_and_reading() -> None:
    """t - r T - 1.2816 sqrt((u T)² + sigma²) at 90 %, one-sided."""
    got = analyse(ship(), [0.20, 0.25], Outlook(docking=2027.0, interval=10.0, confidence=0.90))
    places, at = got.places, int(got.governing[0])
    wide = 1.281552 * np.hypot(places.uncertainty[at] * 12.0, 1e-4)
    assert places.ahead.least_at_next[at] == pytest.approx(0.0083 - 12.0 * 5.5e-5 - wide)


def test_a_rate_between_surveys_is_of_the_loss_where_the_plate_changes_in_a_frame_space() -> None:
    """Two thicknesses as built in one space: each lost 0.2 mm and then 0.2 mm more."""
    readings = Readings(
        strake=np.zeros(4, np.int64),
        side=np.zeros(4, np.int64),
        stage=np.zeros(4, np.int64),
        survey=np.array([0, 1, 1, 1]),
        x=np.array([4.0, 4.0, 6.0, 6.0]),
        as_built=np.array([0.010, 0.010, 0.012, 0.012]),
        measured=np.array([9.8, 9.6, 11.6, 11.6]) / 1e3,
        year=np.array([2005.0, 2025.0, 2025.0, 2025.0]),
    )
    got = analyse(readings, [0.20, 0.25], Outlook(docking=2027.0, interval=10.0))
    assert 1e3 * got.zones[0].own[0] == pytest.approx(0.01)


def test_ten_thousand_readings_agree_with_a_plain_loop() -> None:
    rng = np.random.default_rng(5)
    count = 10_000
    survey = rng.integers(0, 2, count)
    readings = Readings(
        strake=rng.integers(0, 2, count),
        side=np.zeros(count, np.int64),
        stage=np.zeros(count, np.int64),
        survey=survey,
        x=rng.uniform(0.0, 20.0, count),
        as_built=np.full(count, 0.010),
        measured=rng.normal(0.0095, 0.0006, count) - 0.0005 * survey,
        year=np.array([2007.0, 2025.0])[survey],
    )
    got = analyse(readings, [0.15, 0.20], Outlook(docking=2027.0, interval=5.0))
    for row, plate in enumerate(got.plates.plate.tolist()):
        mine = got.plate == plate
        late = readings.measured[mine & (survey == 1)]
        early = readings.measured[mine & (survey == 0)]
        assert got.plates.count[row] == late.size
        assert got.plates.mean[row] == pytest.approx(late.mean())
        assert got.plates.least[row] == late.min()
        allowed = 0.20 if plate == 2 else 0.15
        assert got.plates.share_renew[row] == pytest.approx((late < 0.010 * (1.0 - allowed)).mean())
        if plate < 2:  # a plate of one frame space
            assert got.zones[0].own[plate] == pytest.approx((early.mean() - late.mean()) / 18.0)


def test_refuses_surveys_before_the_build_and_a_confidence_that_is_none() -> None:
    with pytest.raises(OutOfRange, match="before the ship"):
        analyse(ship(), [0.2, 0.2], Outlook(2027.0, 10.0, built=2010.0))
    with pytest.raises(OutOfRange, match="time to the docking"):
        analyse(ship(), [0.2, 0.2], Outlook(2020.0, 10.0))
    with pytest.raises(OutOfRange, match="confidence"):
        analyse(ship(), [0.2, 0.2], Outlook(2027.0, 10.0, confidence=0.3))
