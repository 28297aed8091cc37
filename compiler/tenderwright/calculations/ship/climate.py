"""The share of working hours in which paint may be put on, month by month, at the place of the dock."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.climate.dew_point import METHOD as DEW_POINT
from tenderwright.calculations.climate.workable_hours import (
    HUMIDITY_SPREAD,
    LEAST_STEEL,
    STEEL_OFFSET,
    Workable,
)
from tenderwright.calculations.climate.workable_hours import METHOD as WORKABLE
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.ship_condition import Climate, Month, ShipCondition
from tenderwright.model.tender import Programme, Tender
from tenderwright.quantities.display import plainly

_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
_OPEN = {"share": "workable-share", "hours": "workable-hours"}
_COVER = {"share": "workable-share-under-cover"}
_DEW = {"dew_point": "dew-point"}
_USUAL = "common practice, no source"


class MonthOutlook(Struct, frozen=True):
    """How much of a month's working hours paint may be put on."""

    month: Month
    dew_point: float
    """At the mean of temperature and humidity, degC."""
    open: Workable
    cover: Workable


@step()
def climate(condition: ShipCondition | None) -> Climate | Absent:
    """Give the climate of the place where she is docked."""
    if condition is None or condition.climate is None:
        return Lacking("it needs `climate` in vessel/condition.yaml")
    return condition.climate


@step()
def programme(tender: Tender) -> Programme | Absent:
    """Give the planned days of the docking."""
    return tender.programme or Lacking("the days under `programme` in package.yaml are still `todo`")


@step()
def docking_month(climate: Climate, programme: Programme) -> Month | Absent:
    """Give the month of docking."""
    docking = programme.docking.month
    found = next((month for month in climate.months if month.month == docking), None)
    return found or Lacking(f"vessel/condition.yaml has no climate of month {docking}")


@step()
def other_months(climate: Climate, programme: Programme) -> dict[str, Month]:
    """Give the months beside that of docking."""
    docking = programme.docking.month
    return {f"month-{month.month}": month for month in climate.months if month.month != docking}


@step_of(WORKABLE, "climate", names=_OPEN)
def docking_month_open(docking_month: Month, climate: Climate) -> Uses:
    """Find how much of the month of docking is workable in the open."""
    return _workable(docking_month, climate, under_cover=False)


@step_of(WORKABLE, "climate", names=_COVER)
def docking_month_cover(docking_month: Month, climate: Climate) -> Uses:
    """Find how much of the month of docking is workable under cover."""
    return _workable(docking_month, climate, under_cover=True)


@step_of(DEW_POINT, "climate", names=_DEW)
def docking_month_dew_point(docking_month: Month, climate: Climate) -> Uses:
    """Find the dew point at the means of the month of docking."""
    return _dew_point(docking_month, climate)


@step_of(WORKABLE, "climate.{}", names=_OPEN, each="other_months")
def month_open(month: Month, climate: Climate) -> Uses:
    """Find how much of a month is workable in the open."""
    return _workable(month, climate, under_cover=False)


@step_of(WORKABLE, "climate.{}", names=_COVER, each="other_months")
def month_cover(month: Month, climate: Climate) -> Uses:
    """Find how much of a month is workable under cover."""
    return _workable(month, climate, under_cover=True)


@step_of(DEW_POINT, "climate.{}", names=_DEW, each="other_months")
def month_dew_point(month: Month, climate: Climate) -> Uses:
    """Find the dew point at the means of a month."""
    return _dew_point(month, climate)


@step()
def month_outlooks(
    climate: Climate,
    docking_month_open: Workable | None,
    docking_month_cover: Workable | None,
    docking_month_dew_point: Mapping[str, Any] | None,
    month_open: Each[Workable],
    month_cover: Each[Workable],
    month_dew_point: Each[Mapping[str, Any]],
) -> tuple[MonthOutlook, ...] | Absent:
    """Give every month with what it allows, in the order of the package."""
    absent = month_open.first_absent() or month_cover.first_absent() or month_dew_point.first_absent()
    if absent is not None:
        return absent
    made = []
    for month in climate.months:
        key = f"month-{month.month}"
        if key in month_open:
            made.append(MonthOutlook(month, month_dew_point[key]["dew_point"], month_open[key], month_cover[key]))
        elif docking_month_open and docking_month_cover and docking_month_dew_point:
            dew = docking_month_dew_point["dew_point"]
            made.append(MonthOutlook(month, dew, docking_month_open, docking_month_cover))
    return tuple(made)


def _workable(month: Month, climate: Climate, *, under_cover: bool) -> Uses:
    days = _DAYS[month.month - 1]
    inputs = {
        "temperature": given(month.mean),
        "daily_range": Given(month.range, plainly(month.range, "temperature difference"), month.here),
        "humidity": given(month.humidity),
        "rain": given(month.rain),
        "wind": given(month.wind),
        "days": Given(days, f"{days}", "calendar"),
        "begin": Given(climate.day_begins, f"{climate.day_begins:g} h", climate.here),
        "end": Given(climate.day_ends, f"{climate.day_ends:g} h", climate.here),
        "under_cover": Given(under_cover, "yes" if under_cover else "no", "where the work is done"),
        "steel_offset": Given(STEEL_OFFSET, plainly(STEEL_OFFSET, "temperature difference"), _USUAL),
        "least_steel": Given(LEAST_STEEL, plainly(LEAST_STEEL, "temperature"), _USUAL),
        "humidity_spread": Given(HUMIDITY_SPREAD, f"{HUMIDITY_SPREAD:.0%}", _USUAL),
    }
    where = "under cover" if under_cover else "in the open"
    return Uses(f"{_about(month, climate)}, {where}: {climate.source}", inputs, month.here)


def _dew_point(month: Month, climate: Climate) -> Uses:
    inputs = {"temperature": given(month.mean), "humidity": given(month.humidity)}
    return Uses(f"{_about(month, climate)}, at the means: {climate.source}", inputs, month.here)


def _about(month: Month, climate: Climate) -> str:
    return f"{climate.place}, month {month.month}"
