"""The docking plan from the side: blocks where they stand, the one touched first, loads and waterlines to one scale."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from tenderwright.calculations.ship.block_places import KeelBlockResult
from tenderwright.calculations.ship.docking_condition import docking as docking_step
from tenderwright.calculations.ship.keel_loads import loaded_keel_blocks, planned_keel_blocks
from tenderwright.calculations.ship.landing import landing as landing_step
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.side_loads import planned_side_blocks
from tenderwright.calculations.steps.outcome import Lacking
from tenderwright.calculations.steps.step import Step
from tenderwright.documents.drawings.docking_profile import docking_profile, first_touched
from tenderwright.documents.drawings.keel_load_diagram import allowable_load
from tenderwright.documents.edition import Figure
from tests.outcomes import result_of
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, paths, scale, texts

DRAWN = "docking-plan"


def blocks() -> tuple[KeelBlockResult, ...]:
    return result_of(marram()[1], planned_keel_blocks)


def drawn_with(instead: Mapping[Step[Any], Any]) -> Figure:
    return docking_profile(marram()[0], altered(instead))


def without_loads(one: KeelBlockResult) -> KeelBlockResult:
    return replace(one, rigid=None, elastic=None, line_load=None, pressure=None)


def foot_to_keel(drawn: Figure) -> list[list[tuple[float, float]]]:
    """Give the boxes of the keel blocks: those of the first size under the keel, from aft."""
    keel = max(y for _, y in paths(drawn, fill="#bbbbbb")[0])
    boxes = [p for p in paths(drawn, stroke_width="0.18") if len(p) == 4]
    return [box for box in boxes if abs(min(y for _, y in box) - keel) < 0.01]


def test_every_keel_block_is_numbered_from_aft() -> None:
    assert of_kind(figure(DRAWN), "block") == [str(one.number) for one in blocks()]


def test_blocks_stand_under_the_keel_at_their_places_as_long_and_high_as_given() -> None:
    drawn = figure(DRAWN)
    per = 1000 / scale(drawn)
    boxes = foot_to_keel(drawn)
    assert len(boxes) == len(blocks())
    middles = [sum(x for x, _ in box) / 4 for box in boxes]
    for box, middle, one in zip(boxes, middles, blocks(), strict=True):
        assert one.height is not None
        assert middle - middles[0] == pytest.approx((one.x - blocks()[0].x) * per, abs=0.02)
        assert max(x for x, _ in box) - min(x for x, _ in box) == pytest.approx(one.length * per, abs=0.02)
        assert max(y for _, y in box) - min(y for _, y in box) == pytest.approx(one.height * per, abs=0.02)


def test_only_the_block_touched_first_is_black() -> None:
    """Trimmed by the stern she comes down on the aftermost block."""
    drawn = figure(DRAWN)
    black = [box for box in paths(drawn, stroke_width="0.18", fill="#111111") if box in foot_to_keel(drawn)]
    assert black == foot_to_keel(drawn)[:1]
    touched = first_touched(blocks(), result_of(marram()[1], landing_step).exact)
    assert touched is blocks()[0]
    assert f"block 1, {touched.position}" in drawn.alternative


def test_side_blocks_are_lettered_over_their_frames() -> None:
    drawn = figure(DRAWN)
    letters = [text for text in texts(drawn) if text.kind == "side-block"]
    pairs = result_of(marram()[1], planned_side_blocks)
    assert [text.content for text in letters] == list("ABCDEFG")
    apart = (pairs[-1].x - pairs[0].x) * 1000 / scale(drawn)
    assert letters[-1].middle - letters[0].middle == pytest.approx(apart, abs=0.02)


def test_spacings_add_up_to_the_length_of_the_row() -> None:
    even = tuple(replace(one, x=2.0 + 1.2 * i) for i, one in enumerate(blocks()))
    drawn = drawn_with({planned_keel_blocks: even})
    assert of_kind(drawn, "spacing") == [f"{len(even) - 1} × 1.20"]


def test_drafts_at_the_first_touch_and_when_settled_are_those_of_the_landing_curve() -> None:
    curve = result_of(marram()[1], landing_step).curve
    wanted = [f"{side[i]:.2f} m" for side in (curve.draft_aft, curve.draft_forward) for i in (0, curve.settled)]
    assert of_kind(figure(DRAWN), "draft") == wanted
    assert of_kind(figure(DRAWN), "waterline") == ["waterline at first touch", "waterline when settled"]


def test_the_greater_load_of_every_block_is_written_in_tonnes() -> None:
    assert of_kind(figure(DRAWN), "load") == [f"{one.load / 1000:.0f}" for one in blocks() if one.load is not None]


def test_bars_and_the_elastic_line_share_one_scale() -> None:
    drawn = figure(DRAWN)
    line = next(p for p in paths(drawn, stroke="#0072b2", stroke_width="0.35") if len(p) == len(blocks()))
    bars = [p for p in paths(drawn, fill="#ffffff") if len(p) == 4 and p[0][1] == p[1][1] == _base(drawn)]
    assert len(bars) == len(blocks())
    heights = [_base(drawn) - bar[2][1] for bar in bars]
    per = heights[0] / (blocks()[0].rigid or 1.0)
    for bar, (x, y), one in zip(bars, line, blocks(), strict=True):
        assert one.rigid is not None
        assert one.elastic is not None
        assert _base(drawn) - bar[2][1] == pytest.approx(one.rigid * per, abs=0.03)
        assert _base(drawn) - y == pytest.approx(one.elastic * per, abs=0.05)
        assert x == pytest.approx((bar[0][0] + bar[1][0]) / 2, abs=0.01)


def _base(drawn: Figure) -> float:
    """Give where the load is nothing: the line under the lowest label of the axis."""
    zero = next(text for text in texts(drawn) if text.kind == "axis" and text.content == "0")
    return round(zero.baseline - 0.9, 2)


def test_a_cap_may_carry_its_pressure_over_its_area() -> None:
    """A block of 10 t at 1.0 MPa may carry 31 t at 3.1 MPa."""
    one = replace(blocks()[0], rigid=10_000.0, elastic=None, pressure=1.0e6)
    assert allowable_load(one, 3.1e6) == pytest.approx(31_000.0)
    assert allowable_load(one, None) is None
    assert allowable_load(replace(one, pressure=None), 3.1e6) is None


def test_the_allowed_load_is_drawn_over_every_block() -> None:
    strokes = next(p for p in paths(figure(DRAWN), stroke="#c14a00", stroke_width="0.5") if len(p) > 2)
    assert len(strokes) == 2 * len(blocks())


def test_without_loads_there_is_a_profile_and_no_diagram() -> None:
    bare = tuple(without_loads(one) for one in blocks())
    drawn = drawn_with({planned_keel_blocks: bare, loaded_keel_blocks: LACKING})
    assert of_kind(drawn, "load") == []
    assert "Load on each keel block, t" not in [text.content for text in texts(drawn)]
    assert of_kind(drawn, "block") == of_kind(figure(DRAWN), "block")
    assert "Loads of the keel blocks. Not calculated: it needs some file." in drawn.caption


def test_without_a_landing_no_block_is_touched_first_and_no_waterline_drawn() -> None:
    drawn = drawn_with({landing_step: LACKING, docking_step: LACKING})
    assert of_kind(drawn, "waterline") == of_kind(drawn, "landing") == of_kind(drawn, "gravity") == []
    assert "Touched first" not in drawn.alternative
    assert "Waterlines as she lands. Not calculated: it needs some file." in drawn.caption


def test_blocks_without_a_height_say_so() -> None:
    package, _ = marram()
    assert package.docking_plan is not None
    low = tuple(replace(one, height=None) for one in blocks())
    plan = replace(package.docking_plan, block_height=None)
    drawn = docking_profile(replace(package, docking_plan=plan), altered({planned_keel_blocks: low}))
    assert "Height of keel blocks: not given" in drawn.alternative


def test_there_is_no_drawing_without_a_plan_or_blocks() -> None:
    package, calculated = marram()
    assert isinstance(docking_profile(replace(package, docking_plan=None), calculated), Lacking)
    for step in (planned_keel_blocks, hull_outline):
        assert docking_profile(package, altered({step: LACKING})) == LACKING


def test_what_stands_over_the_deck_is_drawn_to_scale_and_cut_off_where_the_sheet_ends() -> None:
    """From the deck at 4.6 m to the top of the bridge at 9.5 m; the mast of 22.6 m does not fit."""
    package, calculated = marram()
    assert package.particulars is not None
    assert "What stands over the deck is cut off" in figure(DRAWN).caption
    low = tuple(one for one in package.particulars.outlines if one.name in ("Deckhouse", "Bridge"))
    assert len(low) == 2
    whole = docking_profile(replace(package, particulars=replace(package.particulars, outlines=low)), calculated)
    assert "cut off" not in whole.caption
    heights = [y for _, y in paths(whole, stroke_width="0.18", fill="none")[0]]
    assert max(heights) - min(heights) == pytest.approx((9.5 - 4.6) * 1000 / scale(whole), abs=0.02)


def test_the_first_and_the_last_block_are_dimensioned_from_marks_on_the_ship() -> None:
    first, last = blocks()[0], blocks()[-1]
    assert of_kind(figure(DRAWN), "from-mark") == [
        f"block {first.number}: {first.x:.2f} m forward of after side of stern frame",
        f"block {last.number}: {48.0 - last.x:.2f} m abaft fore perpendicular",
    ]
