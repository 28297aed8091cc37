"""The body plan: every section where the offsets put it."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.hull import hull
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.lines import body_plan
from tests.outcomes import result_of
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, paths, root, scale, texts

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
    sections = [path for path in paths(drawn, stroke_width="0.35", fill="none") if len(path) > 40]
    section = sections[[*_aft_names()].index("2")]
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


def test_the_profile_and_the_waterlines_are_to_the_scale_that_they_state() -> None:
    """Half the beam of the deck, 4.55 m by the table, under a profile as long as the stations."""
    form = result_of(marram()[1], hull).form
    drawn = figure(DRAWN)
    stated = next(text.content for text in texts(drawn) if text.content.startswith("Profile and waterlines"))
    per = 1000 / int(stated.rpartition(":")[2])
    profile = paths(drawn, stroke_width="0.5")[0]
    assert max(x for x, _ in profile) - min(x for x, _ in profile) == pytest.approx(
        (form.stations[-1] - form.stations[0]) * per, abs=0.02
    )
    deck = paths(drawn, stroke_width="0.35", fill="none")[0]
    axis = next(float(node.attrib["y1"]) for node in root(drawn).iter() if node.get("stroke-dasharray") == pen.CHAIN)
    assert max(y for _, y in deck) - axis == pytest.approx(4.55 * per, abs=0.03)
