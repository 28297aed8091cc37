"""The water-level sequence: levels to scale, gauges of the facilities that fit, and the curves about settling."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.ship.landing import landing as landing_step
from tenderwright.calculations.ship.landing import landing_stages
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.documents.drawings.landing_curves import landing_curves
from tenderwright.documents.drawings.water_levels import water_levels, water_levels_there
from tenderwright.documents.edition import Figure
from tests.outcomes import result_of
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, root, scale, texts

DRAWN, THERE = "water-levels", "water-levels-at-facilities"


def drawn_with_fits(fits: bool) -> Figure:
    package, calculated = marram()
    judged = {name: replace(one, met=fits) for name, one in result_of(calculated, facility_fits).items()}
    return water_levels_there(package, altered({facility_fits: judged}))


def levels(drawn: Figure) -> list[float]:
    """Give where the stages' levels are drawn, mm from the top, each once."""
    lines = [node for node in root(drawn).iter("{http://www.w3.org/2000/svg}line") if node.get("stroke") == "#0072b2"]
    return sorted({float(node.attrib["y1"]) for node in lines})


def test_every_stage_is_named_with_its_water_and_upthrust() -> None:
    stages = result_of(marram()[1], landing_stages)
    named = " ".join(of_kind(figure(DRAWN), "stage"))
    figures = of_kind(figure(DRAWN), "stage-figures")
    for one in stages:
        assert one.name in named
        assert f"water {one.water:.2f} m, upthrust {one.upthrust / 1000:.1f} t" in figures


def test_levels_lie_apart_as_the_scale_says() -> None:
    drawn, stages = figure(DRAWN), result_of(marram()[1], landing_stages)
    found = levels(drawn)
    assert len(found) == len(stages)
    for level, one in zip(found, stages, strict=True):
        assert level - found[0] == pytest.approx((stages[0].water - one.water) * 1000 / scale(drawn), abs=0.02)


def test_facilities_that_fit_are_gauged_from_their_floors() -> None:
    """At the graving dock 4.3 m over blocks of 1.2 m is 5.5 m over the floor, and the sill stands 0.4 m over it."""
    drawn = figure(THERE)
    fitting = [name for name, one in result_of(marram()[1], facility_fits).items() if one.met is not False]
    assert of_kind(drawn, "fits") == ["not known"] * len(fitting)
    gauges = of_kind(drawn, "gauge")
    assert "5.50 there" in gauges
    assert "0.40 sill" in gauges
    assert sum(words.endswith("needed") for words in gauges) == len(fitting)


def test_where_none_fits_the_first_facility_is_shown_and_says_so() -> None:
    drawn = drawn_with_fits(False)
    assert of_kind(drawn, "fits") == ["does not fit"]
    assert "".join(of_kind(drawn, "facility")).replace(" ", "") == marram()[0].facilities[0].name.replace(" ", "")


def test_four_facilities_that_fit_have_room_without_overlap() -> None:
    drawn = drawn_with_fits(True)
    assert of_kind(drawn, "fits") == ["calculated to fit"] * 4
    found = texts(drawn)
    assert not [(a, b) for i, a in enumerate(found) for b in found[i + 1 :] if a.overlaps(b)]


def test_without_facilities_the_levels_stand_alone() -> None:
    package, calculated = marram()
    alone = water_levels_there(replace(package, facilities=()), calculated)
    for drawn in (alone, figure(DRAWN)):
        assert len(of_kind(drawn, "gauge")) == len(result_of(calculated, landing_stages))
        assert " ".join(of_kind(drawn, "fits")) == "over the dock floor"
        assert "facility" not in drawn.caption
        assert len(levels(drawn)) == len(result_of(calculated, landing_stages))


def test_the_least_metacentric_height_asked_for_is_marked() -> None:
    assert of_kind(figure(DRAWN), "least") == ["least 0.45"]


def test_the_curves_state_upthrust_and_stability_when_settled() -> None:
    landing = result_of(marram()[1], landing_step).exact
    said = [text.content for text in texts(figure(DRAWN))]
    assert f"{landing.settling.upthrust / 1000:.1f} t" in said
    assert f"{min(landing.settling.stability.gm_km_falls, landing.settling.stability.gm_kg_rises):.2f} m" in said


def test_the_curves_stand_without_a_least_metacentric_height() -> None:
    landed = result_of(marram()[1], landing_step)
    assert "least" in landing_curves(landed, 0.45, 0.0, (69.0, 0.0, 80.0))
    without = landing_curves(landed, None, 0.0, (69.0, 0.0, 80.0))
    assert "<path" in without
    assert "least" not in without


def test_a_loss_of_stability_before_settling_stays_in_the_field() -> None:
    package, calculated = marram()
    landed = result_of(calculated, landing_step)
    landing = landed.exact
    lost = replace(landing.instability, fall=landing.settling.fall * 0.6, margin=-landing.settling.fall * 0.4)
    early = replace(landed, exact=replace(landing, instability=lost))
    drawn = water_levels(package, altered({landing_step: early}))
    foot = max(text.baseline for text in texts(drawn) if text.kind == "axis")
    settled = next(text for text in texts(drawn) if text.content == f"{landing.settling.upthrust / 1000:.1f} t")
    assert settled.baseline < foot


def test_there_is_no_drawing_without_stages_or_plan() -> None:
    for step in (landing_step, landing_stages, hull_outline):
        assert water_levels(marram()[0], altered({step: LACKING})) == LACKING
