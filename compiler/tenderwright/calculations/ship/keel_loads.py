"""What each keel block carries: rigid hull by area moment, elastic hull girder, and the pressure under the keel."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from tenderwright.calculations.blocks.area_moment import METHOD as RIGID
from tenderwright.calculations.blocks.area_moment import Block, area_moment
from tenderwright.calculations.blocks.keel_line import METHOD as ELASTIC
from tenderwright.calculations.blocks.keel_line import (
    Bay,
    KeelBlock,
    Standing,
    outputs_of,
    stand_on_blocks,
    tributary_lengths,
)
from tenderwright.calculations.blocks.pressure import METHOD as PRESSURE
from tenderwright.calculations.blocks.pressure import contact_pressure, judge_pressure
from tenderwright.calculations.blocks.weight_curve import Segment, weight_curve
from tenderwright.calculations.docking_results import KeelBlockResult
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import docking_weights
from tenderwright.calculations.ship.block_places import bearing_width, rows_of
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.package import Package
from tenderwright.quantities.display import show


def keel_loads(package: Package, results: Results, record: Record) -> None:
    """Keep the loads of the keel blocks in the docking condition, the greatest pressure and the first block's."""
    plan, position, blocks = package.docking_plan, results.docking.position, results.docking.keel_blocks
    if plan is None or position is None or len(blocks) < 2 or package.frames is None or package.particulars is None:
        return
    rows = sorted(rows_of(plan, package.frames), key=lambda pair: pair[1])
    widths = [bearing_width(package.particulars, row) for row, _ in rows]
    weight, lcg = position.loading.mass, position.loading.lcg
    rigid = _rigid(plan, blocks, widths, weight, lcg, record)
    standing = _elastic(package, plan, results, record)
    elastic = standing.loads.tolist() if standing is not None else []
    spans = tributary_lengths(np.array([one.x for one in blocks])).tolist()
    found = []
    for index, one in enumerate(blocks):
        loads = [column[index] for column in (rigid, elastic) if column]
        most = max(loads, default=None)
        found.append(
            replace(
                one,
                rigid=rigid[index] if rigid else None,
                elastic=elastic[index] if elastic else None,
                line_load=None if most is None else most / spans[index],
                pressure=None if most is None else contact_pressure(most, one.length, widths[index], widths[index]),
            )
        )
    results.docking.keel_blocks = tuple(found)
    _greatest(plan, found, widths, record)
    _first(plan, results, found, widths, record)


def _rigid(
    plan: DockingPlan,
    blocks: Sequence[KeelBlockResult],
    widths: Sequence[float],
    weight: float,
    lcg: float,
    record: Record,
) -> list[float]:
    line = [Block(one.x, one.length, width) for one, width in zip(blocks, widths, strict=True)]
    try:
        found = area_moment(weight, lcg, line)
    except OutOfRange as error:
        record.fail(RIGID, "blocks.keel.rigid", str(error), plan.here)
        return []
    most = max(range(len(line)), key=lambda i: found.reactions[i])
    outputs = {
        "loads": list(found.reactions),
        "greatest": found.reactions[most],
        "at": line[most].x,
        "lifted": [line[i].x for i in found.lifted],
    }
    inputs = _weight_inputs(record) | {"blocks": Given(None, f"{len(line)} keel blocks", plan.here)}
    record.keep(RIGID, "blocks.keel.rigid", "keel blocks of the docking plan, rigid hull", inputs, outputs)
    return list(found.reactions)


def _elastic(package: Package, plan: DockingPlan, results: Results, record: Record) -> Standing | None:
    position, girder, ship = results.docking.position, plan.girder, package.particulars
    blocks = results.docking.keel_blocks
    springs = [KeelBlock(one.x, one.stiffness) for one in blocks if one.stiffness is not None]
    if girder is None or position is None or ship is None or len(springs) < len(blocks):
        return None
    size = ship.dimensions
    aft = -size.aft_overhang.si if size.aft_overhang else 0.0
    forward = aft + size.length_overall.si
    ei = girder.second_moment.si * girder.modulus.si
    try:
        segments, points = _weights(package, results, aft, forward)
        found = stand_on_blocks(springs, [Bay(aft, forward, ei)], segments, points)
    except OutOfRange as error:
        record.fail(ELASTIC, "blocks.keel.elastic", str(error), girder.here)
        return None
    results.docking.slenderness, results.docking.rigid_justified = found.slenderness, found.rigid_justified
    outputs = outputs_of(found)
    inputs = _weight_inputs(record) | {
        "blocks": Given(None, f"{len(blocks)} keel blocks, layers as given", plan.here),
        "second_moment": given(girder.second_moment),
        "elasticity": given(girder.modulus),
        "weight_aft": Given(aft, f"{aft:.2f} m", "after overhang of vessel/particulars.yaml"),
        "weight_forward": given(size.length_overall),
    }
    record.keep(ELASTIC, "blocks.keel.elastic", f"hull girder: {girder.source}", inputs, outputs)
    return found


def _weights(
    package: Package, results: Results, aft: float, forward: float
) -> tuple[list[Segment], list[tuple[float, float]]]:
    """Lay the docking weights along the girder: lightship by its curve, other weights at a place, liquids over tanks.

    A liquid lies evenly about its own centre, over as much as the tank holds on both sides of that.
    """
    lightship, *others = docking_weights(package)
    segments = weight_curve(lightship.mass, aft, forward - aft, lightship.x).segments()
    slope = results.docking.position.hydrostatics.trim / forward if results.docking.position else 0.0
    for name, state in results.docking.tanks.items():
        if state.mass <= 0:
            continue
        body = results.tanks[name].body
        x = results.tanks[name].contents(state.volume, slope).centroid[0]
        half = min(x - body.lower_corner[0], body.upper_corner[0] - x)
        per_length = state.mass / (2 * half)
        segments.append(Segment(float(x - half), float(x + half), float(per_length), float(per_length)))
    return segments, [(min(max(one.x, aft), forward), one.mass) for one in others]


def _greatest(plan: DockingPlan, blocks: Sequence[KeelBlockResult], widths: Sequence[float], record: Record) -> None:
    loaded = [(one, width) for one, width in zip(blocks, widths, strict=True) if one.pressure is not None]
    if not loaded:
        return
    one, width = max(loaded, key=lambda pair: pair[0].pressure or 0.0)
    about = f"greatest pressure on a keel block, at {one.position}"
    keep_pressure(plan, record, "blocks.keel.greatest", about, one.load or 0.0, one.length, width)


def _first(
    plan: DockingPlan, results: Results, blocks: Sequence[KeelBlockResult], widths: Sequence[float], record: Record
) -> None:
    """Keep the pressure on the block touched first, just before she lies on all: the whole upthrust is on it."""
    exact = results.docking.exact
    if exact is None:
        return
    index = min(range(len(blocks)), key=lambda i: abs(blocks[i].x - exact.settling.first_block))
    about = f"upthrust on the block touched first, at {blocks[index].position}, as she comes to lie on all"
    upthrust = exact.settling.upthrust
    keep_pressure(plan, record, "blocks.first", about, upthrust, blocks[index].length, widths[index])


def keep_pressure(
    plan: DockingPlan, record: Record, prefix: str, about: str, load: float, length: float, width: float
) -> float:
    """Keep the pressure of one block against the allowable of the plan, and give it, Pa."""
    pressure = contact_pressure(load, length, width, width)
    allowable = plan.allowable
    limit = judge_pressure("pressure", pressure, allowable.value.si if allowable else None)
    inputs = {
        "load": Given(load, show(load, "t", "mass"), about),
        "contact_length": Given(length, show(length, "m", "length"), plan.here),
        "keel_width": Given(width, show(width, "m", "length"), plan.here),
    }
    outputs: dict[str, object] = {"pressure": pressure, "width": width}
    if allowable is not None:
        inputs["allowable"] = given(allowable.value)
        inputs["allowable_source"] = Given(None, allowable.source, allowable.here)
        outputs |= {"allowable": allowable.value.si, "margin": limit.margin, "met": limit.met}
    record.keep(PRESSURE, prefix, about, inputs, outputs)
    return pressure


def _weight_inputs(record: Record) -> dict[str, Given]:
    found = {}
    for name, word in (("displacement", "weight"), ("lcg", "lcg")):
        value = record.values.get(f"condition.docking.{name}")
        if value is not None:
            found[word] = given(value, show(float(value.si), value.unit, value.dimension))
    return found
