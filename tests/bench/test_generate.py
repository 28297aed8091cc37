from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.pipeline import compile_package, read

from .bench import Ratio, best, table
from .generate import MARRAM, generate


def test_a_package_of_many_items_has_no_mistakes_of_its_own(tmp_path: Path) -> None:
    """What the demonstration itself is told is told once, whatever the number of items."""
    compiled = compile_package(read(generate(tmp_path / "package", 100)))
    assert len(compiled.package.items) == 100
    assert [notice for notice in compiled.notices if notice.place.path.endswith("-copy.yaml")] == []


@pytest.mark.parametrize("count", [0, 20_000])
def test_too_few_or_too_many_are_refused(tmp_path: Path, count: int) -> None:
    with pytest.raises(ValueError, match="can be made"):
        generate(tmp_path / "package", count)


def test_nothing_confidential_is_copied(tmp_path: Path) -> None:
    own = len(list((MARRAM / "items").glob("*.yaml")))
    assert not (generate(tmp_path / "package", own) / "owner").exists()


def test_the_best_of_several_and_the_table() -> None:
    calls: list[int] = []
    times = best(3, lambda: calls.append(1), lambda: calls.append(2))
    assert calls == [1, 2] * 3
    assert all(0 <= time < 60 for time in times)
    text = table([Ratio("a / b", 1.0, 2.0, 1.0), Ratio("c / d", 3.0, 1.0, 2.0)])
    assert [line.split()[-1] for line in text.splitlines()[1:]] == ["met", "met"]
    assert text.splitlines()[2].endswith("not met")
