"""The plot of loss by zone: a panel for each, with its rate and uncertainty."""

from __future__ import annotations

from tenderwright.calculations.condition_results import ConditionResults
from tenderwright.documents.drawings.loss_plot import loss_plot
from tests.replacing import replace

from .ship import figure, marram, of_kind

DRAWN = "loss-by-zone"


def test_every_zone_has_a_panel_with_its_rate() -> None:
    package, _, results = marram()
    assert package.condition is not None
    drawn = figure(DRAWN)
    names = [words.lower() for words in of_kind(drawn, "zone")]
    assert names == [zone.name for zone in package.condition.zones]
    rates = of_kind(drawn, "rate")
    for zone, words in zip(results.condition.zones, rates, strict=True):
        assert words == f"{1e3 * zone.rate:.3f} ± {1e3 * zone.uncertainty:.3f} mm a year"


def test_a_zone_gauged_once_says_so() -> None:
    package, _, results = marram()
    once = tuple(replace(zone, bays=0, rate=float("nan"), means=()) for zone in results.condition.zones)
    drawn = loss_plot(package, replace(results, condition=replace(results.condition, zones=once)))
    assert drawn is not None
    assert of_kind(drawn, "rate") == ["gauged once"] * len(once)


def test_it_is_no_drawing_to_scale_and_none_without_readings() -> None:
    package, _, results = marram()
    assert "Not to scale" in figure(DRAWN).svg
    assert loss_plot(package, replace(results, condition=ConditionResults())) is None
