"""Every gross mistake of the list is told at its place, and nothing is told of what is sound."""

from __future__ import annotations

from functools import cache

import pytest
from msgspec.structs import replace

from tenderwright.calculations.steps.registry import steps
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.checks.coherence.ship.registry import check
from tenderwright.checks.context import Context
from tenderwright.model.load import load_package
from tenderwright.notices import Notice
from tenderwright.reading.package import Files
from tenderwright.shapes.shape import shape
from tests.coherence.damage import damaged, sound
from tests.coherence.ship.mistakes import MISTAKES

REACHES = ("particulars", "frames", "offsets", "tanks", "zones", "strakes", "surveys/")
"""Files of which the rules take what is calculated."""


@cache
def _yards() -> Files:
    return sound().files.without_owner()


def told_of(files: Files, file: str) -> list[Notice]:
    """Give what the rules say of files of which one is damaged; what it does not reach is calculated once."""
    mistakes, notices = shape(replace(files, sources={name: files.sources[name] for name in ("package.yaml", file)}))
    assert notices == []
    package, notices = load_package(files, mistakes)
    assert notices == []
    calculated = sound().compiled.calculated
    if any(word in file for word in REACHES):
        calculated = Calculated(package, [replace(step, lazy=True) for step in steps()])
    return list(check(Context(package, sound().compiled.links, calculated)))


@pytest.mark.parametrize(("file", "keys", "value", "code"), MISTAKES)
def test_a_gross_mistake_is_told_at_its_place(file: str, keys: str, value: str, code: str) -> None:
    told = told_of(damaged(_yards(), file, keys, value), file)
    assert (file, code) in {(notice.place.path, notice.code) for notice in told}


def test_nothing_is_told_of_the_demonstration() -> None:
    assert told_of(_yards(), "vessel/particulars.yaml") == []
