"""Hatchings are told apart without colour."""

from __future__ import annotations

from tenderwright.documents.drawings.hatch import BANDS, LIQUIDS, OTHER_LIQUID, STATED, Hatch, liquid_hatch


def test_every_liquid_and_every_band_has_a_pattern_of_its_own() -> None:
    for hatches in ((*LIQUIDS.values(), OTHER_LIQUID), (*BANDS, STATED)):
        patterns = {(one.angles, one.dash, one.spacing if len(one.angles) == 1 else 0) for one in hatches}
        assert len(patterns) == len(hatches)


def test_a_dry_tank_is_left_white() -> None:
    assert liquid_hatch("none").over([[(0, 0), (9, 0), (9, 9), (0, 9)]]) == ""


def test_an_unknown_liquid_has_a_hatching_too() -> None:
    assert liquid_hatch("molasses") is OTHER_LIQUID


def test_both_halves_of_a_dashed_hatching_are_drawn() -> None:
    box = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]
    plain, dashed = Hatch((0,), 1.0).over([box]), Hatch((0,), 1.0, 0.2, "1 1").over([box])
    assert plain.count("M") == dashed.count("M") == 10
    assert "stroke-dashoffset" in dashed
