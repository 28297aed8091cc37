"""The ship's tanks: their shapes from bounds and hull, and what is in them on arrival."""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, pi
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tanks.capacity import METHOD as CAPACITY
from tenderwright.calculations.tanks.contents import METHOD as CONTENTS
from tenderwright.calculations.tanks.liquid_densities import LIQUID_DENSITIES, LiquidDensity
from tenderwright.calculations.tanks.sounding import Tank as TankShape
from tenderwright.calculations.tanks.sounding import slanted_pipe, sounding_table
from tenderwright.calculations.tanks.sounding_volume import METHOD as SOUNDING
from tenderwright.calculations.tanks.table_volume import METHOD as TABLE
from tenderwright.calculations.value import Given, given
from tenderwright.model.lightship import Lightship
from tenderwright.model.package import Package
from tenderwright.model.particulars import Particulars
from tenderwright.model.vessel import Bounds, SoundingPipe, Tank
from tenderwright.quantities.position import FrameTable
from tenderwright.quantities.quantity import Quantity

_LIQUIDS = {"heavy oil": "heavy fuel oil", "oily water": "fresh water"}
"""Names of liquids in a package to those in the table of densities."""


class SoundingTable(Struct, frozen=True):
    """Volumes of one tank by sounding and trim; lengths in m, volumes in m3."""

    soundings: tuple[float, ...]
    trims: tuple[float, ...]
    volumes: tuple[tuple[float, ...], ...]
    """One row for each sounding, one column for each trim."""


@step_of(CAPACITY, "tank.{}", each="tanks")
def tank_shape(tank: Tank, hull: Hull | None, frames: FrameTable) -> Uses | Absent:
    """Build a tank's space between its bounds and the shell, with its pipe."""
    bounds = tank.bounds
    if bounds is None:
        return Lacking(f"it needs the bounds of tank `{tank.tank}` in vessel/tanks.yaml")
    shape = _shape(tank, bounds, hull)
    if shape is None:
        return Lacking("it needs vessel/offsets.yaml, or bounds that are all distances")
    words = f"{bounds.from_} to {bounds.to}, {bounds.bottom} to {bounds.top}, {bounds.inboard} to {bounds.outboard}"
    inputs = {
        "shape": Given(shape, words + (f"; hull {hull.words}" if hull else ""), bounds.here),
        "permeability": given(tank.permeability) if tank.permeability else Given(1.0, "100 %", "nothing taken off"),
    }
    return Uses(tank.name, inputs | _pipe(tank.pipe, bounds), tank.contents.here, of=tank.name)


def _shape(tank: Tank, bounds: Bounds, hull: Hull | None) -> dict[str, Any] | None:
    along = {"x_aft": bounds.from_.x, "x_forward": bounds.to.x}
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
    """Read the ship's own table at the sounding, corrected to an even keel by where the pipe stands."""
    sounding = tank.contents.sounding
    if not tank.table or sounding is None or tank.contents.volume is not None or tank.contents.liquid == "none":
        return NotAsked("it is not sounded by a table of the ship's own")
    corrected = sounding.si
    if tank_shape is not None and tank_shape.pipe is not None:
        middle = (tank_shape.body.lower_corner[0] + tank_shape.body.upper_corner[0]) / 2
        corrected += float(tank_shape.pipe.foot[0] - middle) * _slope(lightship, particulars)
    corrected = max(corrected, tank.table[0].sounding.si)
    rows = Given([row.sounding.si for row in tank.table], f"{len(tank.table)} rows", tank.here)
    inputs = {
        "sounding": Given(corrected, f"{sounding} corrected to {corrected:.3f} m", sounding.at),
        "soundings": rows,
        "volumes": Given([row.volume.si for row in tank.table], f"{len(tank.table)} rows", tank.here),
    }
    return Uses(f"{tank.name} by the ship's own table", inputs, tank.contents.here, of=tank.name)


@step_of(SOUNDING, "tank.{}", each="tanks", kept=True)
def tank_contents(
    tank: Tank,
    frames: FrameTable,
    tank_shape: TankShape | None,
    tank_table: Mapping[str, float] | None,
    lightship: Lightship | None,
    particulars: Particulars | None,
) -> Uses | Absent:
    """Find what is in a tank on arrival: by its sounding, by a volume that is known, or nothing."""
    contents, shape = tank.contents, tank_shape
    reading = contents.sounding or contents.ullage
    inputs = {"density": density_of(tank)}
    if shape is not None:
        inputs["tank"] = Given(shape.body, f"the space of {tank.name}", f"tank.{tank.tank}.capacity")
        inputs["permeability"] = Given(shape.permeability, f"{shape.permeability:.0%}", f"tank.{tank.tank}.capacity")
    empty = contents.liquid == "none" or (reading is None and contents.volume is None)
    if empty:
        inputs["volume"] = Given(0.0, "empty", contents.here)
    elif shape is None and tank.bounds is not None:
        return Lacking("it needs vessel/offsets.yaml, or bounds that are all distances")
    elif contents.volume is not None:
        inputs |= {"volume": given(contents.volume)} | _trim(lightship, particulars)
    elif tank_table is not None:
        volume = min(tank_table["volume"], shape.capacity) if shape else tank_table["volume"]
        inputs["volume"] = Given(volume, f"{volume:.2f} m3", f"tank.{tank.tank}.table-volume")
        inputs |= _trim(lightship, particulars)
    elif shape is None:
        raise OutOfRange("it holds liquid but has no bounds, so the liquid cannot be placed in the ship")
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
    words = f"{trim:.3f} m by the drafts last read, {observed.aft} aft and {observed.forward} forward"
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
    words = f"{usual.density / 1000:.3f} t/m3"
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
