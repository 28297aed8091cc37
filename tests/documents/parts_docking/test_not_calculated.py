"""What could not be calculated stands in the chapter in words, with what it would take."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Table
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.facilities import facilities
from tenderwright.documents.owner.facility_fit import facility_comparison
from tenderwright.documents.parts.blocks import blocks
from tenderwright.documents.parts.footprints import footprints
from tests.documents.composed import composed, rows, tables, words
from tests.replacing import replace


def without(**changes: Any) -> Desk:
    """Lay the desk for the demonstration with parts of it taken away."""
    compiled = composed("marram").compiled
    package = replace(compiled.package, **changes)
    return Desk(package, compiled.links, calculate(package))


@cache
def without_weights() -> Desk:
    return without(lightship=None)


def test_a_facility_that_cannot_be_judged_keeps_its_place_and_says_what_is_lacking() -> None:
    part = facility_comparison(without_weights())
    assert part is not None
    (table,) = (one for one in part.blocks if isinstance(one, Table))
    assert [row[0] for row in rows(table)] == [one.name for one in without_weights().package.facilities]
    assert {tuple(row[1:3]) for row in rows(table)} == {("Not calculated", "it needs vessel/lightship.yaml")}


def test_one_facility_alone_keeps_its_place() -> None:
    package = composed("marram").compiled.package
    first, *others = package.facilities
    level = replace(first, slope=replace(package.facilities[-1].slope, gradient="1:0"))
    part = facility_comparison(without(facilities=(level, *others)))
    assert part is not None
    table = next(one for one in part.blocks if isinstance(one, Table))
    assert rows(table)[0][:2] == [first.name, "Not calculated"]
    assert [row[1] for row in rows(table)[1:]] == ["Not known", "Not known", "Fail"]


def test_a_cradle_that_cannot_be_arranged_says_so_under_its_facility() -> None:
    desk, estimate = without_weights(), composed("marram").owner.estimate
    assert estimate is not None
    said = words(facilities(OwnerDesk(desk.package, desk.links, desk.calculated, estimate=estimate)))
    assert said.count("Cradle. Not calculated: it needs vessel/lightship.yaml.") == 2


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (
            {"girder": None},
            "Elastic hull. Not calculated: it needs the stiffness of her hull girder in the docking plan.",
        ),
        ({}, ""),
    ],
)
def test_loads_of_blocks_that_are_lacking_say_why(change: dict[str, Any], said: str) -> None:
    plan = composed("marram").compiled.package.docking_plan
    part = blocks(without(docking_plan=replace(plan, **change)))
    assert part is not None
    assert said in words(part)
    assert ("Not calculated" in words(part)) == bool(said)


def test_without_stiffness_the_side_blocks_say_what_their_loads_need() -> None:
    plan = composed("marram").compiled.package.docking_plan
    assert plan is not None
    bare = tuple(replace(row, layers=()) for row in plan.keel_blocks)
    part = blocks(without(docking_plan=replace(plan, keel_blocks=bare)))
    assert part is not None
    assert "Loads of the side blocks. Not calculated: it needs the layers of every keel block" in words(part)
    assert [one.columns[0].title for one in tables(part)] == ["No.", "No.", "Pair from aft"]


def test_without_a_hull_the_blocks_against_the_hull_say_what_is_lacking() -> None:
    part = footprints(without(offsets=None))
    assert part is not None
    needs = "Not calculated: it needs the table of offsets or sections of the hull."
    assert f"Blocks on shell that is worked on. {needs}" in words(part)
    part = footprints(without(strakes=()))
    assert part is not None
    assert "Not calculated: it needs the list of strakes." in words(part)


def test_without_blocks_of_an_earlier_docking_the_places_covered_before_say_so() -> None:
    history = composed("marram").compiled.package.history
    part = footprints(
        without(history=tuple(replace(one, blocks=replace(one.blocks, keel=(), sides=())) for one in history))
    )
    assert part is not None
    assert "Not known: no earlier docking says where its blocks stood." in words(part)


def test_without_particulars_nothing_of_the_blocks_is_left_out_in_silence() -> None:
    part = footprints(without(particulars=None))
    assert part is not None
    assert words(part).count("Not calculated: it needs the ship's particulars.") >= 3
