"""The demonstration ship, calculated once, and again with another docking plan."""

from __future__ import annotations

from functools import cache
from typing import Any, TypeVar

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.steps.step import Step
from tenderwright.model.docking_plan import DockingPlan, KeelBlocks
from tenderwright.model.package import Package
from tenderwright.pipeline import compile_package, read
from tenderwright.quantities.position import Position, parse_position
from tenderwright.quantities.quantity import Quantity, parse_quantity
from tests.outcomes import result_of
from tests.pipeline.packages import MARRAM
from tests.replacing import replace

R = TypeVar("R")


@cache
def package() -> Package:
    """Give the package as read."""
    return compile_package(read(MARRAM)).package


@cache
def ship() -> Calculated:
    """Give what the calculations make of it."""
    return calculated(package())


def calculated(of: Package) -> Calculated:
    """Calculate a package."""
    return calculate(of)


def found(step: Step[R]) -> R:
    """Give what a step found of her."""
    return result_of(ship(), step)


def plan() -> DockingPlan:
    """Give her docking plan."""
    found = package().docking_plan
    assert found is not None
    return found


def with_plan(**changes: Any) -> Package:
    """Give her package with parts of the docking plan changed."""
    return replace(package(), docking_plan=replace(plan(), **changes))


def length(text: str) -> Quantity:
    """Read a length."""
    return parse_quantity(text, "length")


def at(text: str) -> Position:
    """Read a position by her frames."""
    frames = package().frames
    assert frames is not None
    return parse_position(text, frames)


def row(first: str, last: str, every: int, cap: str = "300 mm") -> KeelBlocks:
    """Give a row of keel blocks on frames."""
    return KeelBlocks(
        at=at(first),
        length=length(cap),
        width=length("1.0 m"),
        here=plan().here,
        to=at(last),
        every=every,
        bearing_width=length("400 mm"),
    )
