"""The ship's tanks: their shapes from bounds and hull, and what is in them on arrival."""

from __future__ import annotations

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.results import Results, SoundingTable
from tenderwright.calculations.ship.form import given_form
from tenderwright.calculations.tanks.liquid import Liquid
from tenderwright.calculations.tanks.liquid_densities import LIQUID_DENSITIES, LiquidDensity
from tenderwright.calculations.tanks.polyhedron import Polyhedron, box, from_hull
from tenderwright.calculations.tanks.sounding import (
    SoundingPipe,
    at_sounding,
    slanted_pipe,
    sounding_table,
)
from tenderwright.calculations.tanks.sounding import Tank as TankShape
from tenderwright.calculations.tanks.sounding_volume import METHOD as SOUNDING
from tenderwright.calculations.tanks.table_volume import METHOD as TABLE
from tenderwright.calculations.tanks.table_volume import table_volume
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package
from tenderwright.model.vessel import Tank
from tenderwright.quantities.quantity import Quantity

_UNPLACED = "it holds liquid but has no bounds, so the liquid cannot be placed in the ship"
_LIQUIDS = {"heavy oil": "heavy fuel oil", "oily water": "fresh water"}
"""Names of liquids in a package to those in the table of densities."""

CAPACITY = Method(
    name="tank.capacity",
    title="Capacity of a tank from its bounds and the hull",
    formula="V = permeability x volume of the polyhedron between the bounds and the shell",
    source=Citation("divergence theorem on a polyhedron", "", "derived"),
    valid="plane bounds; shell straight between stations and waterlines and half-way between them",
    inputs={},
    outputs=(Symbol("capacity", "capacity, 100 % full", "volume", "m3"),),
    kernel=lambda: {},
    example={},
)
"""Not run alone: `tank.sounding-volume` is; this names how capacities are found in the record."""


def shape_of(tank: Tank, form: HullForm | None) -> TankShape | None:
    """Build a tank's shape and pipe; None where it has no bounds, or needs a hull there is none of."""
    bounds = tank.bounds
    if bounds is None:
        return None
    body = _body(tank, form)
    if body is None:
        return None
    return TankShape(body, tank.permeability.si if tank.permeability else 1.0, _pipe(tank, body))


def _body(tank: Tank, form: HullForm | None) -> Polyhedron | None:
    bounds = tank.bounds
    assert bounds is not None
    x = (bounds.from_.x, bounds.to.x)
    bottom = bounds.bottom.si if isinstance(bounds.bottom, Quantity) else None
    outboard = bounds.outboard.si if isinstance(bounds.outboard, Quantity) else None
    inboard, side = bounds.inboard.si, tank.side
    if form is not None:
        sides = {"port": "port", "starboard": "starboard"}
        return from_hull(
            form,
            x,
            bottom=bottom,
            top=bounds.top.si,
            inboard=inboard,
            outboard=outboard,
            side=sides.get(side, "both"),  # type: ignore[arg-type]
        )
    if bottom is None or outboard is None:
        return None
    y = {"port": (inboard, outboard), "starboard": (-outboard, -inboard)}.get(side, (-outboard, outboard))
    return box(x, y, (bottom, bounds.top.si))


def _pipe(tank: Tank, body: Polyhedron) -> SoundingPipe | None:
    pipe = tank.pipe
    if pipe is None:
        return None
    foot = (pipe.at.x, pipe.off_centre.si if pipe.off_centre else 0.0, pipe.foot.si)
    head = pipe.head.si if pipe.head else body.top
    if head <= foot[2]:
        raise OutOfRange(f"the head of the sounding pipe, {head:.2f} m, is not above its foot, {foot[2]:.2f} m")
    slant = pipe.slant.si if pipe.slant else 0.0
    return slanted_pipe(foot, head - foot[2], slant) if slant else SoundingPipe(foot, (foot[0], foot[1], head))


def density_of(tank: Tank) -> Given:
    """Give the density of a tank's liquid: as measured, or the usual one with its source."""
    contents = tank.contents
    if contents.density is not None:
        return given(contents.density)
    usual = _usual_liquid(contents.liquid)
    return Given(
        usual.density,
        f"{usual.density / 1000:.3f} t/m3",
        f"usual density of {contents.liquid}: {usual.source}",
    )


def liquid_density(liquid: str) -> float:
    """Give the usual density of a liquid by its name in a package, kg/m3."""
    return _usual_liquid(liquid).density


def _usual_liquid(liquid: str) -> LiquidDensity:
    return LIQUID_DENSITIES.get(_LIQUIDS.get(liquid, liquid), LIQUID_DENSITIES["fresh water"])


def observed_slope(package: Package) -> float:
    """Give the slope of the trim at which the tanks were sounded, from the drafts last read; level where none were."""
    lightship, particulars = package.lightship, package.particulars
    if lightship is None or lightship.observed is None or particulars is None:
        return 0.0
    observed = lightship.observed
    return (observed.aft.si - observed.forward.si) / particulars.dimensions.length_between_perpendiculars.si


def tank_values(package: Package, results: Results, record: Record) -> None:
    """Keep capacity and contents of every tank."""
    slope = observed_slope(package)
    broken = package.frames is None or results.form_broken or "vessel/offsets.yaml" in package.broken.files
    for tank in package.tanks:
        prefix = f"tank.{tank.tank}"
        if broken:
            for method in (SOUNDING, CAPACITY):
                record.spoil(method, prefix, "the frames or the offsets have a mistake")
            continue
        try:
            shape = shape_of(tank, results.form)
            if shape is not None:
                results.tanks[tank.tank] = shape
                _keep_capacity(package, tank, shape, record, prefix)
            elif tank.bounds is None:
                record.lack(CAPACITY, prefix, "the tank has no bounds")
            _keep_contents(package, tank, shape, slope, results, record)
        except OutOfRange as error:
            record.failed.setdefault(f"{prefix}.capacity", str(error))
            record.fail(SOUNDING, prefix, f"{tank.name}: {error}", tank.contents.here)


def _keep_capacity(package: Package, tank: Tank, shape: TankShape, record: Record, prefix: str) -> None:
    bounds = tank.bounds
    assert bounds is not None
    inputs = {
        "from": given(bounds.from_),
        "to": given(bounds.to),
        "top": given(bounds.top),
        "permeability": given(tank.permeability) if tank.permeability else Given(1.0, "100 %", "nothing taken off"),
    }
    if package.offsets is not None:
        inputs["offsets"] = given_form(package)
    record.keep(CAPACITY, prefix, tank.name, inputs, {"capacity": shape.capacity})


def _keep_contents(
    package: Package, tank: Tank, shape: TankShape | None, slope: float, results: Results, record: Record
) -> None:
    contents, prefix = tank.contents, f"tank.{tank.tank}"
    density = density_of(tank)
    inputs = {"density": density}
    reading = contents.sounding or contents.ullage
    if contents.liquid == "none" or (reading is None and contents.volume is None):
        liquid = Liquid(0.0, 0.0, (0.0, 0.0, 0.0), 0.0, 0.0, 0.0)
        if shape is not None:
            liquid = shape.contents(0.0)
    elif contents.volume is not None:
        inputs["volume"] = given(contents.volume)
        if shape is None:
            raise OutOfRange(_UNPLACED)
        liquid = shape.contents(contents.volume.si, slope)
    elif tank.table and contents.sounding is not None:
        liquid = _by_table(tank, shape, slope, record)
        inputs["volume"] = given(record.values[f"{prefix}.table-volume"], f"{liquid.volume:.2f} m3")
    else:
        if shape is None:
            raise OutOfRange(_UNPLACED)
        sounding = contents.sounding.si if contents.sounding else _pipe_length(shape) - _si(contents.ullage)
        assert reading is not None
        inputs["sounding" if contents.sounding else "ullage"] = given(reading)
        inputs["trim"] = Given(slope, f"slope {slope:.5f} at the drafts last read", _trim_origin(package))
        liquid = at_sounding(shape, sounding, slope)
    results.contents[tank.tank] = liquid
    outputs = {"volume": liquid.volume, "mass": liquid.volume * density.si}
    where = {
        "x": liquid.centroid[0],
        "y": liquid.centroid[1],
        "z": liquid.centroid[2],
        "free_surface_moment": liquid.surface_transverse * density.si,
        "longitudinal_free_surface_moment": liquid.surface_longitudinal * density.si,
    }
    record.keep(SOUNDING, prefix, f"{tank.name} on arrival", inputs, outputs | (where if liquid.volume else {}))


def _by_table(tank: Tank, shape: TankShape | None, slope: float, record: Record) -> Liquid:
    """Read the ship's own table, corrected to an even keel by where the pipe stands; centroid from the bounds."""
    sounding = tank.contents.sounding
    assert sounding is not None
    corrected = sounding.si
    if shape is not None and shape.pipe is not None:
        middle = (shape.body.lower_corner[0] + shape.body.upper_corner[0]) / 2
        corrected += float(shape.pipe.foot[0] - middle) * slope
    soundings, volumes = [row.sounding.si for row in tank.table], [row.volume.si for row in tank.table]
    found = table_volume(max(corrected, soundings[0]), soundings, volumes)
    inputs = {"sounding": Given(corrected, f"{sounding} corrected to {corrected:.3f} m", sounding.at)}
    record.keep(
        TABLE,
        f"tank.{tank.tank}",
        f"{tank.name} by the ship's own table",
        inputs,
        found,
        {"volume": "table-volume"},
    )
    if shape is None:
        raise OutOfRange(_UNPLACED)
    return shape.contents(min(found["volume"], shape.capacity), slope)


def _pipe_length(shape: TankShape) -> float:
    if shape.pipe is None:
        raise OutOfRange("an ullage needs a sounding pipe")
    return shape.pipe.length


def _si(quantity: Quantity | None) -> float:
    assert quantity is not None
    return quantity.si


def _trim_origin(package: Package) -> str:
    observed = package.lightship.observed if package.lightship else None
    return str(observed.here) if observed else "even keel: no drafts were read"


def sounding_tables(package: Package, results: Results) -> None:
    """Keep a sounding table for every tank with a pipe, at even keel and at two trims by the stern."""
    if package.particulars is None:
        return
    length = package.particulars.dimensions.length_between_perpendiculars.si
    trims = (0.0, 0.3, 0.6)
    for tank in package.tanks:
        shape = results.tanks.get(tank.tank)
        if shape is None or shape.pipe is None:
            continue
        reach = min(shape.pipe.length, shape.body.top - shape.pipe.foot[2])
        step = 0.05 if reach <= 1.2 else 0.1 if reach <= 2.5 else 0.2
        soundings = [step * count for count in range(int(reach / step + 1e-9) + 1)]
        if reach - soundings[-1] > 1e-6:
            soundings.append(reach)
        volumes = sounding_table(shape, soundings, [trim / length for trim in trims])
        results.sounding_tables[tank.tank] = SoundingTable(
            tuple(soundings), trims, tuple(tuple(row) for row in volumes.tolist())
        )
