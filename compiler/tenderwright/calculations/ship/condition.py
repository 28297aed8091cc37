"""The arrival condition: lightship, weights and tanks afloat in the dock's water."""

from __future__ import annotations

from tenderwright.calculations.condition.floating import METHOD as FLOATING
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.ship.tanks import density_of
from tenderwright.calculations.steps.outcome import Absent, Each
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tanks.contents import TankContents
from tenderwright.calculations.tanks.sounding import Tank as TankShape
from tenderwright.calculations.value import Given
from tenderwright.model.lightship import Lightship
from tenderwright.model.particulars import Particulars
from tenderwright.model.tank import Tank
from tenderwright.quantities.position import FrameTable


def fixed_weights(lightship: Lightship) -> list[Weight]:
    """Give the lightship and the weights aboard."""
    light = lightship.lightship
    off = light.off_centre.si if light.off_centre else 0.0
    weights = [Weight("lightship", light.mass.si, light.at.si, off, light.height.si)]
    for weight in lightship.weights:
        off = weight.off_centre.si if weight.off_centre else 0.0
        weights.append(Weight(weight.what, weight.mass.si, weight.at.x, off, weight.height.si))
    return weights


@step()
def arrival_tanks(
    tanks: tuple[Tank, ...], tank_shape: Each[TankShape], tank_contents: Each[TankContents]
) -> tuple[TankLoad, ...] | Absent:
    """Give the tanks with what is in them on arrival."""
    absent = tank_contents.first_absent()
    if absent is not None:
        return absent
    loads = []
    for tank in tanks:
        shape = tank_shape.get(tank.tank)
        if shape is not None:
            density = density_of(tank).si
            volume = min(tank_contents[tank.tank].liquid.volume, shape.capacity)
            loads.append(TankLoad(tank.tank, shape, density, volume * density))
    return tuple(loads)


@step_of(FLOATING, "condition.arrival", kept=True)
def arrival(
    lightship: Lightship,
    buoyancy: Buoyancy,
    frames: FrameTable,
    arrival_tanks: tuple[TankLoad, ...],
    dock_water: Given,
    particulars: Particulars,
) -> Uses:
    """Find drafts, trim, list and metacentric height on arrival."""
    inputs = {
        **buoyancy.given,
        "weights": given_weights(fixed_weights(lightship), lightship),
        "tanks": given_tanks(arrival_tanks),
        "density": dock_water,
    }
    return Uses("on arrival, in the dock's water", inputs | given_marks(particulars), lightship.here)


def given_weights(weights: list[Weight], lightship: Lightship) -> Given:
    """Give weights as an input."""
    return Given(weights, f"lightship {lightship.lightship.mass} and {len(weights) - 1} weights", lightship.here)


def given_tanks(loads: tuple[TankLoad, ...]) -> Given:
    """Give tanks with what is in them as an input."""
    return Given(list(loads), f"{len(loads)} tanks", ", ".join(f"tank.{load.name}.mass" for load in loads))


def given_marks(particulars: Particulars) -> dict[str, Given]:
    """Give the draft marks at which she is read as an input; nothing where there are none."""
    marks = particulars.draft_marks
    if not marks:
        return {}
    places = [{"x": mark.at.x, "zero": mark.datum.si if mark.datum else 0.0} for mark in marks]
    return {"marks": Given(places, ", ".join(mark.name for mark in marks), marks[0].at.at)}
