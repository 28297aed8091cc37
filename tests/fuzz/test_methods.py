"""A sample of broken inputs of every method, the same each time; `make fuzz` goes on from there."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Any

import pytest

from tenderwright.calculations.method import Method
from tenderwright.calculations.registry import methods
from tenderwright.commands.exits import CLEAN, MISTAKES
from tests.fuzz.methods import broken, fault_of, reckoned


@pytest.mark.parametrize("method", methods().values(), ids=lambda method: method.name)
def test_a_broken_input_is_answered_or_told(method: Method[Any], tmp_path: Path) -> None:
    chance = random.Random(method.name)
    for _ in range(4):
        data, done = broken(method, chance)
        assert fault_of(method, data, tmp_path / "input.yaml") == "", done


def test_many_breaks_are_told_and_many_answered(tmp_path: Path) -> None:
    """A sample in which all is refused, or nothing, would hold every law."""
    chance = random.Random("told")
    sample = [chance.choice(list(methods().values())) for _ in range(60)]
    codes = [reckoned(method, broken(method, chance)[0], tmp_path / "input.yaml")[0] for method in sample]
    assert min(codes.count(CLEAN), codes.count(MISTAKES)) >= 10
