"""Blocks as used, one by one, with the area that each touched; areas by hand."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.bare_places import bare_area, bare_places
from tenderwright.calculations.ship.docking_totals import docking_totals
from tenderwright.model.found import UsedBlock, UsedBlocks
from tenderwright.notices import Place
from tenderwright.quantities.position import FrameTable, parse_position
from tenderwright.quantities.quantity import Quantity, parse_quantity

from .conftest import MARRAM, SMALL, Tendered

FRAMES = FrameTable(list(range(0, 41)), [0.5 * n for n in range(0, 41)])
HERE = Place("findings.yaml")


def m(text: str) -> Quantity:
    return parse_quantity(text, "length")


def block(at: str, to: str = "", **more: object) -> UsedBlock:
    end = parse_position(to, FRAMES) if to else None
    return UsedBlock(at=parse_position(at, FRAMES), here=HERE, to=end, **more)  # type: ignore[arg-type]


def test_a_row_is_told_block_by_block_and_a_keel_block_touches_the_keel_alone() -> None:
    """From Fr 6 (3.0 m) to Fr 14 (7.0 m) at 1.5 m stand blocks at 3.0, 4.5 and 6.0 m; 0.3 m by a keel of 0.2 m."""
    row = block("Fr 6", "Fr 14", pitch=m("1.5 m"), length=m("300 mm"), width=m("900 mm"))
    places = bare_places(UsedBlocks(keel=(row,)), FRAMES, 0.2)
    assert [place.position for place in places] == ["Fr 6", "Fr 9", "Fr 12"]
    assert [place.area for place in places] == [pytest.approx(0.06)] * 3
    assert bare_area(places) == pytest.approx(0.18)


def test_side_blocks_stand_on_both_sides_and_touch_their_whole_cap() -> None:
    pair = block("Fr 20", side="both", off_centre=m("1.1 m"), length=m("300 mm"), width=m("400 mm"))
    places = bare_places(UsedBlocks(sides=(pair,)), FRAMES, 0.2)
    assert [(place.side, place.off_centre, place.area) for place in places] == [
        ("port", 1.1, pytest.approx(0.12)),
        ("starboard", 1.1, pytest.approx(0.12)),
    ]


def test_what_was_painted_is_not_bare_and_what_has_no_size_counts_as_nothing() -> None:
    painted = block("Fr 6", length=m("300 mm"), width=m("900 mm"), painted=True)
    places = bare_places(UsedBlocks(keel=(painted, block("Fr 9"))), FRAMES, 0.2)
    assert [place.painted for place in places] == [True, False]
    assert places[1].area is None
    assert bare_area(places) == 0


def test_anodes_left_are_weighed_against_what_they_weighed_when_new(sandling: Tendered) -> None:
    """p1 of 4 kg has 0.8 kg left, s1 of 4 kg a quarter, 1.0 kg: 1.8 of 8 kg."""
    found = sandling.check(SMALL)
    assert found.findings is not None
    totals = docking_totals(found.findings, sandling.compiled.package, found.readings)
    assert totals.anode_share_left == pytest.approx(1.8 / 8)
    assert (totals.anodes_fitted, totals.anode_mass) == (2, pytest.approx(8))
    assert totals.rivets == {"renewed": 31}


def test_a_reading_above_the_thickness_as_built_counts_as_no_loss(sandling: Tendered) -> None:
    """8.1 of 9.5 mm is a loss of 14.7 %; 8.0 of 7.9 mm is none."""
    found = sandling.check(SMALL)
    assert found.findings is not None
    losses = docking_totals(found.findings, sandling.compiled.package, found.readings).losses
    assert [(one.place, one.readings, one.where) for one in losses] == [
        ("strake A", 1, "Fr 18.5, port"),
        ("strake B", 1, "Fr 20, starboard"),
    ]
    assert losses[0].greatest_loss == pytest.approx(1 - 8.1 / 9.5)
    assert losses[1].greatest_loss == 0


def test_the_steel_of_the_demonstration_is_what_its_plates_weigh(marram: Tendered) -> None:
    found = marram.check(MARRAM)
    assert found.findings is not None
    masses = [192, 524, 418, 342, 206, 206, 96, 285, 140]
    totals = docking_totals(found.findings, marram.compiled.package, found.readings)
    assert totals.steel == pytest.approx(sum(masses))
    assert sum(one.readings for one in totals.losses) == len(found.readings) > 50
