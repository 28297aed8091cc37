from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.climate.dew_point import dew_point
from tenderwright.calculations.climate.workable_hours import METHOD, MonthClimate, PaintLimits, workable_hours
from tenderwright.calculations.method import OutOfRange

MAY = MonthClimate(11.0, 7.0, 0.78, 55.0, 5.0, 31)
STEADY = PaintLimits(steel_offset=0.0, humidity_spread=0.0, wind=None, rain_stops=False)

months = st.builds(
    MonthClimate, st.floats(0, 25), st.floats(0, 12), st.floats(0.3, 1.0), st.floats(0, 300), st.floats(0, 12)
)


def test_dry_warm_calm_month_is_all_workable_and_a_wet_one_not_at_all() -> None:
    assert workable_hours(MonthClimate(20.0, 8.0, 0.40, 0.0, 0.0)).share == pytest.approx(1.0)
    assert workable_hours(MonthClimate(20.0, 0.0, 1.0, 0.0, 0.0), limits=STEADY).share == 0.0
    assert workable_hours(MonthClimate(2.0, 4.0, 0.50, 0.0, 0.0)).share == 0.0


def test_without_swing_or_spread_it_is_the_paint_window_itself() -> None:
    # The dew point at 78.6 % lies 3.7 K under 12 degC; at 82.5 % 2.9 K. Both from the Magnus formula.
    for humidity in (0.786, 0.825):
        month = MonthClimate(12.0, 0.0, humidity, 0.0, 0.0)
        expected = 1.0 if 12.0 - dew_point(12.0, humidity) >= 3.0 else 0.0
        assert workable_hours(month, limits=STEADY).share == expected


def test_rain_and_wind_by_hand() -> None:
    # Derived: 72 of 720 hours wet; Rayleigh wind of mean 8 m/s is within 8 m/s for 1 - exp(-pi/4) of the time.
    month = MonthClimate(20.0, 8.0, 0.40, 72.0, 8.0)
    found = workable_hours(month)
    assert found.dry == pytest.approx(0.9)
    assert found.calm == pytest.approx(0.5441, abs=0.0001)
    assert found.share == pytest.approx(0.9 * 0.5441, abs=0.0001)
    assert found.hours == pytest.approx(found.share * 300.0)


def test_afternoon_is_better_than_morning() -> None:
    found = workable_hours(MAY)
    assert found.by_hour[14] > found.by_hour[8] > found.by_hour[4]
    assert workable_hours(MAY, 12.0, 17.0).share > workable_hours(MAY, 7.0, 12.0).share


@given(months)
def test_shares_are_shares_and_cover_never_harms(month: MonthClimate) -> None:
    found = workable_hours(month)
    covered = workable_hours(month, limits=PaintLimits(wind=None, rain_stops=False))
    assert 0.0 <= found.share <= covered.share <= 1.0
    assert ((found.by_hour >= 0.0) & (found.by_hour <= 1.0)).all()


@given(months, st.floats(0, 0.3), st.floats(0, 5))
def test_damper_air_or_stricter_limits_never_help(month: MonthClimate, damper: float, stricter: float) -> None:
    wet = replace(month, humidity=min(1.0, month.humidity + damper))
    assert workable_hours(wet).share <= workable_hours(month).share + 1e-12
    strict = PaintLimits(margin=3.0 + stricter)
    assert workable_hours(month, limits=strict).share <= workable_hours(month).share + 1e-12


@given(st.floats(0, 12), st.floats(12.1, 24))
def test_the_day_is_the_sum_of_its_parts(begin: float, end: float) -> None:
    middle = 0.5 * (begin + end)
    whole, first, second = (workable_hours(MAY, a, b).hours for a, b in ((begin, end), (begin, middle), (middle, end)))
    assert whole == pytest.approx(first + second)


def test_refuses_a_climate_that_cannot_be() -> None:
    with pytest.raises(OutOfRange, match="rain"):
        replace(MAY, rain_hours=800.0)
    with pytest.raises(OutOfRange, match="days"):
        replace(MAY, days=32)
    with pytest.raises(OutOfRange, match="humidity"):
        replace(MAY, humidity=78.0)
    with pytest.raises(OutOfRange, match="working day"):
        workable_hours(MAY, 17.0, 7.0)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(temperature=11.0, daily_range=7.0, humidity=0.78, rain=55 * 3600.0, wind=5.0, days=31)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["share"] == pytest.approx(workable_hours(MAY).share)
    assert len(outputs["by_hour"]) == 24
