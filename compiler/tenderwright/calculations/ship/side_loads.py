"""Side blocks against wind and earthquake: the load of the lee blocks, overturning and sliding."""

from __future__ import annotations

from dataclasses import replace

from tenderwright.calculations.blocks.overturning import METHOD as OVERTURNING
from tenderwright.calculations.blocks.overturning import SideBlock, rigid_limit, share_moment, sliding_limit
from tenderwright.calculations.blocks.wind import basic_pressure, wind_force
from tenderwright.calculations.cradle.cars import Limit
from tenderwright.calculations.docking_results import KeelBlockResult, Side, SideBlockResult
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.schema import GRAVITY
from tenderwright.calculations.ship.adapter import keel_underside
from tenderwright.calculations.ship.keel_loads import keep_pressure
from tenderwright.calculations.value import Given, Record
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.package import Package


def side_loads(package: Package, results: Results, record: Record) -> None:
    """Keep the loads of the side blocks under wind, and under the sideways acceleration, each by itself."""
    plan, position, docking = package.docking_plan, results.docking.position, results.docking
    stiffness = _stiffness(docking.keel_blocks)
    if plan is None or position is None or not docking.side_blocks or stiffness is None:
        return
    if plan.wind is None and plan.earthquake is None:
        return
    weight, kg = position.loading.mass, position.loading.vcg - keel_underside(package)
    force = _wind(plan)
    lever = plan.wind.height.si - keel_underside(package) if plan.wind else 0.0
    quake = plan.earthquake.coefficient * weight * GRAVITY if plan.earthquake else None
    pairs = _springs(docking.side_blocks, stiffness)
    loads: dict[str, list[float]] = {}
    try:
        for name, moment in (("wind", force and force * lever), ("earthquake", quake and quake * kg)):
            if moment is not None:
                shared = share_moment(weight, moment, pairs, sum(stiffness), _keel_width(package))
                loads[name] = list(shared.side_blocks[::2])
        moment = max((force or 0.0) * lever, (quake or 0.0) * kg)
        limits = _limits(plan, docking.side_blocks, weight, moment, max(force or 0.0, quake or 0.0))
    except OutOfRange as error:
        record.fail(OVERTURNING, "blocks.side", str(error), plan.here)
        return
    docking.side = Side(
        force, force * lever if force is not None else None, quake, quake * kg if quake is not None else None, limits
    )
    docking.side_blocks = tuple(_loaded(one, i, loads) for i, one in enumerate(docking.side_blocks))
    _keep(plan, docking.side, docking.side_blocks, loads, record)


def _wind(plan: DockingPlan) -> float | None:
    wind = plan.wind
    return wind_force(basic_pressure(wind.speed.si), wind.area.si, wind.coefficient) if wind else None


def _stiffness(blocks: tuple[KeelBlockResult, ...]) -> list[float] | None:
    known = [one.stiffness for one in blocks if one.stiffness is not None]
    return known if blocks and len(known) == len(blocks) else None


def _keel_width(package: Package) -> float:
    return package.particulars.keel.width.si if package.particulars else 0.0


def _springs(pairs: tuple[SideBlockResult, ...], keel: list[float]) -> list[SideBlock]:
    """Take side blocks as built like the keel blocks, port then starboard of each pair, carrying nothing in calm."""
    per_block = sum(keel) / len(keel)
    return [SideBlock(sign * one.off_centre, per_block, 0.0) for one in pairs for sign in (1.0, -1.0)]


def _limits(
    plan: DockingPlan, pairs: tuple[SideBlockResult, ...], weight: float, moment: float, force: float
) -> tuple[Limit, ...]:
    found = [rigid_limit(weight, moment, max(one.off_centre for one in pairs))]
    if plan.friction is not None:
        found.append(sliding_limit(weight, force, plan.friction.value))
    return tuple(found)


def _loaded(one: SideBlockResult, index: int, loads: dict[str, list[float]]) -> SideBlockResult:
    found = {name: column[index] for name, column in loads.items()}
    most = max(found.values(), default=0.0)
    return replace(
        one,
        wind=found.get("wind"),
        earthquake=found.get("earthquake"),
        pressure=most * GRAVITY / (one.length * one.width),
    )


def _keep(
    plan: DockingPlan, side: Side, pairs: tuple[SideBlockResult, ...], loads: dict[str, list[float]], record: Record
) -> None:
    inputs: dict[str, Given] = {"blocks": Given(None, f"{len(pairs)} pairs of side blocks", plan.here)}
    outputs: dict[str, object] = {}
    if plan.wind is not None and side.wind_moment is not None:
        words = f"{plan.wind.speed}, {plan.wind.area}, coefficient {plan.wind.coefficient:g}: {plan.wind.source}"
        inputs["wind"] = Given(side.wind_force, words, plan.wind.here)
        outputs["moment_wind"] = side.wind_moment / GRAVITY
    if plan.earthquake is not None and side.earthquake_moment is not None:
        words = f"{plan.earthquake.coefficient:g} of gravity: {plan.earthquake.source}"
        inputs["lateral"] = Given(plan.earthquake.coefficient, words, plan.earthquake.here)
        outputs["moment_earthquake"] = side.earthquake_moment / GRAVITY
    outputs["moment"] = max(side.wind_moment or 0.0, side.earthquake_moment or 0.0) / GRAVITY
    outputs["lateral_force"] = max(side.wind_force or 0.0, side.earthquake_force or 0.0)
    worse = max(loads.values(), key=max, default=[])
    outputs["side_blocks"] = worse
    tipping = side.limits[0]
    outputs |= {"tipping_use": tipping.use, "tipping_met": tipping.met}
    if len(side.limits) > 1 and plan.friction is not None:
        inputs["friction"] = Given(
            plan.friction.value, f"{plan.friction.value:g}: {plan.friction.source}", plan.friction.here
        )
        outputs |= {"sliding_use": side.limits[1].use, "sliding_met": side.limits[1].met}
    about = "wind and earthquake each by itself, side blocks built like the keel blocks and bearing nothing in calm"
    record.keep(OVERTURNING, "blocks.side", about, inputs, outputs)
    one = max(pairs, key=lambda pair: pair.pressure or 0.0)
    greatest = max(one.wind or 0.0, one.earthquake or 0.0)
    keep_pressure(
        plan, record, "blocks.side.greatest", f"lee side block at {one.position}", greatest, one.length, one.width
    )
