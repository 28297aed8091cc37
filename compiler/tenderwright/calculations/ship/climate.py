"""The share of working hours in which paint may be put on, month by month, at the place of the dock."""

from __future__ import annotations

from tenderwright.calculations.climate.dew_point import dew_point
from tenderwright.calculations.climate.workable_hours import METHOD as WORKABLE
from tenderwright.calculations.climate.workable_hours import (
    MonthClimate,
    PaintLimits,
    workable_hours,
)
from tenderwright.calculations.condition_results import MonthOutlook
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package
from tenderwright.model.ship_condition import Climate, Month

_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
_OPEN = {"share": "workable-share", "hours": "workable-hours"}
_COVER = {"share": "workable-share-under-cover"}
COVER = PaintLimits(wind=None, rain_stops=False)


def climate_values(package: Package, results: Results, record: Record) -> None:
    """Keep the workable share of the month of docking, in the open and under cover; the rest are for the page."""
    condition, tender = package.condition, package.tender
    names = [f"climate.{name}" for name in (*_OPEN.values(), *_COVER.values())]
    if condition is None or condition.climate is None or tender is None:
        broken = "vessel/condition.yaml" in package.broken.files or tender is None
        kept = record.failed if broken else record.missing
        kept |= dict.fromkeys(names, "it needs `climate` in vessel/condition.yaml")
        return
    climate, made = condition.climate, []
    for month in climate.months:
        try:
            figures = _figures(month)
            made.append(_outlook(month, figures, climate))
        except OutOfRange as error:
            record.fail(WORKABLE, f"climate.month-{month.month}", str(error), month.here)
    results.condition.months = tuple(made)
    docking = tender.programme.docking.month
    outlook = next((one for one in made if one.month == docking), None)
    written = next((one for one in climate.months if one.month == docking), None)
    if outlook is None or written is None:
        record.missing |= dict.fromkeys(names, f"vessel/condition.yaml has no climate of month {docking}")
        return
    inputs = {
        "temperature": given(written.mean),
        "range": Given(written.range, f"{written.range:g} K", written.here),
        "humidity": given(written.humidity),
        "rain": given(written.rain),
        "wind": given(written.wind),
        "working day": Given(None, f"{climate.day_begins:g} h to {climate.day_ends:g} h", climate.here),
        "source": Given(None, climate.source, climate.here),
    }
    about = f"{climate.place}, month {docking}"
    outputs = {"share": outlook.open.share, "hours": 3600.0 * outlook.open.hours}
    record.keep(WORKABLE, "climate", f"{about}, in the open", inputs, outputs, _OPEN)
    record.keep(WORKABLE, "climate", f"{about}, under cover", inputs, {"share": outlook.cover.share}, _COVER)


def _figures(month: Month) -> MonthClimate:
    return MonthClimate(
        month.mean.si, month.range, month.humidity.si, month.rain.si / 3600.0, month.wind.si, _DAYS[month.month - 1]
    )


def _outlook(month: Month, figures: MonthClimate, climate: Climate) -> MonthOutlook:
    begin, end = climate.day_begins, climate.day_ends
    return MonthOutlook(
        month.month,
        figures,
        dew_point(figures.temperature, figures.humidity),
        workable_hours(figures, begin, end),
        workable_hours(figures, begin, end, COVER),
    )
