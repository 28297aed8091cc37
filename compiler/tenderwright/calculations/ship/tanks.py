"""The ship's tanks: their shapes from bounds and hull, and what is in them on arrival."""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, pi
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tanks.capacity import METHOD as CAPACITY
from tenderwright.calculations.tanks.capacity_plan import METHOD as PLANNED
from tenderwright.calculations.tanks.contents import METHOD as CONTENTS
from tenderwright.calculations.tanks.contents import NO_PLACE
from tenderwright.calculations.tanks.liquid_densities import LIQUID_DENSITIES, LiquidDensity
from tenderwright.calculations.tanks.sounding import Tank as TankShape
from tenderwright.calculations.tanks.sounding import slanted_pipe, sounding_table
from tenderwright.calculations.tanks.sounding_volume import METHOD as SOUNDING
from tenderwright.calculations.tanks.table_volume import METHOD as TABLE
from tenderwright.calculations.value import Given, given
from tenderwright.model.lightship import Lightship
from tenderwright.model.package import Package
from tenderwright.model.particulars import Particulars
from tenderwright.model.tank import Bounds, CapacityPlan, SoundingPipe, Tank
from tenderwright.quantities.display import show
from tenderwright.quantities.position import FrameTable
from tenderwright.quantities.quantity import Quantity

_LIQUIDS = {"heavy oil": "heavy fuel oil", "oily water": "fresh water"}
"""Names of liquids in a package to those in the table of densities."""
_FOR = {"ballast": "sea water", "fuel oil": "diesel oil", "lubricating oil": "lubricating oil"}
"""What tanks are for, as a liquid of that table; fresh water otherwise."""


NO_SHELL = (
    "it needs vessel/offsets.yaml or vessel/sections.yaml, or bounds that are all distances, or the tank's `plan`"
)


class SoundingTable(Struct, frozen=True):
    """Volumes of one tank by sounding and trim; lengths in m, volumes in m3."""

    soundings: tuple[float, ...]
    trims: tuple[float, ...]
    volumes: tuple[tuple[float, ...], ...]
    """One row for each sounding, one column for each trim."""
    by: str = "sounding"
    """Or `ullage`, where the ship's own table goes by that."""


@step_of(CAPACITY, "tank.{}", each="tanks")
def tank_shape(tank: Tank, hull: Hull | None, frames: FrameTable, particulars: Particulars | None) -> Uses | Absent:
    """Build a tank's space between its bounds and the shell, with its pipe; or a box by its capacity plan."""
    bounds = tank.bounds
    shape = _shape(tank, bounds, hull) if bounds is not None else None
    if bounds is None or shape is None:
        if tank.plan is not None:
            return _planned(tank, tank.plan, particulars)
        if bounds is None:
            return Lacking(f"it needs the bounds of tank `{tank.tank}` in vessel/tanks.yaml, or its `plan`")
        return Lacking(NO_SHELL)
    words = f"{bounds.from_} to {bounds.to}, {bounds.bottom} to {bounds.top}, {bounds.inboard} to {bounds.outboard}"
    inputs = {
        "shape": Given(shape, words + (f"; hull {hull.words}" if hull else ""), bounds.here),
        "permeability": given(tank.permeability) if tank.permeability else Given(1.0, "100 %", "nothing taken off"),
    }
    return Uses(tank.name, inputs | _pipe(tank.pipe, bounds), tank.contents.here, of=tank.name)


def _planned(tank: Tank, plan: CapacityPlan, particulars: Particulars | None) -> Uses | Absent:
    """Give what the capacity plan tells of a tank."""
    if tank.capacity is None:
        return Lacking(f"it needs `capacity` of tank `{tank.tank}` in vessel/tanks.yaml")
    if (plan.from_ is None) != (plan.to is None):
        return Lacking(
            f"it needs both `from` and `to` of the plan of tank `{tank.tank}` in vessel/tanks.yaml, or neither"
        )
    inputs = {
        "capacity": given(tank.capacity),
        "x": given(plan.at),
        "y": given(plan.off_centre) if plan.off_centre else Given(0.0, "on the centreline", plan.here),
        "z": given(plan.height),
    }
    if plan.from_ is not None and plan.to is not None:
        aft, forward = sorted((plan.from_, plan.to), key=lambda end: end.x)
        inputs |= {"x_aft": given(aft), "x_forward": given(forward)}
    if plan.bottom is not None:
        inputs["bottom"] = given(plan.bottom)
    if plan.inertia is not None:
        inputs["free_surface"] = given(plan.inertia)
    elif plan.moment is not None:
        density = given(plan.density) if plan.density else _lightest(tank)
        words = f"{plan.moment} at {density.text}"
        inputs["free_surface"] = Given(plan.moment.si / density.si, words, plan.moment.at)
    elif plan.breadth is not None:
        inputs["breadth"] = given(plan.breadth)
    elif particulars is not None:
        beam = particulars.dimensions.beam
        share, words = (0.5, f"half of {beam}") if tank.side in ("port", "starboard") else (1.0, f"{beam}")
        inputs["breadth"] = Given(beam.si * share, words, beam.at)
    return Uses(f"{tank.name} by the capacity plan", inputs, plan.here, of=tank.name, by=PLANNED)


def _lightest(tank: Tank) -> Given:
    """Give the lighter of what is in a tank and what it is for, by which a free-surface moment weighs most."""
    usual = LIQUID_DENSITIES[_FOR.get(tank.use, "fresh water")]
    words = show(usual.density, "density")
    by_use = Given(usual.density, words, f"usual density of what is carried as {tank.use}: {usual.source}")
    return by_use if tank.contents.liquid == "none" else min(density_of(tank), by_use, key=lambda one: one.si)


def _shape(tank: Tank, bounds: Bounds, hull: Hull | None) -> dict[str, Any] | None:
    aft, forward = sorted((bounds.from_.x, bounds.to.x))
    along = {"x_aft": aft, "x_forward": forward}
    bottom = {"bottom": bounds.bottom.si} if isinstance(bounds.bottom, Quantity) else {}
    outboard = {"outboard": bounds.outboard.si} if isinstance(bounds.outboard, Quantity) else {}
    inboard = bounds.inboard.si
    if hull is not None:
        side = tank.side if tank.side in ("port", "starboard") else "both"
        own = {"top": bounds.top.si, "inboard": inboard, "side": side}
        return {"hull": {"offsets": hull.form, **along, **bottom, **outboard, **own}}
    if not bottom or not outboard:
        return None
    outer = outboard["outboard"]
    low, high = {"port": (inboard, outer), "starboard": (-outer, -inboard)}.get(tank.side, (-outer, outer))
    return {"box": {**along, "y_starboard": low, "y_port": high, **bottom, "top": bounds.top.si}}


def _pipe(pipe: SoundingPipe | None, bounds: Bounds) -> dict[str, Given]:
    if pipe is None:
        return {}
    foot = (pipe.at.x, pipe.off_centre.si if pipe.off_centre else 0.0, pipe.foot.si)
    words = f"foot at {pipe.at}, {pipe.off_centre or 'on the centreline'}, {pipe.foot} up"
    found = {"pipe_foot": Given(_point(*foot), words, pipe.here)}
    slant = pipe.slant.si if pipe.slant else 0.0
    if pipe.head is None and not slant:
        return found
    top = pipe.head or bounds.top
    if top.si <= foot[2]:
        raise OutOfRange(f"the head of the sounding pipe, {top}, is not above its foot, {pipe.foot}")
    head = (foot[0], foot[1], top.si)
    if slant:
        # The package gives heights; the tape runs along the pipe.
        head = slanted_pipe(foot, (top.si - foot[2]) / cos(slant), abs(slant), 0.0 if slant > 0 else pi).head
    return found | {"pipe_head": Given(_point(*head), f"head {top} up", pipe.here)}


def _point(x: float, y: float, z: float) -> dict[str, float]:
    return {"x": x, "y": y, "z": z}


@step_of(TABLE, "tank.{}", names={"volume": "table-volume"}, each="tanks")
def tank_table(
    tank: Tank, tank_shape: TankShape | None, lightship: Lightship | None, particulars: Particulars | None
) -> Uses | Absent:
    """Read the ship's own table at the sounding or ullage, corrected to an even keel by where the pipe stands."""
    contents = tank.contents
    reading = contents.sounding or contents.ullage
    told = contents.volume or contents.full or contents.mass
    if not tank.table or reading is None or told is not None or contents.liquid == "none":
        return NotAsked("it is not sounded by a table of the ship's own")
    word, readings = table_readings(tank)
    if word not in ("sounding", "ullage"):
        return Lacking(f"it needs `{word}` in every row of the table of tank `{tank.tank}` in vessel/tanks.yaml")
    at, shown = reading.si, f"{reading}"
    if (word == "sounding") != (contents.sounding is not None):
        pipe = _pipe_length(tank.pipe)
        if pipe is None:
            return Lacking(f"it needs `foot` and `head` of the pipe of tank `{tank.tank}` in vessel/tanks.yaml")
        at, shown = pipe - at, f"{shown} on a pipe of {show(pipe, 'centre', more=1)}"
    deeper = _deeper_at_pipe(tank, tank_shape, _slope(lightship, particulars))
    at = max(at + deeper if word == "sounding" else at - deeper, min(readings))
    rows = sorted(zip(readings, (row.volume.si for row in tank.table), strict=True))
    inputs = {
        word: Given(at, f"{shown} corrected to {show(at, 'centre', more=1)}", reading.at),
        f"{word}s": Given([one for one, _ in rows], f"{len(rows)} rows", tank.here),
        "volumes": Given([volume for _, volume in rows], f"{len(rows)} rows", tank.here),
    }
    return Uses(f"{tank.name} by the ship's own table", inputs, contents.here, of=tank.name)


def table_readings(tank: Tank) -> tuple[str, list[float]]:
    """Give whether the ship's own table goes by sounding or by ullage, and its readings [m].

    Where a row has no such reading, the word alone.
    """
    by_word = {
        "sounding": [row.sounding.si for row in tank.table if row.sounding is not None],
        "ullage": [row.ullage.si for row in tank.table if row.ullage is not None],
    }
    for word, readings in by_word.items():
        if len(readings) == len(tank.table):
            return word, readings
    return "sounding` or `ullage", []


def _pipe_length(pipe: SoundingPipe | None) -> float | None:
    """Give the length of a pipe whose head is known [m]."""
    if pipe is None or pipe.head is None:
        return None
    return (pipe.head.si - pipe.foot.si) / (cos(pipe.slant.si) if pipe.slant else 1.0)


def _deeper_at_pipe(tank: Tank, shape: TankShape | None, slope: float) -> float:
    """Give how much less deep the liquid stands at the pipe than at the tank's middle, for a slope of trim [m]."""
    if shape is None or tank.pipe is None:
        return 0.0
    middle = (shape.body.lower_corner[0] + shape.body.upper_corner[0]) / 2
    return float(tank.pipe.at.x - middle) * slope


def sounding_by_table(tank: Tank, shape: TankShape, volume: float, slope: float) -> float | None:
    """Give the sounding [m] at which the ship's own table has a volume [m3]; None where it does not say."""
    word, readings = table_readings(tank) if tank.table else ("", [])
    pipe = _pipe_length(tank.pipe)
    if word == "ullage" and pipe is not None:
        readings = [pipe - one for one in readings]
    elif word != "sounding":
        return None
    rows = sorted((row.volume.si, at) for row, at in zip(tank.table, readings, strict=True))
    if not rows or not rows[0][0] <= volume <= rows[-1][0]:
        return 0.0 if volume == 0 else None
    at = float(np.interp(volume, [v for v, _ in rows], [s for _, s in rows]))
    return max(at - _deeper_at_pipe(tank, shape, slope), 0.0) if volume else 0.0


@step_of(SOUNDING, "tank.{}", each="tanks", kept=True)
def tank_contents(
    tank: Tank,
    frames: FrameTable,
    tank_shape: TankShape | None,
    tank_table: Mapping[str, float] | None,
    lightship: Lightship | None,
    particulars: Particulars | None,
) -> Uses | Absent:
    """Find what is in a tank on arrival: by its sounding, by what is known of its contents, or nothing."""
    contents, shape = tank.contents, tank_shape
    reading = contents.sounding or contents.ullage
    told = {"volume": contents.volume, "mass": contents.mass, "full": contents.full}
    inputs = {"density": density_of(tank)}
    if shape is not None:
        inputs["tank"] = Given(shape.body, f"the space of {tank.name}", f"tank.{tank.tank}.capacity")
        inputs["permeability"] = Given(shape.permeability, f"{shape.permeability:.0%}", f"tank.{tank.tank}.capacity")
    known = {name: given(one) for name, one in told.items() if one is not None}
    if contents.liquid == "none" or (reading is None and not known):
        inputs["volume"] = Given(0.0, "empty", contents.here)
    elif shape is None and tank.bounds is not None:
        return Lacking(NO_SHELL)
    elif known:
        inputs |= known | _trim(lightship, particulars)
    elif tank_table is not None:
        volume = min(tank_table["volume"], shape.capacity) if shape else tank_table["volume"]
        inputs["volume"] = Given(volume, show(volume, "capacity"), f"tank.{tank.tank}.table-volume")
        inputs |= _trim(lightship, particulars)
    elif shape is None:
        raise OutOfRange(NO_PLACE)
    elif shape.planned:
        needs = (
            f"it needs `table` of tank `{tank.tank}` in vessel/tanks.yaml, or its bounds: its plan has no form to sound"
        )
        return Lacking(needs)
    else:
        if reading is None or shape.pipe is None or tank.pipe is None:
            raise OutOfRange("a sounding or an ullage needs a sounding pipe")
        inputs["sounding" if contents.sounding else "ullage"] = given(reading)
        inputs |= _trim(lightship, particulars)
        for name, point in (("pipe_foot", shape.pipe.foot), ("pipe_head", shape.pipe.head)):
            inputs[name] = Given(_point(*point), f"{name.replace('_', ' ')} of {tank.name}", tank.pipe.here)
        return Uses(f"{tank.name} on arrival", inputs, contents.here, of=tank.name)
    return Uses(f"{tank.name} on arrival", inputs, contents.here, of=tank.name, by=CONTENTS)


def _trim(lightship: Lightship | None, particulars: Particulars | None) -> dict[str, Given]:
    """Give the trim at which the tanks were sounded, from the drafts last read; nothing where none were."""
    if lightship is None or lightship.observed is None or particulars is None:
        return {}
    observed, length = lightship.observed, particulars.dimensions.length_between_perpendiculars
    trim = observed.aft.si - observed.forward.si
    words = f"{show(trim, 'trim', more=1)} by the drafts last read, {observed.aft} aft and {observed.forward} forward"
    return {"trim": Given(trim, words, observed.here), "length_between_perpendiculars": given(length)}


def _slope(lightship: Lightship | None, particulars: Particulars | None) -> float:
    found = _trim(lightship, particulars)
    return found["trim"].si / found["length_between_perpendiculars"].si if found else 0.0


def observed_slope(package: Package) -> float:
    """Give the slope of the trim at which the tanks were sounded; level where no drafts were read."""
    return _slope(package.lightship, package.particulars)


def density_of(tank: Tank) -> Given:
    """Give the density of a tank's liquid: as measured, or the usual one with its source."""
    contents = tank.contents
    if contents.density is not None:
        return given(contents.density)
    usual = _usual_liquid(contents.liquid)
    words = show(usual.density, "density")
    return Given(usual.density, words, f"usual density of {contents.liquid}: {usual.source}")


def liquid_density(liquid: str) -> float:
    """Give the usual density of a liquid by its name in a package, kg/m3."""
    return _usual_liquid(liquid).density


def _usual_liquid(liquid: str) -> LiquidDensity:
    return LIQUID_DENSITIES.get(_LIQUIDS.get(liquid, liquid), LIQUID_DENSITIES["fresh water"])


@step(each="tanks", lazy=True)
def tank_sounding_table(tank: Tank, tank_shape: TankShape, particulars: Particulars) -> SoundingTable | Absent:
    """Make a sounding table for a tank with a pipe, at even keel and at two trims by the stern."""
    shape = tank_shape
    if shape.planned:
        word, readings = table_readings(tank) if tank.table else ("", [])
        if not readings:
            return Lacking(f"it needs `table` of tank `{tank.tank}` in vessel/tanks.yaml, or its bounds and her hull")
        return SoundingTable(tuple(readings), (0.0,), tuple((row.volume.si,) for row in tank.table), word)
    if shape.pipe is None:
        return Lacking(f"it needs the sounding pipe of tank `{tank.tank}` in vessel/tanks.yaml")
    length = particulars.dimensions.length_between_perpendiculars.si
    trims = (0.0, 0.3, 0.6)
    along = shape.pipe.length / (shape.pipe.head[2] - shape.pipe.foot[2])
    reach = along * (min(shape.pipe.head[2], shape.body.top) - shape.pipe.foot[2])
    step = 0.05 if reach <= 1.2 else 0.1 if reach <= 2.5 else 0.2
    soundings = [step * count for count in range(int(reach / step + 1e-9) + 1)]
    if reach - soundings[-1] > 1e-6:
        soundings.append(reach)
    volumes = sounding_table(shape, soundings, [trim / length for trim in trims])
    return SoundingTable(tuple(soundings), trims, tuple(tuple(row) for row in volumes.tolist()))
