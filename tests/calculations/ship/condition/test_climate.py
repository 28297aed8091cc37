from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.climate.workable_hours import MonthClimate, workable_hours
from tests.replacing import replace

from .ship import marram


def test_the_month_of_docking_gives_the_share() -> None:
    _, record, results = marram()
    may = workable_hours(MonthClimate(10.9, 6.6, 0.78, 50.0, 5.4, 31))
    assert record.values["climate.workable-share"].si == pytest.approx(may.share)
    assert record.values["climate.workable-hours"].si == pytest.approx(3600 * may.hours)
    assert record.values["climate.workable-share-under-cover"].si > may.share
    assert [one.month for one in results.condition.months] == [4, 5, 6, 7, 8, 9]


def test_a_month_without_figures_is_missing() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    assert package.condition.climate is not None
    climate = replace(package.condition.climate, months=package.condition.climate.months[2:])
    record, _ = calculate(replace(package, condition=replace(package.condition, climate=climate)))
    assert "climate.workable-share" in record.missing
    assert "climate.workable-share" not in record.values
