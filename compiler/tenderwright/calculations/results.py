"""What the calculations give besides single values: forms, tables and arrangements that drawings and pages need."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from tenderwright.calculations.condition_results import ConditionResults
from tenderwright.calculations.docking_results import DockingResults

if TYPE_CHECKING:
    from tenderwright.calculations.coatings.scheme import Scheme as PaintScheme
    from tenderwright.calculations.condition.floating import FloatingPosition
    from tenderwright.calculations.condition.target_trim import TrimPlan
    from tenderwright.calculations.cradle.cars import Fit
    from tenderwright.calculations.hydrostatics.hull_form import HullForm
    from tenderwright.calculations.hydrostatics.upright import Hydrostatics
    from tenderwright.calculations.tanks.liquid import Liquid
    from tenderwright.calculations.tanks.sounding import Tank as TankShape


@dataclass(frozen=True)
class SoundingTable:
    """Volumes of one tank by sounding and trim; lengths in m, volumes in m3."""

    soundings: tuple[float, ...]
    trims: tuple[float, ...]
    volumes: tuple[tuple[float, ...], ...]
    """One row for each sounding, one column for each trim."""


@dataclass
class Results:
    """The ship's results; a part that could not be calculated is None or left out."""

    form: HullForm | None = None
    form_broken: bool = False
    """Whether there are offsets that are not a hull."""
    water_density: float = 1025.0
    hydrostatics: list[Hydrostatics] = field(default_factory=list)
    tanks: dict[str, TankShape] = field(default_factory=dict)
    contents: dict[str, Liquid] = field(default_factory=dict)
    sounding_tables: dict[str, SoundingTable] = field(default_factory=dict)
    arrival: FloatingPosition | None = None
    trim_plan: TrimPlan | None = None
    cradles: dict[str, Fit] = field(default_factory=dict)
    docking: DockingResults = field(default_factory=DockingResults)
    condition: ConditionResults = field(default_factory=ConditionResults)
    paint: dict[str, PaintScheme] = field(default_factory=dict)
    """By scheme."""
    areas: dict[str, float] = field(default_factory=dict)
    """Area of each scheme, m2."""
