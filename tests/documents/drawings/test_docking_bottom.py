"""The bottom from above: every footprint to scale, earlier ones told apart, strips covered again, openings listed."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.footprints import (
    Conflict,
    Footprint,
    Strip,
    block_clearances,
    covered_strips,
    earlier_footprints,
    plan_footprints,
)
from tenderwright.calculations.ship.keel_loads import planned_keel_blocks
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.side_loads import planned_side_blocks
from tenderwright.documents.drawings.bottom_marks import BEFORE, LAST
from tenderwright.documents.drawings.docking_bottom import docking_bottom
from tenderwright.documents.edition import Figure
from tests.outcomes import result_of
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, paths, scale

HALVES = ("docking-bottom-aft", "docking-bottom-forward")


def footprints() -> tuple[Footprint, ...]:
    return result_of(marram()[1], plan_footprints)


def boxes(drawn: Figure, **attributes: str) -> list[tuple[float, float]]:
    """Give length and width of every box drawn so, in metres."""
    found = [p for p in paths(drawn, **attributes) if len(p) == 4]
    per = scale(drawn) / 1000
    return [((p[1][0] - p[0][0]) * per, (p[2][1] - p[1][1]) * per) for p in found]


def test_every_block_of_the_plan_is_on_one_half_or_both() -> None:
    numbers = [of_kind(figure(half), "block") for half in HALVES]
    wanted = [str(one.number) for one in result_of(marram()[1], planned_keel_blocks)]
    assert sorted({*numbers[0], *numbers[1]}, key=int) == wanted
    letters = {letter for half in HALVES for letter in of_kind(figure(half), "side-block")}
    assert letters == set("ABCDEFG")


def test_both_halves_have_one_scale() -> None:
    assert len({scale(figure(half)) for half in HALVES}) == 1


@pytest.mark.parametrize("half", HALVES)
def test_footprints_are_as_long_and_wide_as_the_caps(half: str) -> None:
    """Caps are 0.3 m or 0.4 m long, 0.6 m wide at the sides, and 0.5 m to each side under the keel."""
    found = [size for size in boxes(figure(half), stroke_width="0.5", fill="none") if size[1] < 1.5]
    whole = [size for size in found if size[0] > 0.29]
    assert len(whole) >= len(found) - 1
    for length, width in whole:
        assert min(abs(length - wanted) for wanted in (0.3, 0.4)) < 0.005
        assert min(abs(width - wanted) for wanted in (0.5, 0.6)) < 0.005


def test_footprints_of_the_last_docking_and_of_the_one_before_are_hatched_differently() -> None:
    assert LAST.angles != BEFORE.angles
    assert bool(LAST.dash) != bool(BEFORE.dash)
    keys = of_kind(figure(HALVES[0]), "key")
    assert any(key.startswith("docking of 2007, the last") for key in keys)
    assert any(key.startswith("docking of 1988, the one before") for key in keys)
    solid = boxes(figure(HALVES[0]), stroke_width="0.18", fill="none")
    dashed = boxes(figure(HALVES[0]), stroke_width="0.18", stroke_dasharray="1.4 0.7", fill="none")
    assert (0.35, 0.55) in [(round(a, 2), round(b, 2)) for a, b in dashed]
    assert (0.3, 0.5) in [(round(a, 2), round(b, 2)) for a, b in solid]


def test_strips_covered_at_two_dockings_are_black_and_counted() -> None:
    strips = result_of(marram()[1], covered_strips)
    drawn = sum(len(boxes(figure(half), stroke_width="0.18", fill="#111111")) for half in HALVES)
    assert drawn >= len(strips) > 0
    assert any(f"{len(strips)} strips; none again by this plan" in key for key in of_kind(figure(HALVES[0]), "key"))


def test_a_strip_that_the_plan_covers_again_is_ringed() -> None:
    package, _ = marram()
    again = Strip(4.0, 4.3, -0.1, 0.1, ("docking-2007", "plan"))
    made = docking_bottom(package, altered({covered_strips: (again,)}))
    assert any("1 strips, of which 1 by this plan too, ringed" in key for key in of_kind(made[0], "key"))
    assert made[0].svg.count("<circle") == figure(HALVES[0]).svg.count("<circle") + 1


def test_low_openings_are_numbered_and_listed() -> None:
    listed = [words for half in HALVES for words in of_kind(figure(half), "opening-list")]
    assert "Docking plug, afterpeak, Fr 9, port" in listed
    assert "Main sea chest, Fr 27, starboard" in listed
    assert not any("scupper" in words for words in listed)
    for half in HALVES:
        assert len(of_kind(figure(half), "opening")) == len(of_kind(figure(half), "opening-list"))


def test_a_block_too_near_to_something_is_ringed_and_explained() -> None:
    package, calculated = marram()
    near = Conflict(footprints()[0], "docking plug", "plug-afterpeak", 0.1, 0.3)
    clear = replace(result_of(calculated, block_clearances), conflicts=(near,))
    made = docking_bottom(package, altered({block_clearances: clear}))
    assert any(key.startswith("block too near") for key in of_kind(made[0], "key"))
    assert not any(key.startswith("block too near") for key in of_kind(figure(HALVES[0]), "key"))


def test_the_bottom_stands_without_an_earlier_docking() -> None:
    package, _ = marram()
    made = docking_bottom(package, altered({earlier_footprints: {}, covered_strips: ()}))
    assert [one.name for one in made] == list(HALVES)
    assert not any("docking of" in key for key in of_kind(made[0], "key"))


def test_there_is_no_drawing_without_footprints() -> None:
    for step in (plan_footprints, hull_outline):
        assert docking_bottom(marram()[0], altered({step: LACKING})) == LACKING


def test_this_plan_stands_below_the_line_and_earlier_dockings_above_it() -> None:
    for half in HALVES:
        base = next(p for p in paths(figure(half), stroke_width="0.5", fill="none") if len(p) == 4)[0][1]
        plan = [p for p in paths(figure(half), stroke_width="0.5", fill="none") if len(p) == 4]
        thin = [p for p in paths(figure(half), stroke_width="0.18", fill="none") if len(p) == 4]
        before = [p for p in thin if p[0][1] == p[1][1] and p[1][0] == p[2][0] and p[2][1] - p[1][1] > 4]
        assert plan
        assert before
        assert min(y for p in plan for _, y in p) >= base - 0.02
        assert max(y for p in before for _, y in p) <= base + 0.02


def test_offsets_of_side_blocks_are_dimensioned_once_for_each_pair() -> None:
    pairs = {one.number: one.off_centre for one in result_of(marram()[1], planned_side_blocks)}
    shown = [words for half in HALVES for words in of_kind(figure(half), "offset")]
    assert sorted(shown) == sorted(f"{off:.2f} m" for off in pairs.values())
