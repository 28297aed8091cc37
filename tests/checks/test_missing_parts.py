"""A check leaves alone what a package does not say, and raises nothing where parts are missing."""

from __future__ import annotations

import inspect
from pathlib import Path

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.footprints import block_clearances
from tenderwright.calculations.ship.landing import landing_estimate
from tenderwright.calculations.ship.tanks import tank_shape
from tenderwright.calculations.steps.outcome import Each, Failed, Lacking, NotAsked, Resting
from tenderwright.calculations.value import Record
from tenderwright.checks.context import Context
from tenderwright.checks.registry import CHECKS
from tenderwright.checks.run import run_checks
from tenderwright.linking.link import link
from tenderwright.model.package import Package
from tenderwright.notices import Notice, Place, sort_notices
from tenderwright.pipeline import Compiled, compile_package, read
from tenderwright.starter.write import write_starter
from tests.fixtures.overlay import FIXTURES, lay_over_starter
from tests.outcomes import Altered
from tests.replacing import replace

EMPTY = Package(tender=None, particulars=None, frames=None, offsets=None, lightship=None)


@pytest.fixture(scope="module")
def compiled(tmp_path_factory: pytest.TempPathFactory) -> Compiled:
    folder = tmp_path_factory.mktemp("starter")
    write_starter(folder)
    return compile_package(read(folder))


@pytest.mark.parametrize("code", CHECKS)
def test_an_empty_package_breaks_no_rule(code: str) -> None:
    links, _ = link(EMPTY)
    assert list(CHECKS[code](Context(EMPTY, links, calculate(EMPTY)))) == []


@pytest.mark.parametrize(
    "part",
    [
        "tender", "particulars", "lightship", "tanks", "openings", "strakes", "zones", "schemes", "anodes", "clauses",
    ],
)  # fmt: skip
def test_a_part_left_out_is_no_mistake_of_its_own(part: str, compiled: Compiled) -> None:
    nothing = () if isinstance(getattr(compiled.package, part), tuple) else None
    package = replace(compiled.package, **{part: nothing})
    assert run_checks(Context(package, compiled.links, calculate(EMPTY)))[0] == []


def test_a_check_that_cannot_be_made_says_what_it_would_take(compiled: Compiled) -> None:
    plan = "it needs vessel/docking-plan.yaml"
    told = {one.code for one in compiled.unjudged if one.why == plan}
    assert {"block-overloaded", "floats-off-unlevel", "stability-below-asked", "soundings-too-old"} <= told
    assert all(one.why == plan for one in compiled.unjudged)


def test_what_nothing_asks_for_is_no_check_left_out(compiled: Compiled) -> None:
    assert not {"unlike-metals", "stated-differs", "anodes-outlived"} & {one.code for one in compiled.unjudged}


def test_a_check_that_rests_on_a_mistake_says_so_in_one_line(compiled: Compiled) -> None:
    failed = Failed("too deep", Notice("out-of-range", Place("vessel/docking-plan.yaml"), "too deep"))
    instead = {landing_estimate: failed, block_clearances: Resting("a mistake elsewhere")}
    altered = Altered(compiled.calculated, instead)
    _, unjudged = run_checks(Context(compiled.package, compiled.links, altered))
    told = {one.code: one.why for one in unjudged if one.code in ("unstable-before-settling", "opening-under-block")}
    assert set(told.values()) == {"what it rests on has a mistake"}
    assert len(told) == 2


def test_of_several_things_those_without_a_result_are_told(compiled: Compiled) -> None:
    tank = compiled.package.tanks[0].tank
    for outcome, why in ((Lacking("it needs more"), ["it needs more"]), (NotAsked("nobody asks"), [])):
        altered = Altered(compiled.calculated, {tank_shape: Each({tank: outcome})})
        context = Context(compiled.package, compiled.links, altered)
        assert context.found_for(tank_shape, tank) is None
        assert list(context.reasons) == why


@pytest.mark.parametrize("code", CHECKS)
def test_a_check_asks_through_its_context(code: str) -> None:
    module = inspect.getmodule(CHECKS[code])
    assert module is not None
    assert "context.calculated" not in inspect.getsource(module)


def test_values_that_failed_are_told_once(tmp_path: Path) -> None:
    case = FIXTURES / "checks" / "sounding-beyond-tank" / "negative" / "above-the-top"
    compiled = compile_package(read(lay_over_starter(case, tmp_path)))
    record = Record(failed={"tank.feed-water.volume": "told at its place already"})
    failed = Altered(compiled.calculated, {}, record)
    assert run_checks(Context(compiled.package, compiled.links, failed))[0] == []


def test_the_notices_come_sorted_and_each_once(tmp_path: Path) -> None:
    case = FIXTURES / "checks" / "unbounded-words" / "negative" / "in-an-item"
    compiled = compile_package(read(lay_over_starter(case, tmp_path)))
    notices, _ = run_checks(Context(compiled.package, compiled.links, compiled.calculated))
    assert notices == sort_notices(notices)
    assert len(notices) > 3
