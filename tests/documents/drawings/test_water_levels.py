"""The water-level sequence: levels to scale, gauges of the facilities that fit, and the curves about settling."""

from __future__ import annotations

import pytest

from tenderwright.calculations.verdict import Verdict
from tenderwright.documents.drawings.landing_curves import landing_curves
from tenderwright.documents.drawings.water_levels import water_levels
from tenderwright.documents.edition import Figure
from tests.replacing import replace

from .ship import figure, marram, of_kind, root, scale, texts

DRAWN = "water-levels"


def drawn_with_fits(fits: bool) -> Figure:
    package, _, results = marram()
    judged: dict[str, Verdict] = {name: replace(one, met=fits) for name, one in results.docking.facilities.items()}
    made = water_levels(package, replace(results, docking=replace(results.docking, facilities=judged)))
    assert made is not None
    return made


def levels(drawn: Figure) -> list[float]:
    """Give where the stages' levels are drawn, mm from the top, each once."""
    lines = [node for node in root(drawn).iter("{http://www.w3.org/2000/svg}line") if node.get("stroke") == "#0072b2"]
    return sorted({float(node.attrib["y1"]) for node in lines})


def test_every_stage_is_named_with_its_water_and_upthrust() -> None:
    stages = marram()[2].docking.stages
    named = " ".join(of_kind(figure(DRAWN), "stage"))
    figures = of_kind(figure(DRAWN), "stage-figures")
    for one in stages:
        assert one.name in named
        assert f"water {one.water:.2f} m, upthrust {one.upthrust / 1000:.1f} t" in figures


def test_levels_lie_apart_as_the_scale_says() -> None:
    drawn, stages = figure(DRAWN), marram()[2].docking.stages
    found = levels(drawn)
    assert len(found) == len(stages)
    for level, one in zip(found, stages, strict=True):
        assert level - found[0] == pytest.approx((stages[0].water - one.water) * 1000 / scale(drawn), abs=0.02)


def test_facilities_that_fit_are_gauged_from_their_floors() -> None:
    """At the graving dock 4.3 m over blocks of 1.2 m is 5.5 m over the floor, and the sill stands 0.4 m over it."""
    drawn = figure(DRAWN)
    fitting = [name for name, one in marram()[2].docking.facilities.items() if one.met]
    assert of_kind(drawn, "fits") == ["fits"] * len(fitting)
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
    assert of_kind(drawn, "fits") == ["fits"] * 4
    found = texts(drawn)
    assert not [(a, b) for i, a in enumerate(found) for b in found[i + 1 :] if a.overlaps(b)]


def test_without_facilities_the_levels_stand_alone() -> None:
    package, _, results = marram()
    drawn = water_levels(replace(package, facilities=()), results)
    assert drawn is not None
    assert of_kind(drawn, "gauge") == []
    assert len(levels(drawn)) == len(results.docking.stages)


def test_the_least_metacentric_height_asked_for_is_marked() -> None:
    assert of_kind(figure(DRAWN), "least") == ["least 0.45"]


def test_the_curves_state_upthrust_and_stability_when_settled() -> None:
    landing = marram()[2].docking.exact
    assert landing is not None
    said = [text.content for text in texts(figure(DRAWN))]
    assert f"{landing.settling.upthrust / 1000:.1f} t" in said
    assert f"{min(landing.settling.stability.gm_km_falls, landing.settling.stability.gm_kg_rises):.2f} m" in said


def test_without_a_curve_there_is_none_drawn() -> None:
    docking = marram()[2].docking
    assert landing_curves(replace(docking, curve=None), 0.45, 0.0, 0.0, 80.0) == ""
    assert landing_curves(replace(docking, exact=None), 0.45, 0.0, 0.0, 80.0) == ""
    assert landing_curves(docking, None, 0.0, 0.0, 80.0) != ""


def test_a_loss_of_stability_before_settling_stays_in_the_field() -> None:
    package, _, results = marram()
    landing = results.docking.exact
    assert landing is not None
    lost = replace(landing.instability, fall=landing.settling.fall * 0.6, margin=-landing.settling.fall * 0.4)
    docking = replace(results.docking, exact=replace(landing, instability=lost))
    drawn = water_levels(package, replace(results, docking=docking))
    assert drawn is not None
    foot = max(text.baseline for text in texts(drawn) if text.kind == "axis")
    settled = next(text for text in texts(drawn) if text.content == f"{landing.settling.upthrust / 1000:.1f} t")
    assert settled.baseline < foot


def test_there_is_no_drawing_without_stages_or_plan() -> None:
    package, _, results = marram()
    assert water_levels(package, replace(results, docking=replace(results.docking, stages=()))) is None
    assert water_levels(replace(package, docking_plan=None), results) is None
