"""The body plan: every section where the offsets put it."""

from __future__ import annotations

from tenderwright.calculations.ship.hull import hull
from tenderwright.documents.drawings.lines import body_plan
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, paths, scale

DRAWN = "body-plan"


def test_every_station_is_named_and_the_one_amidships_on_both_sides() -> None:
    package = marram()[0]
    assert package.offsets is not None
    named = of_kind(figure(DRAWN), "station")
    assert len(named) == len(package.offsets.stations) + 1
    assert named.count("5") == 2
    assert "9¾" in named


def test_sections_pass_through_the_offsets() -> None:
    """Station 2 has a half-breadth of 2.300 m at 1.50 m, by the table; it lies aft, so on the left."""
    drawn = figure(DRAWN)
    section = paths(drawn, stroke_width="0.35")[[*_aft_names()].index("2")]
    left, base = section[0]
    wanted = (left - 2300 / scale(drawn), base - 1500 / scale(drawn))
    assert min(abs(x - wanted[0]) + abs(y - wanted[1]) for x, y in section) < 0.03


def _aft_names() -> list[str]:
    package = marram()[0]
    assert package.offsets is not None
    return [station.station for station in package.offsets.stations if station.at.si < 24 - 1e-6]


def test_waterlines_are_labelled_on_both_sides() -> None:
    assert of_kind(figure(DRAWN), "waterline").count("3.50") == 2


def test_stations_without_names_are_named_by_their_distance() -> None:
    package, calculated = marram()
    assert package.offsets is not None
    unnamed = tuple(replace(station, station="") for station in package.offsets.stations)
    drawn = body_plan(replace(package, offsets=replace(package.offsets, stations=unnamed)), calculated)
    assert "9.6" in of_kind(drawn, "station")


def test_there_is_no_drawing_without_a_form() -> None:
    assert body_plan(marram()[0], altered({hull: LACKING})) == LACKING
