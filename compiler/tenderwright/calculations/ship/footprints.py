"""The blocks of the plan against the hull: openings, anodes, bilge keels, work, and the blocks of earlier dockings."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Literal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.blocks import footprint as rectangle
from tenderwright.calculations.blocks.bare_area import METHOD as BARE
from tenderwright.calculations.blocks.bare_area import Bare
from tenderwright.calculations.blocks.clearance import METHOD as CLEAR
from tenderwright.calculations.blocks.clearance import Clearance, Near
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.block_places import PlacedBlock, SideBlockResult, side_cap
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.ship.keel import KeelLine
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.history import EarlierDocking, UsedBlock
from tenderwright.model.particulars import Particulars
from tenderwright.model.vessel import Anode, Appendage, Opening
from tenderwright.quantities.display import plainly
from tenderwright.quantities.position import FrameTable

PLAN = "plan"
PLUG = "docking plug"
Kind = Literal["keel", "side"]
CAP_LENGTH, CAP_WIDTH, SIDE_WIDTH = 0.3, 1.0, 0.6
"""Caps of earlier dockings whose record gives no size, m (common practice, no source)."""


class Footprint(Struct, frozen=True):
    """The rectangle that one block covers on the hull, seen in plan."""

    docking: str
    """`plan` for the plan of this tender, otherwise the identifier of the earlier docking."""
    kind: Kind
    position: str
    """As written, or by the nearest frame."""
    aft: float
    forward: float
    right: float
    """Least y."""
    left: float
    """Greatest y."""
    painted: bool = False
    """Whether the shell under it was painted at that docking."""

    @property
    def x(self) -> float:
        """Give its middle along the ship."""
        return 0.5 * (self.aft + self.forward)

    @property
    def y(self) -> float:
        """Give its middle across the ship, to port."""
        return 0.5 * (self.right + self.left)

    @property
    def side(self) -> str:
        """Name the side it stands on."""
        return "centreline" if self.right < 0.0 < self.left else "port" if self.y > 0 else "starboard"


class Conflict(Struct, frozen=True):
    """A block nearer to a thing on the hull than the clearance wanted."""

    footprint: Footprint
    kind: str
    """`opening`, `docking plug`, `anode`, `bilge keel`."""
    name: str
    gap: float
    """From the edge of the cap to the edge of the thing; 0 where it covers it."""
    wanted: float


class Strip(Struct, frozen=True):
    """A strip of bottom covered by blocks at two or more dockings running, so that nobody could paint it."""

    aft: float
    forward: float
    right: float
    left: float
    dockings: tuple[str, ...]
    """In order of time; the last is `plan` where the plan of this tender would cover it again."""


@step()
def plan_footprints(placed_keel_blocks: tuple[PlacedBlock, ...], docking_plan: DockingPlan) -> tuple[Footprint, ...]:
    """Give the cap of every block of the plan: keel blocks, then side blocks to port and to starboard."""
    keel = [
        _print(PLAN, "keel", one.position, one.x, 0.0, one.row.length.si, one.row.width.si)
        for one in placed_keel_blocks
    ]
    sides = [
        _print(PLAN, "side", pair.at.text, pair.at.x, sign * pair.off_centre.si, *side_cap(pair))
        for pair in sorted(docking_plan.side_blocks, key=lambda one: one.at.x)
        for sign in (1.0, -1.0)
    ]
    return (*keel, *sides)


@step()
def earlier_footprints(history: tuple[EarlierDocking, ...], frames: FrameTable) -> dict[str, tuple[Footprint, ...]]:
    """Give the caps of the blocks of each earlier docking, oldest first."""
    return {one.docking: tuple(_used(one, frames)) for one in dockings_in_order(history)}


@step_of(BARE, "blocks")
def bare_bottom(
    plan_footprints: tuple[Footprint, ...],
    earlier_footprints: dict[str, tuple[Footprint, ...]] | None,
    docking_plan: DockingPlan,
    particulars: Particulars,
    history: tuple[EarlierDocking, ...],
) -> Uses:
    """Find the area that stays bare under the blocks of the plan, and what was covered before and not painted."""
    own = _rectangles(plan_footprints)
    before = dockings_in_order(history)
    rows = [{"name": name} | _rectangles(prints) for name, prints in (earlier_footprints or {}).items()]
    words = ", ".join(f"blocks of {one.docked.year}" for one in before) or "none is on record"
    inputs = {
        "keel_blocks": Given(own["keel"], f"{len(own['keel'])} keel blocks", docking_plan.here),
        "side_blocks": Given(own["sides"], f"{len(own['sides']) // 2} pairs of side blocks", docking_plan.here),
        "keel_width": given(particulars.keel.width),
        "earlier": Given(rows, words, before[-1].here if before else "history/"),
    }
    return Uses("blocks of the docking plan", inputs, docking_plan.here)


@step()
def covered_strips(bare_bottom: Bare) -> tuple[Strip, ...]:
    """Give the strips of bottom that dockings running have covered, with the names of the dockings."""
    names = (*bare_bottom.dockings, PLAN)
    return tuple(
        Strip(one.aft, one.forward, one.starboard, one.port, names[one.first : one.last + 1])
        for one in bare_bottom.strips
    )


def _rectangles(prints: tuple[Footprint, ...]) -> dict[str, list[dict[str, Any]]]:
    return {
        word: [as_input(one) for one in prints if one.kind == kind and not one.painted]
        for word, kind in (("keel", "keel"), ("sides", "side"))
    }


def as_input(one: Footprint) -> dict[str, Any]:
    """Give a footprint as the input of a method."""
    return {
        "name": f"{one.kind} {one.position}",
        "x": one.x,
        "y": one.y,
        "length": one.forward - one.aft,
        "width": one.left - one.right,
    }


def dockings_in_order(history: tuple[EarlierDocking, ...]) -> list[EarlierDocking]:
    """Give the earlier dockings whose blocks are on record, oldest first."""
    return sorted((one for one in history if one.blocks.keel or one.blocks.sides), key=lambda one: one.docked)


class Obstacle(Struct, frozen=True):
    """A thing on the hull that blocks keep clear of: its kind, rectangle in plan, and height of its lower edge."""

    kind: str
    place: rectangle.Footprint
    lowest: float


@step()
def obstacles(
    openings: tuple[Opening, ...], anodes: tuple[Anode, ...], appendages: tuple[Appendage, ...], hull: Hull | None
) -> tuple[Obstacle, ...]:
    """Give what blocks must keep clear of; what cannot be placed is left out."""
    form = hull.form if hull is not None else None
    return tuple(_obstacles(openings, anodes, appendages, form))


def _obstacles(
    openings: tuple[Opening, ...],
    anodes: tuple[Anode, ...],
    appendages: tuple[Appendage, ...],
    form: HullForm | None,
) -> Iterator[Obstacle]:
    for opening in openings:
        y = _off_centre(opening, form)
        if y is not None:
            bore = opening.bore.si if opening.bore else 0.0
            length = opening.length.si if opening.length else bore
            kind = PLUG if opening.kind == PLUG else "opening"
            place = rectangle.Footprint(opening.opening, opening.at.x, y, length, bore)
            yield Obstacle(kind, place, opening.height.si - bore / 2)
    for anode in anodes:
        half = _half_breadth(form, anode.at.x, anode.height.si)
        if half is not None and half > 0:
            yield Obstacle("anode", _anode(anode, half), anode.height.si)
    for part in appendages:
        if part.kind == "bilge keel" and form is not None and part.lowest is not None:
            yield from (Obstacle("bilge keel", one, part.lowest.si) for one in _bilge_keel(part, part.lowest.si, form))


_NAMED = 3
"""So many anodes are named one by one."""
PLACES = "it needs `off_centre` of openings in vessel/openings.yaml, or the form of the hull, to place"


@step()
def not_placed(
    openings: tuple[Opening, ...],
    anodes: tuple[Anode, ...],
    appendages: tuple[Appendage, ...],
    obstacles: tuple[Obstacle, ...],
    hull: Hull | None,
) -> tuple[str, ...]:
    """Name what blocks must keep clear of, and cannot be placed for want of the shell or of where it lies."""
    placed = {one.place.name for one in obstacles}
    left = [one.name for one in openings if one.opening not in placed]
    # Where the shell is known, an anode that is not on it is on the rudder, which no block touches.
    bare = [one.anode for one in anodes if hull is None and one.side != "centreline" and one.anode not in placed]
    left += [f"anode {name}" for name in bare] if len(bare) <= _NAMED else [f"{len(bare)} anodes"]
    return (*left, *(one.name for one in appendages if one.kind == "bilge keel" and one.appendage not in placed))


class Clearances(Struct, frozen=True):
    """The blocks of the plan beside what is on the hull."""

    wanted: Given
    """From the edge of a cap to the edge of a thing."""
    conflicts: tuple[Conflict, ...]
    nearest: tuple[Conflict, ...]
    """The block nearest to each opening of the bottom, near enough to be looked at."""


@step_of(CLEAR, "blocks.clearance", names={"count": "count", "nearest": "nearest", "least": "least"})
def blocks_near(
    plan_footprints: tuple[Footprint, ...],
    obstacles: tuple[Obstacle, ...],
    side_blocks: tuple[SideBlockResult, ...] | None,
    docking_plan: DockingPlan,
    keel_line: KeelLine,
) -> Uses:
    """Find the blocks that stand too near to something on the hull, and the block nearest to each thing."""
    tops = {pair.x: pair.shell_outer for pair in side_blocks or ()}
    blocks = []
    for one in plan_footprints:
        top = keel_line.at(one.x) if one.kind == "keel" else tops.get(one.x)
        named = as_input(one) | {"name": f"{one.kind} {one.position}, {one.side}"}
        blocks.append(named if top is None else named | {"top": top})
    things = [one.place.as_input() | {"lowest": one.lowest, "drawn_down": one.kind == PLUG} for one in obstacles]
    inputs = {
        "blocks": Given(blocks, f"{len(blocks)} blocks", docking_plan.here),
        "others": Given(things, f"{len(things)} openings, plugs, anodes and stretches of bilge keel", "vessel/"),
        "clearance": clearance_of(docking_plan),
    }
    return Uses("blocks of the docking plan", inputs, docking_plan.here)


@step()
def block_clearances(
    blocks_near: Clearance,
    plan_footprints: tuple[Footprint, ...],
    obstacles: tuple[Obstacle, ...],
    docking_plan: DockingPlan,
) -> Clearances:
    """Give the blocks that stand too near to something on the hull, and the block nearest to each opening."""
    wanted = clearance_of(docking_plan)

    def named(one: Near) -> Conflict:
        thing = obstacles[one.other]
        return Conflict(plan_footprints[one.block], thing.kind, thing.place.name, one.gap, float(wanted.si))

    near = [one for one in map(named, blocks_near.nearest) if one.kind in ("opening", PLUG)]
    return Clearances(wanted, tuple(map(named, blocks_near.conflicts)), tuple(near))


def clearance_of(plan: DockingPlan | None) -> Given:
    """Give the clearance wanted between blocks and things on the hull."""
    if plan is not None and plan.clearance is not None:
        return given(plan.clearance.value)
    return Given(rectangle.CLEARANCE, plainly(rectangle.CLEARANCE, "size"), "common practice, no source")


def _used(docking: EarlierDocking, frames: FrameTable) -> Iterator[Footprint]:
    for kind, blocks in (("keel", docking.blocks.keel), ("side", docking.blocks.sides)):
        for block in blocks:
            length = block.length.si if block.length else CAP_LENGTH
            width = block.width.si if block.width else CAP_WIDTH if kind == "keel" else SIDE_WIDTH
            off = block.off_centre.si if block.off_centre else 0.0
            for x in _places(block):
                for y in _sides(block, off):
                    cap: Kind = "keel" if kind == "keel" else "side"
                    found = _print(docking.docking, cap, frames.label(x), x, y, length, width)
                    yield replace(found, painted=block.painted)


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
