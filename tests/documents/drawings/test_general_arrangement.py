"""The tank drawing: every tank numbered once in each view and listed, at a true scale."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.condition import arrival
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.tanks import tank_contents, tank_shape
from tenderwright.calculations.steps.outcome import Lacking
from tenderwright.documents.drawings.general_arrangement import tanks
from tenderwright.documents.drawings.tank_marks import NO_TANKS
from tests.outcomes import result_of

from .ship import LACKING, altered, figure, marram, of_kind, paths, scale, texts

DRAWN = "tank-plan"


def test_every_tank_is_numbered_once_in_the_plan_and_once_in_the_profile() -> None:
    wanted = [str(n) for n in range(1, len(marram()[0].tanks) + 1)]
    assert sorted(of_kind(figure(DRAWN), "plan-number"), key=int) == wanted
    in_profile = ", ".join(of_kind(figure(DRAWN), "profile-number")).split(", ")
    assert sorted(in_profile, key=int) == wanted


def test_every_tank_is_listed_with_its_sounding_and_volume() -> None:
    package, calculated = marram()
    listed = of_kind(figure(DRAWN), "tank-list")
    for tank in package.tanks:
        assert listed.count(tank.name) == 1
        assert f"{result_of(calculated, tank_contents)[tank.tank].liquid.volume:.2f}" in listed
    assert "2.60 m" in listed
    assert listed.count("dry") == sum(tank.contents.liquid == "none" for tank in package.tanks)


def test_her_outline_is_as_long_on_paper_as_the_scale_says() -> None:
    form = result_of(marram()[1], hull_outline).form
    assert form is not None
    drawn = figure(DRAWN)
    outlines = paths(drawn, stroke_width="0.5")
    profile = outlines[0]
    length = max(x for x, _ in profile) - min(x for x, _ in profile)
    assert length == pytest.approx((form.stations[-1] - form.stations[0]) * 1000 / scale(drawn), abs=0.02)
    high = max(y for _, y in profile) - min(y for _, y in profile)
    assert high == pytest.approx((form.depth - form.keel_heights.min()) * 1000 / scale(drawn), abs=0.02)


def test_the_plan_is_as_wide_as_the_hull_at_half_depth() -> None:
    """Her half-breadth amidships at 2.30 m is 4.54 m by the table of offsets."""
    drawn = figure(DRAWN)
    waterline = paths(drawn, stroke_width="0.5")[1]
    wide = max(y for _, y in waterline) - min(y for _, y in waterline)
    assert wide == pytest.approx(2 * 4.54 * 1000 / scale(drawn), abs=0.1)


def test_frames_are_numbered_every_tenth_and_stand_where_the_frame_table_puts_them() -> None:
    package = marram()[0]
    drawn = figure(DRAWN)
    marked = {text.content.removeprefix("Fr "): text.middle for text in texts(drawn) if text.kind == "frame"}
    assert list(marked) == [str(n) for n in range(0, 90, 10) if n <= 84]
    assert package.frames is not None
    apart = package.frames.x(80) - package.frames.x(10)
    assert marked["80"] - marked["10"] == pytest.approx(apart * 1000 / scale(drawn), abs=0.02)


def test_the_waterline_lies_at_the_drafts_on_arrival() -> None:
    said = [text.content for text in texts(figure(DRAWN))]
    found = result_of(marram()[1], arrival).hydrostatics
    assert f"Draft AP {found.draft_aft:.2f} m" in said
    assert f"Draft FP {found.draft_forward:.2f} m" in said


def test_without_the_arrival_condition_the_caption_says_why_there_is_no_waterline() -> None:
    drawn = tanks(marram()[0], altered({arrival: LACKING}))
    assert not any(text.content.startswith("Draft AP") for text in texts(drawn))
    assert drawn.caption.endswith(" Waterline on arrival. Not calculated: it needs some file.")


def test_a_tank_without_bounds_is_listed_but_not_drawn() -> None:
    package, calculated = marram()
    left = {name: shape for name, shape in result_of(calculated, tank_shape).items() if name != "forepeak"}
    drawn = tanks(package, altered({tank_shape: left}))
    assert "1" not in of_kind(drawn, "plan-number")
    assert "Forepeak (not drawn)" in of_kind(drawn, "tank-list")


def test_there_is_no_drawing_without_tanks() -> None:
    package, _ = marram()
    assert tanks(package, altered({tank_shape: {}})) == Lacking(NO_TANKS)
    assert tanks(package, altered({hull_outline: LACKING})) == LACKING
