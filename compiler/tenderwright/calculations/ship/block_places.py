"""Where the blocks of the docking plan stand: each keel block of every row, and each pair of side blocks."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import degrees

from tenderwright.calculations.blocks.heights import METHOD as HEIGHTS
from tenderwright.calculations.blocks.heights import build_heights
from tenderwright.calculations.blocks.side_block import METHOD as SIDE
from tenderwright.calculations.blocks.side_block import Seat, seat
from tenderwright.calculations.blocks.stiffness import block_stiffness
from tenderwright.calculations.docking_results import KeelBlockResult, SideBlockResult
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import given_form
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.docking_plan import DockingPlan, KeelBlocks, SideBlocks
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.quantities.position import FrameTable, check_position

LENGTH, WIDTH = 0.4, 0.6
"""Cap of a side block that states none, m (common practice, no source)."""


def block_places(package: Package, results: Results, record: Record) -> None:
    """Place the keel blocks and side blocks of the plan, with the heights to which they are built."""
    plan = package.docking_plan
    if plan is None or package.frames is None or package.particulars is None:
        return
    results.docking.keel_blocks = _keel(package, plan, package.frames, record)
    if results.form is not None:
        results.docking.side_blocks = tuple(_sides(package, plan, results, record))


def keel_underside(package: Package) -> float:
    """Give the height above the keel line of what stands on the blocks, m: less than nothing for a bar keel."""
    keel = package.particulars.keel if package.particulars else None
    return -keel.depth.si if keel is not None and keel.kind == "bar" and keel.depth is not None else 0.0


def bearing_width(package: Package, row: KeelBlocks) -> float:
    """Give the width in contact, m: of the plate that spreads the load, or the lesser of keel and cap."""
    if row.bearing_width is not None:
        return min(row.bearing_width.si, row.width.si)
    keel = package.particulars.keel.width.si if package.particulars else row.width.si
    return min(keel, row.width.si)


def rows_of(plan: DockingPlan, frames: FrameTable) -> Iterator[tuple[KeelBlocks, float]]:
    """Yield every keel block's row and place, m, in the plan's order. Raises OutOfRange for a row off the frames."""
    for row in plan.keel_blocks:
        if row.to is None:
            yield row, row.at.x
            continue
        first, last = check_position(row.at.text), check_position(row.to.text)
        if isinstance(first, float) or isinstance(last, float):
            raise OutOfRange("a row of keel blocks runs from one frame to another")
        step = row.every if last[0] >= first[0] else -row.every
        for frame in range(first[0], last[0] + (1 if step > 0 else -1), step):
            yield row, frames.x(frame) + first[1]


def _keel(package: Package, plan: DockingPlan, frames: FrameTable, record: Record) -> tuple[KeelBlockResult, ...]:
    try:
        placed = sorted(rows_of(plan, frames), key=lambda pair: pair[1])
        places = [x for _, x in placed]
        if any(b - a < 0.01 for a, b in pairwise(places)):
            raise OutOfRange("two keel blocks stand at one place")
        heights = _heights(package, plan, places, record)
    except OutOfRange as error:
        at = plan.keel_blocks[0].here
        record.notices.append(Notice("out-of-range", at, f"keel blocks of the docking plan: {error}"))
        return ()
    return tuple(
        KeelBlockResult(
            number,
            frames.label(x),
            x,
            row.length.si,
            row.width.si,
            heights[number - 1] if heights else None,
            _stiffness(package, row),
        )
        for number, (row, x) in enumerate(placed, start=1)
    )


def _heights(package: Package, plan: DockingPlan, places: list[float], record: Record) -> list[float]:
    if plan.block_height is None:
        return []
    assert package.particulars is not None
    straight = package.particulars.keel.straight.from_
    slope = plan.declivity.value.si if plan.declivity else 0.0
    found = build_heights(places, straight.x, plan.block_height.si, declivity=slope).tolist()
    inputs = {
        "places": Given(None, f"{len(places)} keel blocks", plan.here),
        "datum": given(straight),
        "datum_height": given(plan.block_height),
        "declivity": given(plan.declivity.value) if plan.declivity else Given(0.0, "level", "no declivity is given"),
    }
    outputs = {"least": min(found), "greatest": max(found)}
    record.keep(HEIGHTS, "blocks.keel.height", "keel blocks of the docking plan", inputs, outputs)
    return [float(one) for one in found]


def _stiffness(package: Package, row: KeelBlocks) -> float | None:
    """Give a block's stiffness from its layers, all taken on the area in contact; None where one is not known."""
    area = row.length.si * bearing_width(package, row)
    layers = [(one.height.si, one.stiffness.si, area) for one in row.layers if one.stiffness is not None]
    if not layers or len(layers) < len(row.layers):
        return None
    return block_stiffness(layers)


def _sides(package: Package, plan: DockingPlan, results: Results, record: Record) -> Iterator[SideBlockResult]:
    form = results.form
    assert form is not None
    raised = plan.block_height.si - keel_underside(package) if plan.block_height is not None else None
    for number, pair in enumerate(sorted(plan.side_blocks, key=lambda one: one.at.x), start=1):
        length, width = side_cap(pair)
        prefix = f"blocks.side-{number}"
        try:
            found = seat(form, pair.at.x, pair.off_centre.si, length, width)
        except OutOfRange as error:
            record.fail(SIDE, prefix, f"at {pair.at}: {error}", pair.here)
            continue
        _keep_seat(package, plan, pair, found, raised, prefix, record)
        yield SideBlockResult(
            number,
            pair.at.text,
            pair.at.x,
            pair.off_centre.si,
            length,
            width,
            found.height,
            found.height_inboard,
            found.height_outboard,
            found.height + raised if raised is not None else None,
            found.bevel,
            found.bevel_forward,
        )


def side_cap(pair: SideBlocks) -> tuple[float, float]:
    """Give length and width of a side block's cap, m."""
    return pair.length.si if pair.length else LENGTH, pair.width.si if pair.width else WIDTH


def _keep_seat(
    package: Package,
    plan: DockingPlan,
    pair: SideBlocks,
    found: Seat,
    raised: float | None,
    prefix: str,
    record: Record,
) -> None:
    inputs = {"offsets": given_form(package), "at": given(pair.at), "off_centre": given(pair.off_centre)}
    if plan.block_height is not None:
        inputs["keel_block_height"] = given(plan.block_height)
    outputs = {"bevel": degrees(found.bevel), "bevel_forward": degrees(found.bevel_forward)}
    if raised is not None:
        outputs |= {
            "height": found.height + raised,
            "height_inboard": found.height_inboard + raised,
            "height_outboard": found.height_outboard + raised,
        }
    record.keep(SIDE, prefix, f"side blocks at {pair.at}", inputs, outputs)
