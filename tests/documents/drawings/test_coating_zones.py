"""The coating zones: bands where their heights put them, with the areas that were calculated."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.steps.outcome import Lacking
from tenderwright.documents.drawings.bands import bands
from tenderwright.documents.drawings.coating_zones import zones
from tests.outcomes import Altered, result_of
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, scale, texts

DRAWN = "coating-zones"


def test_every_zone_is_listed_with_its_area_and_its_schemes() -> None:
    package, calculated = marram()
    record = calculated.record
    listed = of_kind(figure(DRAWN), "zone-list")
    for zone in package.zones:
        assert any(cell.startswith(zone.name) for cell in listed)
        assert f"{record.values[f'zone.{zone.zone}.area'].si:.1f} m²" in listed
    for scheme in package.schemes:
        assert scheme.name in listed
        assert f"{record.values[f'coating.{scheme.scheme}.area'].si:.1f} m²" in listed


def test_edges_of_bands_stand_at_their_heights_at_both_ends() -> None:
    drawn = figure(DRAWN)
    assert sorted(of_kind(drawn, "height")) == ["2.90 m", "2.90 m", "3.60 m", "3.60 m"]
    down = {text.content: text.baseline for text in texts(drawn) if text.kind == "height"}
    assert down["2.90 m"] - down["3.60 m"] == pytest.approx(0.7 * 1000 / scale(drawn), abs=0.2)


def test_bands_cover_the_side_without_gap_or_overlap() -> None:
    """Side areas of the bands, by the shoelace formula, add up to that of the whole profile."""
    package, calculated = marram()
    form = result_of(calculated, hull_outline).form
    made = [band for band in bands(package, form) if band.zone.surface == "shell band"]
    whole = bands(replace(package, zones=(replace(package.zones[0], lower=None, upper=None),)), form)
    assert sum(_area(band.shapes[0]) for band in made) == pytest.approx(_area(whole[0].shapes[0]))


def _area(shape: list[tuple[float, float]]) -> float:
    pairs = zip(shape, [*shape[1:], shape[0]], strict=True)
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2


def test_the_rudder_and_stern_frame_are_hatched_as_their_zone() -> None:
    package, calculated = marram()
    made = bands(package, result_of(calculated, hull_outline).form)
    rudder = next(band for band in made if band.zone.zone == "rudder-and-stern-frame")
    assert len(rudder.shapes) == 2
    assert rudder.hatch is not None


def test_an_area_that_could_not_be_calculated_is_not_invented() -> None:
    package, calculated = marram()
    values = {name: value for name, value in calculated.record.values.items() if name != "zone.boot-top.area"}
    drawn = zones(package, Altered(calculated, {}, replace(calculated.record, values=values)))
    assert "Boot-top · not calculated" in of_kind(drawn, "zone")


def test_there_is_no_drawing_without_a_band_of_shell() -> None:
    package, calculated = marram()
    inside = tuple(zone for zone in package.zones if zone.surface != "shell band")
    assert zones(replace(package, zones=inside), calculated) == Lacking(
        "it needs a zone with `surface: shell band` in vessel/zones.yaml"
    )
    assert zones(package, altered({hull_outline: LACKING})) == LACKING
