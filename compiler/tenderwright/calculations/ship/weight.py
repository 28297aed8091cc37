"""What she weighs when she is docked: as she floats over the blocks, or by her weights alone where that is not known.

Keel blocks, line load, cradle and lift need her weight and its centre, and nothing of her form.
"""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.condition.loading import Loading, TankLoad, Weight
from tenderwright.calculations.condition.weight import METHOD as WEIGHT
from tenderwright.calculations.ship.condition import given_tanks, given_weights
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given
from tenderwright.model.lightship import Lightship
from tenderwright.quantities.display import show


class Weighed(Struct, frozen=True):
    """Her weight with its centre, and the values that say so."""

    loading: Loading
    condition: str
    mass_name: str
    """The last word of the value that is her weight."""

    def given(self, *, digits: int = 0, more: int = 0) -> dict[str, Given]:
        """Give weight and centre along her as inputs of a calculation."""
        weight, lcg = self.loading.mass, self.loading.lcg
        return {
            "weight": Given(weight, show(weight, "weight", digits=digits), f"{self.condition}.{self.mass_name}"),
            "lcg": Given(lcg, show(lcg, "centre", more=more), f"{self.condition}.lcg"),
        }


@step_of(WEIGHT, "condition.weight")
def weight_alone(
    docking: FloatingPosition | Absent,
    docking_weights: list[Weight],
    arrival_tanks: tuple[TankLoad, ...],
    lightship: Lightship,
) -> Uses | Absent:
    """Sum her weights where the docking condition cannot be had."""
    if not isinstance(docking, Absent):
        return NotAsked("the docking condition gives her weight")
    inputs = {"weights": given_weights(docking_weights, lightship), "tanks": given_tanks(arrival_tanks)}
    return Uses("by her weights and tanks, since she cannot be floated", inputs, lightship.here)


@step()
def docked_weight(docking: FloatingPosition | Absent, weight_alone: Loading | Absent) -> Weighed | Absent:
    """Give her weight in the docking condition, or by her weights alone."""
    if not isinstance(docking, Absent):
        return Weighed(docking.loading, "condition.docking", "displacement")
    if isinstance(weight_alone, Absent):
        return docking.passed_on()
    return Weighed(weight_alone, "condition.weight", "mass")
