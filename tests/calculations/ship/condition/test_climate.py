from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.climate.workable_hours import MonthClimate, workable_hours
from tenderwright.calculations.ship.climate import month_outlooks
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.steps.outcome import Lacking, Resting
from tenderwright.quantities.quantity import parse_quantity
from tests.replacing import replace

from .ship import marram


def test_the_month_of_docking_gives_the_share() -> None:
    _, record, calculated = marram()
    may = workable_hours(MonthClimate(10.9, 6.6, 0.78, 50.0, 5.4, 31))
    assert record.values["climate.workable-share"].si == pytest.approx(may.share)
    assert record.values["climate.workable-hours"].si == pytest.approx(3600 * may.hours)
    assert record.values["climate.workable-share-under-cover"].si > may.share
    months = calculated.found(month_outlooks)
    assert months is not None
    assert [one.month.month for one in months] == [4, 5, 6, 7, 8, 9]
    assert months[1].open.share == may.share
    assert record.values["climate.month-4.workable-share"].si == months[0].open.share
    assert record.values["climate.dew-point"].si == months[1].dew_point
    assert "climate.month-5.workable-share" not in record.known


def test_a_month_without_figures_is_missing() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    assert package.condition.climate is not None
    climate = replace(package.condition.climate, months=package.condition.climate.months[2:])
    calculated = calculate(replace(package, condition=replace(package.condition, climate=climate)))
    record = calculated.record
    assert record.missing["climate.workable-share"] == "vessel/condition.yaml has no climate of month 5"
    assert "climate.workable-share" not in record.values
    months = calculated.found(month_outlooks)
    assert months is not None
    assert [one.month.month for one in months] == [6, 7, 8, 9]


def test_every_figure_comes_out_again() -> None:
    _, record, _ = marram()
    assert [value.name for value, _ in different(record) if value.name.startswith("climate.")] == []


def test_without_a_climate_it_says_what_it_needs() -> None:
    package, _, _ = marram()
    calculated = calculate(replace(package, condition=None))
    record = calculated.record
    assert record.missing["climate.workable-share"] == "it needs `climate` in vessel/condition.yaml"
    assert calculated.outcome(month_outlooks) == Lacking("it needs `climate` in vessel/condition.yaml")


def test_a_month_that_cannot_be_is_told_and_the_table_rests_on_it() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    assert package.condition.climate is not None
    june, months = package.condition.climate.months[2], package.condition.climate.months
    damp = replace(june, rain=parse_quantity("900 h", "time"))
    climate = replace(package.condition.climate, months=(*months[:2], damp, *months[3:]))
    calculated = calculate(replace(package, condition=replace(package.condition, climate=climate)))
    record = calculated.record
    assert any("hours of rain" in notice.message and notice.place == june.here for notice in record.notices)
    assert "climate.month-6.workable-share" in record.failed
    assert isinstance(calculated.outcome(month_outlooks), Resting)
    assert "climate.workable-share" in record.values
