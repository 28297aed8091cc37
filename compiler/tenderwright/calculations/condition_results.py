"""What the calculations of the ship's condition give besides single values: for its drawings and pages.

Lengths and thicknesses in m, areas in m2, masses in kg, rates in m a year, x forward of the after perpendicular.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tenderwright.calculations.anodes.layout import Layout
    from tenderwright.calculations.anodes.life import AnodeLife
    from tenderwright.calculations.anodes.number import AnodeNumber


@dataclass(frozen=True)
class AnodeGroup:
    """Anodes fitted on one day and looked at on another."""

    anodes: tuple[str, ...]
    fitted: str
    seen: str
    years: float
    mean_left: float
    least_left: float
    life: AnodeLife
    mean_current: float
    """A, of all of them."""


@dataclass(frozen=True)
class AnodePlan:
    """What the anodes have to do until the next docking, and whether those fitted do it."""

    needed: AnodeNumber
    each: float
    """Mean net mass of the anodes fitted, kg."""
    fitted: int
    initial: float
    """Current asked at the start, A."""
    mean: float
    final: float
    greatest_life: float
    """How long the anodes fitted, renewed, last by mass, in years."""
    layout: Layout | None = None
    """Places of further anodes a side, where more are needed than are fitted."""


@dataclass
class ConditionResults:
    """Everything about the condition of the ship; a part that could not be calculated is None or empty."""

    anode_groups: tuple[AnodeGroup, ...] = ()
    anode_plan: AnodePlan | None = None
