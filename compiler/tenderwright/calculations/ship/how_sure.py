"""How sure it is how she floats over the blocks and lands."""

from __future__ import annotations

from typing import Any

from tenderwright.calculations.blocks.area_moment import BlockLoads
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.cradle.line_load import LineLoad
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.landing.landing import BothLandings
from tenderwright.calculations.ship.block_places import given_line
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.ship.docking_condition import as_weight, weights_moved
from tenderwright.calculations.ship.keel import KeelLine, given_straight
from tenderwright.calculations.steps.outcome import Each
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tanks.capacity_plan import place_uncertainty
from tenderwright.calculations.tanks.contents import TankContents
from tenderwright.calculations.uncertainty.afloat import FIGURES
from tenderwright.calculations.uncertainty.afloat import METHOD as HOW_SURE
from tenderwright.calculations.value import Given
from tenderwright.model.common import Water
from tenderwright.model.docking_plan import DockingPlan, MovedWeight
from tenderwright.model.item import Item
from tenderwright.model.lightship import Lightship
from tenderwright.model.lightship import Weight as WeightAboard
from tenderwright.model.particulars import Particulars
from tenderwright.model.tank import Contents, Tank
from tenderwright.model.uncertain import standard_uncertainty
from tenderwright.quantities.display import show

PLACE = 0.2
"""Standard uncertainty of where a weight aboard stands along her, m (common practice, no source)."""
TABLE = 0.01
"""Standard uncertainty of the volume at a sounding, as a share: bounds, pipes and stiffening (common practice, no
source)."""
MOVED = 1.0
"""A tank whose contents change by more than this is filled or emptied for docking, kg."""
FULL = 0.999
"""Share of its capacity from which a tank is full, and has no free surface."""

WHERE = {
    "displacement": "condition.docking.displacement",
    "trim": "condition.docking.trim",
    "draft_aft": "condition.docking.draft-aft",
    "draft_forward": "condition.docking.draft-forward",
    "list": "condition.docking.list",
    "gm": "condition.docking.gm-fluid",
    "upthrust": "docking.landing.upthrust",
    "gm_at_settling": "docking.landing.gm",
    "line_load": "keel.docking-line-load.peak",
    "block": "blocks.keel.rigid.greatest",
}
"""The value of which each is the uncertainty."""


@step()
def known_weights(
    lightship: Lightship, docking_plan: DockingPlan | None, items: tuple[Item, ...]
) -> list[dict[str, Any]]:
    """Give the weights aboard when she is docked, each with how well it is known."""
    light = lightship.lightship
    known = {"u_mass": "mass", "u_x": "at", "u_y": "off_centre", "u_z": "height"}
    off = light.off_centre.si if light.off_centre else 0.0
    rows = [
        Weight("lightship", light.mass.si, light.at.si, off, light.height.si).as_input()
        | {name: standard_uncertainty(light, field) for name, field in known.items()}
    ]
    moved = weights_moved(docking_plan, items, before_docking=True)
    return rows + [_known(one) for one in lightship.weights] + [_known(one) for one in moved]


def _known(one: WeightAboard | MovedWeight) -> dict[str, Any]:
    known = {"u_mass": "mass", "u_y": "off_centre", "u_z": "height"}
    row = as_weight(one).as_input() | {name: standard_uncertainty(one, field) for name, field in known.items()}
    return row | {"u_x": PLACE}


@step()
def known_tanks(
    docking: FloatingPosition,
    docking_tanks: tuple[TankLoad, ...],
    tanks: tuple[Tank, ...],
    tank_contents: Each[TankContents],
) -> list[dict[str, Any]]:
    """Give the tanks with liquid in them when she is docked, each with how well its contents are known.

    What stands as told, not sounded, is as sure as it was told; what is moved for docking is sounded.
    """
    named = {tank.tank: tank for tank in tanks}
    rows = []
    for load, liquid in zip(docking_tanks, docking.liquids, strict=True):
        if load.mass <= 0:
            continue
        x, y, z = liquid.centroid
        full = load.volume >= FULL * load.tank.capacity
        row = {"name": named[load.name].name, "mass": load.mass, "x": x, "y": y, "z": z, "density": load.density}
        surface = 0.0 if full else liquid.surface_area * load.tank.permeability
        moved = abs(load.mass - tank_contents[load.name].mass) > MOVED
        told = None if moved or full else _told(named[load.name].contents)
        by_level = {"u_level": _sounded(named[load.name].contents), "u_share": TABLE}
        row |= {"surface": surface} | (by_level if told is None else {"u_level": 0.0, "u_share": told})
        if load.tank.planned:
            row |= zip(("u_x", "u_y", "u_z"), place_uncertainty(load.tank, load.volume), strict=True)
        rows.append(row)
    return rows


def _told(contents: Contents) -> float | None:
    """Give the standard uncertainty of contents that are told by volume, mass or share, as a share of them."""
    for field in ("volume", "mass", "full"):
        figure = getattr(contents, field)
        if figure is not None and figure.si > 0:
            return standard_uncertainty(contents, field) / float(figure.si)
    return None


def _sounded(contents: Contents) -> float:
    return standard_uncertainty(contents, "ullage" if contents.ullage else "sounding")


@step_of(HOW_SURE, "uncertainty", names={name: name.replace("_", "-") for name in FIGURES}, kept=True)
def how_sure(
    lightship: Lightship,
    buoyancy: Buoyancy,
    known_weights: list[dict[str, Any]],
    known_tanks: list[dict[str, Any]],
    docking: FloatingPosition,
    dock_water: Given,
    landing: BothLandings | None,
    block_line: BlockLine | None,
    docking_line_load: LineLoad | None,
    rigid_keel_loads: BlockLoads | None,
    docking_plan: DockingPlan | None,
    particulars: Particulars,
    keel_line: KeelLine,
) -> Uses:
    """Carry what is not sure through to how she floats over the blocks and lands."""
    moment, water = docking.loading.free_surface_moment, lightship.water
    u_water = standard_uncertainty(water or Water(here=lightship.here), "density")
    inputs = {
        **buoyancy.given,
        "weights": Given(known_weights, f"{len(known_weights)} weights, each with its own", lightship.here),
        "tanks": Given(
            known_tanks,
            f"{len(known_tanks)} tanks with liquid in them",
            "condition.docking.lcg",
        ),
        "density": dock_water,
        "density_uncertainty": Given(
            u_water, show(u_water, "density in kilograms", digits=2), water.here if water else lightship.here
        ),
        **buoyancy.known,
        "free_surface_moment": Given(moment, show(moment, "moment"), "condition.docking.free-surface-moment"),
    }
    inputs |= keel_line.given
    if landing is not None and block_line is not None and docking_plan is not None:
        inputs |= given_line(block_line, docking_plan)
    if docking_line_load is not None:
        inputs |= given_straight(particulars)
    if rigid_keel_loads is not None and docking_plan is not None:
        line = [{"x": one.x, "length": one.length, "width": one.width} for one in rigid_keel_loads.blocks]
        inputs["keel_blocks"] = Given(line, f"{len(line)} keel blocks", docking_plan.here)
    return Uses("over the blocks, in the docking condition", inputs, lightship.here)
