"""The arrival condition: lightship, weights and tanks afloat in the dock's water."""

from __future__ import annotations

from math import isfinite

from tenderwright.calculations.condition.floating import METHOD as FLOATING
from tenderwright.calculations.condition.floating import FloatingPosition, floating_position
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.form import given_form
from tenderwright.calculations.ship.tanks import density_of
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package

_NEEDED = {f"vessel/{name}.yaml" for name in ("particulars", "frames", "offsets", "lightship", "tanks")}


def fixed_weights(package: Package) -> list[Weight]:
    """Give the lightship and the weights aboard."""
    lightship = package.lightship
    assert lightship is not None
    light = lightship.lightship
    weights = [
        Weight(
            "lightship",
            light.mass.si,
            light.at.si,
            light.off_centre.si if light.off_centre else 0.0,
            light.height.si,
        )
    ]
    for weight in lightship.weights:
        off = weight.off_centre.si if weight.off_centre else 0.0
        weights.append(Weight(weight.what, weight.mass.si, weight.at.x, off, weight.height.si))
    return weights


def tank_loads(package: Package, results: Results) -> list[TankLoad]:
    """Give the tanks with what is in them on arrival."""
    loads = []
    for tank in package.tanks:
        shape, liquid = results.tanks.get(tank.tank), results.contents.get(tank.tank)
        if shape is not None and liquid is not None:
            density = density_of(tank).si
            volume = min(liquid.volume, shape.capacity)
            loads.append(TankLoad(tank.tank, shape, density, volume * density))
    return loads


def condition_outputs(found: FloatingPosition) -> dict[str, float]:
    """Give a floating position as the outputs of the method."""
    h, loading = found.hydrostatics, found.loading
    outputs = {
        "displacement": loading.mass,
        "lcg": loading.lcg,
        "tcg": loading.tcg,
        "vcg": loading.vcg,
        "free_surface_moment": loading.free_surface_moment,
        "draft_aft": h.draft_aft,
        "draft_forward": h.draft_forward,
        "draft_mean": h.draft,
        "trim": h.trim,
        "list": found.heel if found.heel is not None else float("nan"),
        "km": h.km_transverse,
        "gm_solid": found.gm_solid,
        "gm_fluid": found.gm_fluid,
    }
    return {name: value for name, value in outputs.items() if isfinite(value)}


def arrival_condition(package: Package, results: Results, record: Record, density: Given) -> None:
    """Keep drafts, trim, list and metacentric height on arrival."""
    lightship, form = package.lightship, results.form
    if lightship is None or form is None:
        if package.frames is None or results.form_broken or package.broken.files & _NEEDED:
            record.spoil(FLOATING, "condition.arrival", "what it rests on has a mistake")
        else:
            record.lack(FLOATING, "condition.arrival", "it needs vessel/offsets.yaml and vessel/lightship.yaml")
        return
    if any(f"tank.{tank.tank}.volume" in record.failed for tank in package.tanks):
        record.spoil(FLOATING, "condition.arrival", "a tank could not be calculated")
        return
    tanks = tank_loads(package, results)
    inputs = {
        "offsets": given_form(package),
        "lightship": given(lightship.lightship.mass),
        "weights": Given(None, f"{len(lightship.weights)} weights aboard", lightship.here),
        "tanks": Given(None, f"{len(tanks)} tanks", ", ".join(f"tank.{load.name}.mass" for load in tanks)),
        "density": density,
    }
    try:
        found = floating_position(form, fixed_weights(package), tanks, density.si)
    except OutOfRange as error:
        record.fail(FLOATING, "condition.arrival", str(error), lightship.here)
        return
    results.arrival = found
    record.keep(FLOATING, "condition.arrival", "on arrival, in the dock's water", inputs, condition_outputs(found))
