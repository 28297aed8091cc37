"""What the calculations give besides single values: forms, tables and arrangements that drawings and pages need."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, TypeVar

from tenderwright.calculations.docking_results import DockingResults
from tenderwright.calculations.steps.outcome import Absent, NotAsked

if TYPE_CHECKING:
    from tenderwright.calculations.condition.floating import FloatingPosition
    from tenderwright.calculations.condition.target_trim import TrimPlan
    from tenderwright.calculations.cradle.cars import Cradle
    from tenderwright.calculations.hydrostatics.hull_form import HullForm
    from tenderwright.calculations.steps.runner import Calculated
    from tenderwright.calculations.steps.step import Step
    from tenderwright.calculations.tanks.liquid import Liquid
    from tenderwright.calculations.tanks.sounding import Tank as TankShape

R = TypeVar("R")


@dataclass
class Results:
    """The ship's results; a part that could not be calculated is None or left out."""

    calculated: Calculated | None = None
    """The outcomes of the steps, which take the place of all that stands below."""
    form: HullForm | None = None
    form_broken: bool = False
    """Whether there are offsets that are not a hull."""
    water_density: float = 1025.0
    tanks: dict[str, TankShape] = field(default_factory=dict)
    contents: dict[str, Liquid] = field(default_factory=dict)
    arrival: FloatingPosition | None = None
    trim_plan: TrimPlan | None = None
    cradles: dict[str, Cradle] = field(default_factory=dict)
    docking: DockingResults = field(default_factory=DockingResults)

    def outcome(self, step: Step[R]) -> R | Absent:
        """Give the result of a step, or why there is none."""
        return self.calculated.outcome(step) if self.calculated is not None else NotAsked("nothing was calculated")

    def found(self, step: Step[R]) -> R | None:
        """Give the result of a step, or None where there is none."""
        return self.calculated.found(step) if self.calculated is not None else None
