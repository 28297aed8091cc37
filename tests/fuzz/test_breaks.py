"""A sample of breaks of Marram and of the starter, the same each time; `make fuzz` goes on from there."""

from __future__ import annotations

import random
from itertools import islice
from pathlib import Path

import pytest

from tests.fuzz.breaks import GONE, KINDS, NUMBERED, Break, breaks
from tests.fuzz.broken_package import BrokenPackage, Told
from tests.fuzz.law import fault_of, fault_of_two
from tests.pipeline.packages import marram, starter


@pytest.fixture(scope="module", params=["marram", "starter"])
def package(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> BrokenPackage:
    folder = tmp_path_factory.mktemp("broken") / request.param
    return BrokenPackage(marram(folder) if request.param == "marram" else starter(folder))


@pytest.mark.parametrize("kind", KINDS)
def test_a_broken_line_is_told_once_at_its_place(package: BrokenPackage, kind: str) -> None:
    sample = islice(breaks(package.texts, random.Random(f"lines {kind}"), (kind,)), 14)
    assert {str(one): fault for one in sample if (fault := fault_of(package.told(one)))} == {}


def test_a_file_that_is_gone_is_told_once(package: BrokenPackage) -> None:
    sample = random.Random("files").sample(sorted(package.texts), 14)
    assert {path: fault for path in sample if (fault := fault_of(package.told(Break(path, 0, GONE))))} == {}


def test_two_breaks_bring_no_more_than_each_alone(package: BrokenPackage) -> None:
    source = breaks(package.texts, random.Random("pairs"))
    pairs = [(next(source), next(source)) for _ in range(5)]
    assert {f"{one} {other}": fault for one, other in pairs if (fault := fault_of_two(package, one, other))} == {}


def test_a_number_that_is_another_ends_in_no_traceback(package: BrokenPackage) -> None:
    sample = islice(breaks(package.texts, random.Random("numbers"), (NUMBERED,)), 12)
    assert [type(package.told(one)) for one in sample] == [Told] * 12


def test_most_breaks_are_told(package: BrokenPackage) -> None:
    """A sample in which nothing is told would hold every law."""
    sample = islice(breaks(package.texts, random.Random("told"), ("mistyped",)), 10)
    assert sum(bool(package.told(one).errors) for one in sample) >= 4


def test_a_break_can_be_made_again_from_how_it_is_printed() -> None:
    one = Break("items/420-a.yaml", 7, "misspelt", 12)
    assert Break.read(str(one)) == one
    assert one.of("\n" * 6 + "title: x") == one.of("\n" * 6 + "title: x") != "\n" * 6 + "title: x"


def test_nothing_is_left_of_a_file_that_is_gone(tmp_path: Path) -> None:
    package = BrokenPackage(starter(tmp_path / "sandling"))
    before = sorted(path.relative_to(package.root) for path in package.root.rglob("*"))
    told = package.told(Break("package.yaml", 0, GONE))
    assert [notice.code for notice in told.notices] == ["missing-file"]
    assert sorted(path.relative_to(package.root) for path in package.root.rglob("*")) == before
