"""A check leaves alone what a package does not say, and raises nothing where parts are missing."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.value import Record
from tenderwright.checks.context import Context
from tenderwright.checks.registry import CHECKS
from tenderwright.checks.run import run_checks
from tenderwright.linking.link import link
from tenderwright.model.package import Package
from tenderwright.notices import sort_notices
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
    assert run_checks(Context(package, compiled.links, calculate(EMPTY))) == []


def test_values_that_failed_are_told_once(tmp_path: Path) -> None:
    case = FIXTURES / "checks" / "sounding-beyond-tank" / "negative" / "above-the-top"
    compiled = compile_package(read(lay_over_starter(case, tmp_path)))
    record = Record(failed={"tank.feed-water.volume": "told at its place already"})
    failed = Altered(compiled.calculated, {}, record)
    assert run_checks(Context(compiled.package, compiled.links, failed)) == []


def test_the_notices_come_sorted_and_each_once(tmp_path: Path) -> None:
    case = FIXTURES / "checks" / "unbounded-words" / "negative" / "in-an-item"
    compiled = compile_package(read(lay_over_starter(case, tmp_path)))
    notices = run_checks(Context(compiled.package, compiled.links, compiled.calculated))
    assert notices == sort_notices(notices)
    assert len(notices) > 3
