"""Sections at the side blocks: sizes as calculated, to scale, on as many sheets as there are pairs for."""

from __future__ import annotations

from itertools import combinations
from math import atan2, degrees

import pytest

from tenderwright.calculations.ship.block_places import SideBlockResult
from tenderwright.calculations.ship.keel_loads import planned_keel_blocks
from tenderwright.calculations.ship.side_loads import planned_side_blocks
from tenderwright.calculations.steps.outcome import NotAsked
from tenderwright.documents.drawings.side_block_sections import side_block_sections
from tests.outcomes import result_of
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, paths, scale, texts

DRAWN = "docking-sections"


def pairs() -> tuple[SideBlockResult, ...]:
    return result_of(marram()[1], planned_side_blocks)


def test_every_pair_has_its_height_bevel_and_distance_off_the_centreline() -> None:
    drawn = figure(DRAWN)
    assert of_kind(drawn, "pair") == list("ABCDEFG")
    assert of_kind(drawn, "height") == [f"{one.height:.2f} m" for one in pairs()]
    assert of_kind(drawn, "bevel") == [f"{degrees(one.bevel):.1f}°" for one in pairs()]
    assert of_kind(drawn, "off-centre") == [f"{one.off_centre:.2f} m" for one in pairs()]


def test_blocks_are_drawn_as_wide_and_high_as_they_are_built_with_the_bevel_of_the_shell() -> None:
    drawn = figure(DRAWN)
    per = 1000 / scale(drawn)
    boxes = [p for p in paths(drawn, stroke_width="0.35", fill="none") if len(p) == 4 and p[0][1] == p[1][1]]
    sloped = [box for box in boxes if box[2][1] != box[3][1]]
    assert len(sloped) == len(pairs())
    for box, one in zip(sloped, pairs(), strict=True):
        (inner, foot), (outer, _), (_, outboard), (_, inboard) = box
        assert one.height is not None
        assert inner - outer == pytest.approx(one.width * per, abs=0.02)
        assert foot - outboard == pytest.approx((one.height - one.shell + one.shell_outer) * per, abs=0.02)
        rise = degrees(atan2(inboard - outboard, inner - outer))
        assert rise == pytest.approx(degrees(one.bevel), abs=0.3)


def test_heights_at_both_edges_are_given_for_the_carpenter() -> None:
    first = pairs()[0]
    assert first.height is not None
    raised = first.height - first.shell
    wanted = f"inner edge {first.shell_inner + raised:.2f} m, outer {first.shell_outer + raised:.2f} m"
    assert wanted in of_kind(figure(DRAWN), "sizes")


def test_loads_of_the_lee_block_are_given_where_known() -> None:
    first = pairs()[0]
    assert first.wind is not None
    assert first.earthquake is not None
    wanted = f"lee block: wind {first.wind / 1000:.1f}, earthquake {first.earthquake / 1000:.1f} t"
    assert wanted in of_kind(figure(DRAWN), "sizes")
    package, _ = marram()
    calm = tuple(replace(one, wind=None, earthquake=None) for one in pairs())
    made = side_block_sections(package, altered({planned_side_blocks: calm}))
    assert not any(words.startswith("lee") for words in of_kind(made[0], "sizes"))


def test_a_keel_block_at_another_place_is_dashed() -> None:
    blocks = result_of(marram()[1], planned_keel_blocks)
    off = sum(min(abs(b.x - one.x) - (b.length + one.length) / 2 for b in blocks) > 1e-9 for one in pairs())
    dashed = paths(figure(DRAWN), stroke_width="0.35", stroke_dasharray="1.4 0.7")
    assert len(dashed) == off > 0


def test_more_than_twelve_pairs_go_on_a_second_sheet() -> None:
    package, _ = marram()
    many = tuple(replace(pairs()[i % 7], number=i + 1) for i in range(15))
    made = side_block_sections(package, altered({planned_side_blocks: many}))
    assert [one.name for one in made] == ["docking-sections", "docking-sections-2"]
    assert of_kind(made[1], "pair") == ["M", "N", "O"]
    for drawn in made:
        assert not [1 for a, b in combinations(texts(drawn), 2) if a.overlaps(b)]


def test_a_height_that_is_not_given_is_not_invented() -> None:
    package, _ = marram()
    low = tuple(replace(one, height=None) for one in pairs())
    made = side_block_sections(package, altered({planned_side_blocks: low}))
    assert of_kind(made[0], "height") == []
    assert "height not given" in of_kind(made[0], "sizes")


def test_there_is_no_drawing_without_side_blocks() -> None:
    package, _ = marram()
    assert isinstance(side_block_sections(package, altered({planned_side_blocks: ()})), NotAsked)
    assert side_block_sections(package, altered({planned_side_blocks: LACKING})) == LACKING
