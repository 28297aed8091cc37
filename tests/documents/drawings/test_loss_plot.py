"""The plot of loss by zone: a panel for each, with its rate and uncertainty."""

from __future__ import annotations

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tenderwright.calculations.ship.shell_zones import zone_rates
from tenderwright.documents.drawings.loss_plot import loss_plot
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind

DRAWN = "loss-by-zone"


def test_every_zone_has_a_panel_with_its_rate() -> None:
    package, calculated = marram()
    assert package.condition is not None
    drawn = figure(DRAWN)
    names = [words.lower() for words in of_kind(drawn, "zone")]
    assert names == [zone.name for zone in package.condition.zones]
    rates = of_kind(drawn, "rate")
    for zone, words in zip(calculated.found(zone_rates).values(), rates, strict=True):
        assert words == f"{1e3 * zone.rate:.3f} ± {1e3 * zone.uncertainty:.3f} mm a year"


def test_a_zone_gauged_once_says_so() -> None:
    package, _ = marram()
    once = replace(package, surveys=package.surveys[1:])
    drawn = loss_plot(once, calculate(once))
    assert package.condition is not None
    assert of_kind(drawn, "rate") == ["gauged once"] * len(package.condition.zones)


def test_it_is_no_drawing_to_scale_and_none_without_readings() -> None:
    assert "Not to scale" in figure(DRAWN).svg
    assert loss_plot(marram()[0], altered({shell_forecast: LACKING})) == LACKING
