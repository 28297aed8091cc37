"""The keel that stands on the blocks: bar or flat, level or with drag."""

from __future__ import annotations

from functools import cache

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.block_places import keel_block_heights, side_block_seats
from tenderwright.calculations.ship.facilities import facility_drafts
from tenderwright.calculations.ship.keel import keel_line
from tenderwright.calculations.ship.landing import landing
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings.docking_profile import docking_profile
from tenderwright.documents.edition import Figure
from tenderwright.model.sections import EndProfile, HullSection
from tests.calculations.ship.test_sections import on_sections, read_sections, with_sections
from tests.outcomes import result_of
from tests.replacing import replace

from .marram import found, length, package

DRAG = 0.006
"""Rise of the keel forward per length: 0.29 m over her length."""


@cache
def dragged() -> Calculated:
    """Calculate her from sections whose heights are from a baseline against which her keel rakes."""
    read = read_sections()
    sections = tuple(_section(one) for one in read.sections)
    stern, stem = (_end(one) for one in (read.stern, read.stem))
    raked = replace(read, sections=sections, stern=stern, stem=stem)
    return calculate(replace(with_sections(), sections=raked))


def _section(one: HullSection) -> HullSection:
    return replace(one, heights=tuple(length(f"{z.si + DRAG * one.at.x:.4f} m") for z in one.heights))


def _end(one: EndProfile | None) -> EndProfile | None:
    if one is None:
        return None
    places = zip(one.at, one.heights, strict=True)
    return replace(one, heights=tuple(length(f"{z.si + DRAG * at.x:.4f} m") for at, z in places))


def test_a_bar_keel_stands_below_the_keel_line_and_a_flat_one_on_it() -> None:
    bar = found(keel_line)
    assert bar.rake == 0.0
    assert bar.at(0.0) == bar.at(40.0) == -0.18
    assert list(bar.given) == ["keel"]
    particulars = package().particulars
    assert particulars is not None
    flat = replace(particulars, keel=replace(particulars.keel, kind="flat", depth=None))
    on_flat = calculate(replace(package(), particulars=flat))
    assert result_of(on_flat, keel_line).given == {}
    assert result_of(on_flat, landing).afloat.draft_aft == pytest.approx(found(landing).afloat.draft_aft - 0.18)


def test_a_keel_that_drags_is_read_from_her_form() -> None:
    line = result_of(dragged(), keel_line)
    assert line.rake == pytest.approx(DRAG, rel=1e-3)
    assert line.at(0.0) == pytest.approx(-0.18, abs=1e-3)
    assert line.at(40.0) == pytest.approx(-0.18 + 40 * DRAG, abs=2e-3)
    inputs = dragged().record.values["docking.landing.upthrust"].working.inputs
    assert inputs["rake"].si == line.rake
    assert [value.name for value, _ in different(dragged().record)] == []


def test_blocks_are_built_to_the_keel_and_side_blocks_to_the_shell_over_it() -> None:
    level = on_sections()
    assert result_of(dragged(), keel_block_heights) == result_of(level, keel_block_heights)
    for number, seat in result_of(level, side_block_seats).items():
        other = result_of(dragged(), side_block_seats)[number]
        assert other.height == pytest.approx(seat.height, abs=0.03)


def test_the_deep_end_of_the_keel_counts_over_the_blocks_of_a_dock() -> None:
    for name, drafts in result_of(dragged(), facility_drafts).items():
        assert drafts.over_blocks == pytest.approx(drafts.aft + 0.18, abs=0.05), name


def test_the_docking_plan_says_how_her_keel_lies() -> None:
    raked = docking_profile(with_sections(), dragged())
    assert isinstance(raked, Figure)
    assert "the straight keel stands 0.25 m lower aft" in raked.caption
    level = docking_profile(with_sections(), on_sections())
    assert isinstance(level, Figure)
    assert "lower aft" not in level.caption


def test_drag_that_is_stated_rakes_the_keel_of_a_ship_whose_form_is_not_known() -> None:
    ship = package()
    assert ship.particulars is not None
    keel = replace(ship.particulars.keel, drag=length("0.48 m"))
    dragging = replace(ship, particulars=replace(ship.particulars, keel=keel))
    bare = replace(dragging, offsets=None)
    line = result_of(calculate(bare), keel_line)
    assert line.rake == pytest.approx(0.01)
    assert line.at(24.0) == pytest.approx(-0.18)
    assert line.at(0.0) == pytest.approx(-0.18 - 0.24)
    assert result_of(calculate(dragging), keel_line).rake == 0.0, "her form goes before what is stated"
