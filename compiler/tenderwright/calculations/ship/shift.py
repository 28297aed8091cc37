"""The least move of keel blocks, by whole frame spaces, that frees what the last docking covered."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby, pairwise

from tenderwright.calculations.blocks.footprint import Footprint as Rectangle
from tenderwright.calculations.blocks.shift import METHOD as SHIFT
from tenderwright.calculations.blocks.shift import Bottom, least_shifts
from tenderwright.calculations.docking_results import Footprint, LeastShift
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import keel_underside
from tenderwright.calculations.ship.footprints import clearance_of, obstacles
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package
from tenderwright.quantities.position import FrameTable

MOST = 6
"""Frame spaces either way within which a place is looked for."""


def least_move(package: Package, results: Results, record: Record) -> None:
    """Keep the least move of the plan's keel blocks, and that of the last docking's were they set again."""
    docking, plan, frames = results.docking, package.docking_plan, package.frames
    if plan is None or frames is None or package.particulars is None or not docking.earlier:
        return
    last = list(docking.earlier)[-1]
    earlier = [_rectangle(one, str(i)) for i, one in enumerate(docking.earlier[last]) if one.kind == "keel"]
    planned = [_rectangle(one, str(i)) for i, one in enumerate(docking.footprints) if one.kind == "keel"]
    straight = package.particulars.keel.straight
    wanted = float(clearance_of(package).si)
    low = keel_underside(package) + wanted
    bottom = Bottom(
        earlier=tuple(earlier),
        others=tuple(one.place for one in obstacles(package, results.form) if one.lowest < low),
        aft=straight.from_.x,
        forward=straight.to.x,
        margin=plan.margin.value.si if plan.margin else 0.0,
        clearance=wanted,
    )
    inputs = {
        "blocks": Given(None, f"{len(planned)} keel blocks", plan.here),
        "earlier": Given(None, f"keel blocks of {last}", "blocks.covered-twice"),
        "clearance": clearance_of(package),
        "keel_aft": given(straight.from_),
        "keel_forward": given(straight.to),
    }
    if plan.margin is not None:
        inputs["margin"] = given(plan.margin.value)
    try:
        docking.shift = _moved(planned, bottom, frames)
        docking.shift_of_last = _moved(earlier, bottom, frames)
    except OutOfRange as error:
        record.fail(SHIFT, "blocks.shift", str(error), plan.here)
        return
    for prefix, about, found in (
        ("blocks.shift", "keel blocks of the docking plan, frame spaces as they are at each", docking.shift),
        ("blocks.shift-of-last", f"keel blocks of {last}, were they set again where they stood", docking.shift_of_last),
    ):
        outputs = {"held": float(len(found.held)), "free": not found.held, "single_frames": [*map(float, found.frames)]}
        record.keep(SHIFT, prefix, about, inputs, outputs)


def _moved(blocks: Sequence[Rectangle], bottom: Bottom, frames: FrameTable) -> LeastShift:
    """Search each stretch of equal frame spaces by itself, the blocks of the others standing where they are."""
    numbers: list[int] = []
    steps: list[int] = []
    held: list[int] = []
    ordered = sorted(range(len(blocks)), key=lambda i: blocks[i].x)
    for space, group in groupby(ordered, key=lambda i: _frame_space(frames, blocks[i].x)):
        own = list(group)
        others = [blocks[i] for i in ordered if i not in own]
        for i, found in zip(own, least_shifts([blocks[i] for i in own], bottom, space, MOST, 0.0, others), strict=True):
            if found.frames:
                numbers.append(ordered.index(i) + 1)
                steps.append(found.frames)
            if not found.free:
                held.append(ordered.index(i) + 1)
    return LeastShift(tuple(numbers), tuple(steps), tuple(held))


def _frame_space(frames: FrameTable, x: float) -> float:
    """Give the frame space in which a place lies, m."""
    places = frames.distances
    for a, b in pairwise(places):
        if a - 1e-6 <= x < b - 1e-6:
            return round(b - a, 6)
    return round(places[-1] - places[-2], 6)


def _rectangle(one: Footprint, name: str) -> Rectangle:
    return Rectangle(name, one.x, one.y, one.forward - one.aft, one.left - one.right)
