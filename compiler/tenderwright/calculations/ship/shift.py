"""The least move of keel blocks, by whole frame spaces, that frees what the last docking covered."""

from __future__ import annotations

from tenderwright.calculations.blocks.frame_shift import METHOD as SHIFT
from tenderwright.calculations.ship.footprints import Footprint, Obstacle, as_input, clearance_of
from tenderwright.calculations.ship.keel import given_straight, underside
from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.particulars import Particulars
from tenderwright.quantities.position import FrameTable

_KEPT = {"held": "held", "free": "free", "single_frames": "single-frames"}
NO_FRAMES = Lacking("it needs vessel/frames.yaml: blocks are moved by frame spaces")
_NONE_BEFORE = NotAsked("no earlier docking with its blocks is on record")


@step_of(SHIFT, "blocks.shift", names=_KEPT, kept=True)
def plan_shift(
    plan_footprints: tuple[Footprint, ...],
    earlier_footprints: dict[str, tuple[Footprint, ...]],
    obstacles: tuple[Obstacle, ...],
    docking_plan: DockingPlan,
    particulars: Particulars,
    frames: FrameTable,
) -> Uses | Absent:
    """Find the least move of the plan's keel blocks."""
    if not earlier_footprints:
        return _NONE_BEFORE
    if not frames.numbers:
        return NO_FRAMES
    planned = _keel(plan_footprints)
    inputs = {"blocks": Given(planned, f"{len(planned)} keel blocks", docking_plan.here)}
    inputs |= _bottom(earlier_footprints, obstacles, docking_plan, particulars, frames)
    return Uses("keel blocks of the docking plan, frame spaces as they are at each", inputs, docking_plan.here)


@step_of(SHIFT, "blocks.shift-of-last", names=_KEPT, kept=True)
def last_shift(
    earlier_footprints: dict[str, tuple[Footprint, ...]],
    obstacles: tuple[Obstacle, ...],
    docking_plan: DockingPlan,
    particulars: Particulars,
    frames: FrameTable,
) -> Uses | Absent:
    """Find the least move of the keel blocks of the last docking, were they set again where they stood."""
    if not earlier_footprints:
        return _NONE_BEFORE
    if not frames.numbers:
        return NO_FRAMES
    last = list(earlier_footprints)[-1]
    bottom = _bottom(earlier_footprints, obstacles, docking_plan, particulars, frames)
    stood = Given(_keel(earlier_footprints[last]), f"keel blocks of {last}", f"history/{last}.yaml")
    inputs = {"blocks": stood} | bottom
    return Uses(f"keel blocks of {last}, were they set again where they stood", inputs, docking_plan.here)


def _bottom(
    earlier: dict[str, tuple[Footprint, ...]],
    obstacles: tuple[Obstacle, ...],
    plan: DockingPlan,
    particulars: Particulars,
    frames: FrameTable,
) -> dict[str, Given]:
    last = list(earlier)[-1]
    bare = _keel(tuple(one for one in earlier[last] if not one.painted))
    clearance = clearance_of(plan)
    low = underside(particulars) + float(clearance.si)
    others = [one.place.as_input() for one in obstacles if one.lowest < low]
    found = {
        "frames": Given(list(frames.distances), f"{len(frames.distances)} frames", "vessel/frames.yaml"),
        **given_straight(particulars),
        "earlier": Given(bare, f"keel blocks of {last}", f"history/{last}.yaml"),
        "others": Given(others, f"{len(others)} openings, plugs, anodes and other things low on the hull", "vessel/"),
        "clearance": clearance,
    }
    return found | ({"margin": given(plan.margin.value)} if plan.margin is not None else {})


def _keel(prints: tuple[Footprint, ...]) -> list[dict[str, object]]:
    return [as_input(one) for one in prints if one.kind == "keel"]
