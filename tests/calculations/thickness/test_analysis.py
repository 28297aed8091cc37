from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.analysis import Outlook, analyse
from tenderwright.calculations.thickness.diminution import SOUND, SUBSTANTIAL
from tenderwright.calculations.thickness.forecast import CALLS
from tenderwright.calculations.thickness.plates import PlateGrid
from tenderwright.calculations.thickness.readings import Readings

GRID = PlateGrid((np.array([0.0, 10.0, 20.0]), np.array([0.0, 20.0])), sides=1)


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
    got = analyse(ship(), GRID, np.array([0.20, 0.25]), Outlook(docking=2027.0, interval=10.0))
    assert got.plates.plate.tolist() == [0, 1, 2]
    assert got.plates.count.tolist() == [2, 2, 1]
    assert got.plates.allowable.tolist() == [0.20, 0.20, 0.25]
    assert got.plates.above_nominal.tolist() == [0, 1, 0]
    assert got.state.tolist() == [SOUND, SOUND, SUBSTANTIAL, SOUND, SOUND, SOUND]
    assert 1e3 * got.rate.rate[0] == pytest.approx(0.055)
    assert np.isnan(got.rate_used[1:]).all()
    assert [CALLS[call] for call in got.ahead.call] == ["renew at the next docking", "watch", "watch"]


def test_each_plate_is_forecast_from_its_own_survey() -> None:
    got = analyse(ship(), GRID, np.array([0.20, 0.25]), Outlook(docking=2027.0, interval=10.0, built=1935.0))
    assert got.since_built.tolist() == [False, True, True]
    assert 1e3 * got.rate_used[1:] == pytest.approx([0.1 / 90.0, 0.1 / 70.0])
    assert 1e3 * got.ahead.at_docking == pytest.approx([8.3 - 0.055 * 2, 9.8 - 2 * 0.1 / 90, 9.9 - 22 * 0.1 / 70])


def test_basis_of_the_mean_counts_readings_above_nominal_as_nominal() -> None:
    outlook = Outlook(docking=2025.0, interval=0.0, basis="mean")
    got = analyse(ship(), GRID, np.full(6, 0.20), outlook)
    assert 1e3 * got.ahead.at_docking[:2] == pytest.approx([8.4, 9.9])


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
    got = analyse(readings, GRID, np.array([0.15, 0.20]), Outlook(docking=2027.0, interval=5.0))
    for row, plate in enumerate(got.plates.plate.tolist()):
        mine = got.plate == plate
        late = readings.measured[mine & (survey == 1)]
        early = readings.measured[mine & (survey == 0)]
        assert got.plates.count[row] == late.size
        assert got.plates.mean[row] == pytest.approx(late.mean())
        assert got.plates.least[row] == late.min()
        allowed = 0.20 if plate == 2 else 0.15
        assert got.plates.share_renew[row] == pytest.approx((late < 0.010 * (1.0 - allowed)).mean())
        assert got.rate.rate[row] == pytest.approx((early.mean() - late.mean()) / 18.0)


def test_refuses_allowances_that_fit_nothing_and_surveys_before_the_build() -> None:
    with pytest.raises(OutOfRange, match="each strake"):
        analyse(ship(), GRID, np.full(3, 0.2), Outlook(2027.0, 10.0))
    with pytest.raises(OutOfRange, match="before the ship"):
        analyse(ship(), GRID, np.full(2, 0.2), Outlook(2027.0, 10.0, built=2010.0))
    with pytest.raises(OutOfRange, match="time to the docking"):
        analyse(ship(), GRID, np.full(2, 0.2), Outlook(2020.0, 10.0))
