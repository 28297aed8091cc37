"""The blocks of the plan against the hull: openings, anodes, bilge keels, work, and the blocks of earlier dockings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import hypot
from typing import Any

from tenderwright.calculations.blocks import footprint as rectangle
from tenderwright.calculations.blocks.covered import covered_running, union_area
from tenderwright.calculations.docking_results import Conflict, DockingResults, Footprint, Kind, Strip
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import keel_underside
from tenderwright.calculations.ship.block_places import rows_of, side_cap
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.history import EarlierDocking, UsedBlock
from tenderwright.model.package import Package
from tenderwright.model.vessel import Anode, Appendage, Opening
from tenderwright.quantities.position import FrameTable

PLAN = "plan"
CLEARANCE = Given(rectangle.CLEARANCE, "300 mm", "common practice, no source")
LOOKED_AT = 2.0
"""Distance within which the block nearest to an opening is named, m."""
REACH = 1.0
"""A docking plug no higher than this over the block is drawn from below, so that nothing may stand under it, m."""
CAP_LENGTH, CAP_WIDTH, SIDE_WIDTH = 0.3, 1.0, 0.6
"""Caps of earlier dockings whose record gives no size, m (common practice, no source)."""

BARE: Method[Any] = Method(
    name="blocks.bare-area",
    title="Area of the hull that stays bare under blocks",
    formula="A = area of the union of the places in contact; keel blocks bear on the width of the keel",
    source=Citation("Geometry", standing="derived"),
    valid="blocks that are not moved while she is dry",
    inputs={},
    outputs=(
        Symbol("bare_area", "area under the blocks of the plan", "area", "m2"),
        Symbol("covered_twice", "area that the plan covers again after the last docking", "area", "m2"),
        Symbol("never_painted", "area covered at the last two dockings or more", "area", "m2"),
        Symbol("keel_count", "keel blocks", "each", "each"),
        Symbol("side_count", "side blocks, both sides", "each", "each"),
    ),
    kernel=lambda: {},
    example={},
)


def footprint_values(package: Package, results: Results, record: Record) -> None:
    """Set the plan's footprints beside the hull and the earlier dockings, and keep the area that stays bare."""
    plan, frames, docking = package.docking_plan, package.frames, results.docking
    if plan is None or frames is None or package.particulars is None or not docking.keel_blocks:
        return
    docking.footprints = tuple(plan_footprints(package, frames))
    docking.earlier = {one.docking: tuple(_used(one, frames)) for one in dockings_in_order(package)}
    near = list(_near(package, docking, results.form))
    docking.conflicts = tuple(one for one in near if one.gap < one.wanted - 1e-6)
    docking.nearest = tuple(_nearest(near))
    width = _keel_width(package)
    groups = [[contact(one, width) for one in prints] for prints in docking.earlier.values()]
    own = [contact(one, width) for one in docking.footprints]
    docking.strips = tuple(_strips(groups, own, [*docking.earlier, PLAN]))
    docking.bare_area = union_area([_as_rectangle(one) for one in own])
    inputs = {
        "keel_blocks": Given(None, f"{len(docking.keel_blocks)} keel blocks", plan.here),
        "side_blocks": Given(None, f"{len(plan.side_blocks)} pairs of side blocks", plan.here),
        "keel_width": given(package.particulars.keel.width),
    }
    inputs |= {one.docking: Given(None, f"blocks of {one.docked.year}", one.here) for one in dockings_in_order(package)}
    outputs = {
        "bare_area": docking.bare_area,
        "covered_twice": sum(_area(one) for one in docking.strips if one.dockings[-1] == PLAN),
        "never_painted": sum(_area(one) for one in docking.strips if one.dockings[-1] != PLAN),
        "keel_count": float(len(docking.keel_blocks)),
        "side_count": 2.0 * len(plan.side_blocks),
    }
    record.keep(BARE, "blocks", "blocks of the docking plan", inputs, outputs)


def dockings_in_order(package: Package) -> list[EarlierDocking]:
    """Give the earlier dockings whose blocks are on record, oldest first."""
    found = [one for one in package.history if one.blocks.keel or one.blocks.sides]
    return sorted(found, key=lambda one: one.docked)


def plan_footprints(package: Package, frames: FrameTable) -> Iterator[Footprint]:
    """Yield the footprint of every block of the plan: keel blocks, then side blocks to port and to starboard."""
    plan = package.docking_plan
    assert plan is not None
    for row, x in sorted(rows_of(plan, frames), key=lambda pair: pair[1]):
        yield _print(PLAN, "keel", frames.label(x), x, 0.0, row.length.si, row.width.si)
    for pair in sorted(plan.side_blocks, key=lambda one: one.at.x):
        for sign in (1.0, -1.0):
            yield _print(PLAN, "side", pair.at.text, pair.at.x, sign * pair.off_centre.si, *side_cap(pair))


def contact(one: Footprint, keel_width: float) -> Footprint:
    """Give what a block touches: under the keel no more than the keel's own width."""
    if one.kind == "side" or one.left - one.right <= keel_width:
        return one
    return replace(one, right=one.y - keel_width / 2, left=one.y + keel_width / 2)


@dataclass(frozen=True)
class Obstacle:
    """A thing on the hull that blocks keep clear of: its kind, rectangle in plan, and height of its lower edge."""

    kind: str
    place: rectangle.Footprint
    lowest: float


def obstacles(package: Package, form: HullForm | None) -> Iterator[Obstacle]:
    """Yield what blocks must keep clear of; what cannot be placed is left out."""
    for opening in package.openings:
        y = _off_centre(opening, form)
        if y is not None:
            bore = opening.bore.si if opening.bore else 0.0
            length = opening.length.si if opening.length else bore
            kind = "docking plug" if opening.kind == "docking plug" else "opening"
            place = rectangle.Footprint(opening.opening, opening.at.x, y, length, bore)
            yield Obstacle(kind, place, opening.height.si - bore / 2)
    for anode in package.anodes:
        half = _half_breadth(form, anode.at.x, anode.height.si)
        if half is not None and half > 0:
            yield Obstacle("anode", _anode(anode, half), anode.height.si)
    for part in package.appendages:
        if "keel" in part.appendage and part.side != "centreline" and form is not None and part.lowest is not None:
            yield from (Obstacle("bilge keel", one, part.lowest.si) for one in _bilge_keel(part, part.lowest.si, form))


def clearance_of(package: Package) -> Given:
    """Give the clearance wanted between blocks and things on the hull."""
    plan = package.docking_plan
    return given(plan.clearance.value) if plan is not None and plan.clearance is not None else CLEARANCE


def _near(package: Package, docking: DockingResults, form: HullForm | None) -> Iterator[Conflict]:
    """Yield blocks and things on the hull near to each other, counting the height of the thing over the block.

    A docking plug is drawn downward, so that only the distance in plan counts for it.
    """
    wanted = float(clearance_of(package).si)
    own = [_as_rectangle(one, str(index)) for index, one in enumerate(docking.footprints)]
    tops = {pair.x: pair.shell_outer for pair in docking.side_blocks}
    for thing in obstacles(package, form):
        for found in rectangle.conflicts(own, [thing.place], LOOKED_AT):
            block = docking.footprints[int(found.block.name)]
            top = keel_underside(package) if block.kind == "keel" else tops.get(block.x, thing.lowest)
            over = max(thing.lowest - top, 0.0)
            if thing.kind == "docking plug" and over < REACH:
                over = 0.0
            gap = hypot(max(found.distance, 0.0), over)
            yield Conflict(block, thing.kind, thing.place.name, gap, wanted)


def _nearest(near: list[Conflict]) -> Iterator[Conflict]:
    """Yield the nearest block of each opening and plug, in order of place."""
    found: dict[str, Conflict] = {}
    for one in near:
        if one.kind not in ("opening", "docking plug") or one.gap > LOOKED_AT:
            continue
        if one.name not in found or one.gap < found[one.name].gap:
            found[one.name] = one
    yield from found.values()


def _strips(groups: list[list[Footprint]], own: list[Footprint], names: list[str]) -> Iterator[Strip]:
    dockings = [[_as_rectangle(one) for one in group] for group in [*groups, own]]
    for one in covered_running(dockings):
        if one.last >= len(dockings) - 2:  # a run that ended before the last docking was painted then
            yield Strip(one.aft, one.forward, one.starboard, one.port, tuple(names[one.first : one.last + 1]))


def _used(docking: EarlierDocking, frames: FrameTable) -> Iterator[Footprint]:
    for kind, blocks in (("keel", docking.blocks.keel), ("side", docking.blocks.sides)):
        for block in blocks:
            length = block.length.si if block.length else CAP_LENGTH
            width = block.width.si if block.width else CAP_WIDTH if kind == "keel" else SIDE_WIDTH
            off = block.off_centre.si if block.off_centre else 0.0
            for x in _places(block):
                for y in _sides(block, off):
                    yield _print(
                        docking.docking, "keel" if kind == "keel" else "side", frames.label(x), x, y, length, width
                    )


def _places(block: UsedBlock) -> Iterator[float]:
    if block.to is None or block.pitch is None or block.pitch.si <= 0:
        yield block.at.x
        if block.to is not None:
            yield block.to.x
        return
    count = int(abs(block.to.x - block.at.x) / block.pitch.si + 1e-6)
    sign = 1.0 if block.to.x >= block.at.x else -1.0
    yield from (block.at.x + sign * number * block.pitch.si for number in range(count + 1))


def _sides(block: UsedBlock, off: float) -> tuple[float, ...]:
    if block.side == "both" and off:
        return (abs(off), -abs(off))
    return (abs(off) if block.side == "port" else -abs(off) if block.side == "starboard" else off,)


def _print(docking: str, kind: Kind, position: str, x: float, y: float, length: float, width: float) -> Footprint:
    return Footprint(docking, kind, position, x - length / 2, x + length / 2, y - width / 2, y + width / 2)


def _as_rectangle(one: Footprint, name: str = "") -> rectangle.Footprint:
    return rectangle.Footprint(name, one.x, one.y, one.forward - one.aft, one.left - one.right)


def _area(strip: Strip) -> float:
    return (strip.forward - strip.aft) * (strip.left - strip.right)


def _keel_width(package: Package) -> float:
    assert package.particulars is not None
    return package.particulars.keel.width.si


def _half_breadth(form: HullForm | None, x: float, z: float) -> float | None:
    if form is None:
        return None
    try:
        return float(form.half_breadth_at(x, z))
    except OutOfRange:
        return None


def _off_centre(opening: Opening, form: HullForm | None) -> float | None:
    sign = {"port": 1.0, "starboard": -1.0}.get(opening.side, 0.0)
    if sign == 0.0:
        return 0.0
    if opening.off_centre is not None:
        return sign * abs(opening.off_centre.si)
    half = _half_breadth(form, opening.at.x, opening.height.si)
    return None if half is None else sign * half


def _anode(anode: Anode, half: float) -> rectangle.Footprint:
    sign = -1.0 if anode.side == "starboard" else 1.0
    length = anode.length.si if anode.length else 0.0
    width = anode.width.si if anode.width else 0.0
    return rectangle.Footprint(anode.anode, anode.at.x, sign * half, length, width)


def _bilge_keel(part: Appendage, lowest: float, form: HullForm) -> Iterator[rectangle.Footprint]:
    """Give a bilge keel as short rectangles from where the shell is at its lowest height out to its outreach."""
    sign = -1.0 if part.side == "starboard" else 1.0
    aft, forward = sorted((part.extent.from_.x, part.extent.to.x))
    pieces = max(1, round((forward - aft) / 0.6))
    step = (forward - aft) / pieces
    for number in range(pieces):
        x = aft + (number + 0.5) * step
        inner = _half_breadth(form, x, lowest) or 0.0
        outer = max(inner, part.outreach.si if part.outreach else inner)
        yield rectangle.Footprint(part.appendage, x, sign * (inner + outer) / 2, step, outer - inner)
