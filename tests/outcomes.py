"""What the steps found of a ship, and the same with some outcomes put in the place of others."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.steps.step import Step
from tenderwright.calculations.value import Record

R = TypeVar("R")


def result_of(calculated: Calculated, step: Step[R]) -> R:
    """Give the result of a step that must have one."""
    outcome = calculated.outcome(step)
    assert not isinstance(outcome, Absent), outcome
    return outcome


class Altered(Calculated):
    """What was calculated of a ship, read with other outcomes of some steps; nothing that rests on them is changed."""

    def __init__(self, of: Calculated, instead: Mapping[Step[Any], Any], record: Record | None = None) -> None:
        self.record = record or of.record
        self._unaltered = of
        self._instead = instead

    def outcome(self, step: Step[R]) -> R | Absent:
        """Give the outcome put in its place, or that of the ship."""
        found: R | Absent = self._instead[step] if step in self._instead else self._unaltered.outcome(step)
        return found
