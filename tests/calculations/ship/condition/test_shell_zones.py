from __future__ import annotations

import math

import pytest

from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tenderwright.calculations.ship.shell_zones import zone_rates

from .ship import marram, shot, survey, surveyed


def test_the_rate_of_a_zone_is_the_mean_over_frame_spaces_gauged_twice() -> None:
    """Two spaces lose 0.36 mm and 0.72 mm in eighteen years, and a third was gauged once: 0.03 mm a year."""
    early = [shot("F", f, "port", 9.5, 9.0, "2007-09-15") for f in (40.5, 50.5)]
    late = [shot("F", f, "port", 9.5, m, "2025-09-15") for f, m in ((40.5, 8.64), (50.5, 8.28), (60.5, 6.0))]
    _, record, calculated = surveyed(survey(*early, name="old"), survey(*late))
    ((name, zone),) = calculated.found(zone_rates).items()
    assert (name, zone.bays, zone.readings) == ("wind-and-water", 2, 3)
    assert zone.rate == pytest.approx(0.03e-3, rel=1e-3)
    own, spread = 0.1e-3 * math.sqrt(2) / 18, 0.01e-3 / math.sqrt(2) * math.sqrt(2)
    assert zone.uncertainty == pytest.approx(math.hypot(own, spread), rel=1e-3)
    assert zone.means[0][1] == pytest.approx(0.5 / 9.5)
    year = 365.25 * 86400
    assert record.values["shell.zone.wind-and-water.rate"].si * year == pytest.approx(zone.rate)


def test_the_forecast_goes_to_the_docking_after_the_one_planned() -> None:
    _, _, calculated = marram()
    shell = calculated.found(shell_forecast)
    assert shell is not None
    for zone in calculated.found(zone_rates).values():
        assert zone.mean_loss < zone.mean_at_next < zone.upper_at_next
        years = shell.outlook.docking + shell.outlook.interval - 2025.77
        assert zone.mean_at_next - zone.mean_loss == pytest.approx(zone.rate * years / 0.0095, rel=0.25)


def test_a_zone_gauged_once_has_no_rate() -> None:
    _, record, calculated = surveyed(survey(shot("F", 40.5, "port", 9.5, 9.0)))
    assert math.isnan(calculated.found(zone_rates)["wind-and-water"].rate)
    assert "shell.zone.wind-and-water.mean-loss" in record.values
    assert "shell.zone.wind-and-water.rate" not in record.values


def test_the_wind_and_water_strake_wastes_faster_than_the_bottom() -> None:
    _, record, _ = marram()
    rates = {name: record.values[f"shell.zone.{name}.rate"].si for name in ("wind-and-water", "bottom", "topside")}
    assert rates["wind-and-water"] > rates["bottom"] > rates["topside"]
