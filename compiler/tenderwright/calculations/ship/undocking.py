"""The condition in which she is floated: the docking condition with what has moved while she was dry."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import degrees

from tenderwright.calculations.condition.floating import METHOD as FLOATING
from tenderwright.calculations.condition.floating import FloatingPosition, floating_position
from tenderwright.calculations.condition.loading import TankLoad
from tenderwright.calculations.docking_results import Undocking, Why
from tenderwright.calculations.landing.exact import settle_exactly
from tenderwright.calculations.landing.landing import METHOD as LANDING
from tenderwright.calculations.landing.settling import Landing, outputs_of
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import condition_outputs, given_form, tank_loads
from tenderwright.calculations.ship.docking_condition import (
    block_line,
    docking_weights,
    lander,
    moved_weights,
    tank_states,
)
from tenderwright.calculations.ship.tanks import liquid_density
from tenderwright.calculations.value import Given, Record
from tenderwright.model.docking_plan import ChangedTank
from tenderwright.model.package import Package

TRIM_LIMIT = 0.1
"""Trim beyond that wanted for docking with which she still floats off level, m (common practice, no source)."""
LIST_LIMIT = 0.5
"""Degrees, where the package gives none (common practice, no source)."""
SLACK = (0.05, 0.95)
"""A tank filled between these shares of its capacity has a free surface to be sounded."""


def undocking(package: Package, results: Results, record: Record) -> None:
    """Keep how she floats when she leaves the blocks, and whether that is level and stable."""
    plan, position, form = package.docking_plan, results.docking.position, results.form
    if plan is None or position is None or form is None:
        return
    loads, liquids = _loads(package, results)
    weights = [*docking_weights(package), *moved_weights(package, before_docking=False)]
    try:
        found = floating_position(form, weights, loads, results.water_density)
    except OutOfRange as error:
        record.fail(FLOATING, "condition.undocking", str(error), plan.here)
        return
    inputs = {
        "offsets": given_form(package),
        "docking": Given(None, "docking condition", "condition.docking.displacement, condition.docking.lcg"),
        "moved": Given(None, f"{len(plan.moved_while_dry)} weights moved", plan.here),
        "tanks": Given(None, f"{len(plan.tanks_at_undocking)} tanks changed", plan.here),
    }
    record.keep(FLOATING, "condition.undocking", "when she is floated", inputs, condition_outputs(found))
    lifting = _lifting_off(package, results, record, found)
    results.docking.tanks_undocking = tank_states(package, loads, liquids, found)
    results.docking.undocking = _judged(package, results, found, lifting)


def _loads(package: Package, results: Results) -> tuple[list[TankLoad], dict[str, str]]:
    """Give the tanks as on docking, but for those whose contents the plan changes."""
    docked = results.docking.tanks
    changed: dict[str, ChangedTank] = {}
    if package.docking_plan is not None:
        changed = {one.tank.name: one for one in package.docking_plan.tanks_at_undocking}
    loads, liquids = [], {}
    for load in tank_loads(package, results):
        one = changed.get(load.name)
        if one is None:
            loads.append(replace(load, mass=docked[load.name].mass))
            liquids[load.name] = docked[load.name].liquid
        else:
            density = liquid_density(one.liquid)
            volume = one.volume.si if one.volume is not None and one.liquid != "none" else 0.0
            loads.append(replace(load, density=density, mass=volume * density))
            liquids[load.name] = one.liquid
    return loads, liquids


def _lifting_off(package: Package, results: Results, record: Record, found: FloatingPosition) -> Landing | None:
    """Find how the last block leaves her: a landing backwards."""
    blocks, plan = block_line(package, results), package.docking_plan
    if blocks is None or plan is None or results.form is None:
        return None
    try:
        lifted = settle_exactly(lander(package, results.form, found, blocks, results.water_density))
    except OutOfRange as error:
        record.fail(LANDING, "undocking.lifting", str(error), plan.here)
        return None
    inputs = {"undocking": Given(None, "undocking condition", "condition.undocking.displacement")}
    about = "lifting off, a landing backwards: settling is when all but the last block has left her"
    record.keep(LANDING, "undocking.lifting", about, inputs, outputs_of(lifted))
    return lifted


def _judged(package: Package, results: Results, found: FloatingPosition, lifting: Landing | None) -> Undocking:
    wanted = package.lightship.docking if package.lightship else None
    plan = package.docking_plan
    reasons = []
    trim, most_trim = found.hydrostatics.trim, abs(wanted.trim.si) + TRIM_LIMIT if wanted else TRIM_LIMIT
    if abs(trim) > most_trim:
        end = "stern" if trim > 0 else "head"
        reasons.append(f"trim {abs(trim):.2f} m by the {end} against {most_trim:.2f} m")
    most_list = degrees(wanted.most_list.si) if wanted and wanted.most_list else LIST_LIMIT
    if found.heel is None or abs(degrees(found.heel)) > most_list:
        words = "no list at which she rests" if found.heel is None else f"list {abs(degrees(found.heel)):.2f} degrees"
        reasons.append(f"{words} against {most_list:.2f} degrees")
    level = not reasons
    gm = lifting.settling.stability.gm if lifting is not None else None
    limit = (plan.least_gm if plan else None) or (wanted.least_gm if wanted else None)
    least = limit.si if limit is not None else 0.0
    stable = found.gm_fluid > 0 and found.gm_fluid >= least and gm is not None and gm >= least
    if not stable:
        shown = "not known" if gm is None else f"{gm:.2f} m"
        reasons.append(
            f"metacentric height {found.gm_fluid:.2f} m afloat and {shown} as the last block leaves, "
            f"against {least:.2f} m"
        )
    return Undocking(found, level, stable, tuple(reasons), gm, tuple(_to_sound(package, results)))


def _to_sound(package: Package, results: Results) -> Iterator[tuple[str, Why]]:
    """Yield the tanks that should be dry, have changed since docking, or hold liquid with a free surface."""
    for tank in package.tanks:
        before, after = results.docking.tanks.get(tank.tank), results.docking.tanks_undocking.get(tank.tank)
        shape = results.tanks.get(tank.tank)
        if before is None or after is None or shape is None:
            continue
        if after.mass <= 0:
            yield tank.tank, "to be dry"
        elif abs(after.mass - before.mass) > 1.0 or after.liquid != before.liquid:
            yield tank.tank, "changed"
        elif SLACK[0] < after.volume / shape.capacity < SLACK[1]:
            yield tank.tank, "slack"
