"""Where the blocks of the docking plan stand: each keel block of every row, and each pair of side blocks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise
from typing import Any

from msgspec import Struct

from tenderwright.calculations.blocks.heights import METHOD as HEIGHTS
from tenderwright.calculations.blocks.side_block import METHOD as SIDE
from tenderwright.calculations.blocks.side_block import SideBlock
from tenderwright.calculations.blocks.stiffness import block_stiffness
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.ship.keel import KeelLine
from tenderwright.calculations.steps.outcome import Absent, Each, Failed, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.docking_plan import DockingPlan, KeelBlocks, SideBlocks
from tenderwright.model.particulars import Particulars
from tenderwright.model.timber import Timber
from tenderwright.notices import Notice
from tenderwright.quantities.display import plainly, show
from tenderwright.quantities.position import FrameTable, check_position

LENGTH, WIDTH = 0.4, 0.6
"""Cap of a side block that states none, m (common practice, no source)."""


class PlacedBlock(Struct, frozen=True):
    """A keel block of the plan at its place, m forward of the after perpendicular."""

    row: KeelBlocks
    x: float
    position: str


class KeelBlockResult(Struct, frozen=True):
    """One keel block of the plan, from aft."""

    number: int
    position: str
    x: float
    length: float
    width: float
    height: float | None
    """Of its top above the dock floor."""
    stiffness: float | None
    """N/m; None where the layers are not known."""
    rigid: float | None = None
    """Load by the area-moment method, rigid hull; None where it could not be found."""
    elastic: float | None = None
    """Load with the hull as an elastic girder."""
    line_load: float | None = None
    """Greater load over the length that the block holds up, kg/m."""
    pressure: float | None = None
    """Of the greater load on the width in contact."""

    @property
    def load(self) -> float | None:
        """Give the greater of the two loads."""
        loads = [one for one in (self.rigid, self.elastic) if one is not None]
        return max(loads, default=None)


class SideBlockResult(Struct, frozen=True):
    """One pair of side blocks of the plan, from aft; the figures are those of either block."""

    number: int
    position: str
    x: float
    off_centre: float
    length: float
    width: float
    shell: float
    """Height of the shell over the middle of the cap, above the keel line."""
    shell_inner: float
    """The same at the inboard edge of the cap."""
    shell_outer: float
    """The same at the outboard edge."""
    height: float | None
    """Of the middle of the cap above the dock floor."""
    bevel: float
    """Slope of the cap across the ship, rising outboard, rad."""
    fore_and_aft: float
    """Slope of the cap along the ship, rising forward, rad."""
    wind: float | None = None
    """Load of the lee block from wind, kg."""
    earthquake: float | None = None
    """Load of the lee block from the sideways acceleration, kg."""


@step()
def placed_keel_blocks(docking_plan: DockingPlan, frames: FrameTable) -> tuple[PlacedBlock, ...] | Absent:
    """Place every keel block of the plan, from aft."""
    try:
        placed = sorted(rows_of(docking_plan, frames), key=lambda pair: pair[1])
        if any(b - a < 0.01 for (_, a), (_, b) in pairwise(placed)):
            raise OutOfRange("two keel blocks stand at one place")
    except OutOfRange as error:
        at = docking_plan.keel_blocks[0].here
        return Failed(str(error), Notice("out-of-range", at, f"keel blocks of the docking plan: {error}"))
    return tuple(PlacedBlock(row, x, frames.label(x)) for row, x in placed)


def rows_of(plan: DockingPlan, frames: FrameTable) -> Iterator[tuple[KeelBlocks, float]]:
    """Yield every keel block's row and place, m, in the plan's order. Raises OutOfRange for a row off the frames."""
    for row in plan.keel_blocks:
        if row.to is None:
            yield row, row.at.x
            continue
        if row.pitch is not None:
            way = 1.0 if row.to.x >= row.at.x else -1.0
            count = int(abs(row.to.x - row.at.x) / row.pitch.si + 1e-6)
            yield from ((row, row.at.x + way * number * row.pitch.si) for number in range(count + 1))
            continue
        (first, offset), (last, _) = check_position(row.at.text), check_position(row.to.text)
        if not isinstance(first, int) or not isinstance(last, int):
            raise OutOfRange("a row of keel blocks runs from one frame to another, or needs its `pitch`")
        step = row.every if last >= first else -row.every
        for frame in range(first, last + (1 if step > 0 else -1), step):
            yield row, frames.x(frame) + offset


def given_places(placed: tuple[PlacedBlock, ...], plan: DockingPlan) -> Given:
    """Give the places of the keel blocks as an input."""
    words = f"{len(placed)} keel blocks, {placed[0].position} to {placed[-1].position}" if placed else "none"
    return Given([one.x for one in placed], words, plan.here)


@step_of(HEIGHTS, "blocks.keel.height", names={"least": "least", "greatest": "greatest"})
def keel_block_heights(
    placed_keel_blocks: tuple[PlacedBlock, ...],
    docking_plan: DockingPlan,
    particulars: Particulars,
    wood: Timber | None,
    hog_measured: Mapping[str, Any] | None,
) -> Uses | Absent:
    """Find the heights to which the keel blocks are built, to the measured line of a keel that is hogged."""
    plan, straight = docking_plan, particulars.keel.straight.from_
    if plan.block_height is None:
        return Lacking("it needs `block_height` in vessel/docking-plan.yaml")
    inputs = {
        "places": given_places(placed_keel_blocks, plan),
        "datum": given(straight),
        "datum_height": given(plan.block_height),
        "declivity": given(plan.declivity.value) if plan.declivity else Given(0.0, "level", "no declivity is given"),
    }
    if wood is not None and wood.hog is not None and wood.hog.blocks == "measured line" and hog_measured is not None:
        points = zip(sorted(one.at.x for one in wood.hog.keel), hog_measured["off"], strict=True)
        line = [{"x": x, "z": z} for x, z in points]
        inputs["keel"] = Given(line, f"{len(line)} points of the measured line of the keel", "timber.hog.off")
    return Uses("keel blocks of the docking plan", inputs, plan.keel_blocks[0].here)


@step()
def keel_blocks(
    placed_keel_blocks: tuple[PlacedBlock, ...],
    keel_block_heights: Mapping[str, Any] | None,
    particulars: Particulars,
) -> tuple[KeelBlockResult, ...]:
    """Give the keel blocks of the plan, from aft, with height and stiffness, before any load."""
    heights = keel_block_heights["heights"] if keel_block_heights else [None] * len(placed_keel_blocks)
    return tuple(
        KeelBlockResult(
            number, one.position, one.x, one.row.length.si, one.row.width.si, height, _stiffness(particulars, one.row)
        )
        for number, (one, height) in enumerate(zip(placed_keel_blocks, heights, strict=True), start=1)
    )


def bearing_width(particulars: Particulars, row: KeelBlocks) -> float:
    """Give the width in contact, m: of the plate that spreads the load, or the lesser of keel and cap."""
    if row.bearing_width is not None:
        return min(row.bearing_width.si, row.width.si)
    return min(particulars.keel.width.si, row.width.si)


def _stiffness(particulars: Particulars, row: KeelBlocks) -> float | None:
    """Give a block's stiffness from its layers, all taken on the area in contact; None where one is not known."""
    area = row.length.si * bearing_width(particulars, row)
    layers = [(one.height.si, one.stiffness.si, area) for one in row.layers if one.stiffness is not None]
    if not layers or len(layers) < len(row.layers):
        return None
    return block_stiffness(layers)


@step()
def block_line(keel_blocks: tuple[KeelBlockResult, ...], docking_plan: DockingPlan) -> BlockLine | Absent:
    """Give the line of keel blocks on which she lands."""
    if len(keel_blocks) < 2:
        return Lacking("it needs two keel blocks or more in vessel/docking-plan.yaml")
    ends = [x for one in keel_blocks for x in (one.x - one.length / 2, one.x + one.length / 2)]
    return BlockLine(min(ends), max(ends), docking_plan.declivity.value.si if docking_plan.declivity else 0.0)


def given_line(blocks: BlockLine, plan: DockingPlan) -> dict[str, Given]:
    """Give the line of keel blocks as inputs."""
    found = {
        "block_aft": Given(blocks.aft, show(blocks.aft, "centre"), plan.keel_blocks[0].here),
        "block_forward": Given(blocks.forward, show(blocks.forward, "centre"), plan.keel_blocks[-1].here),
    }
    return found | ({"declivity": given(plan.declivity.value)} if plan.declivity is not None else {})


def first_block(placed: tuple[PlacedBlock, ...], x: float) -> PlacedBlock:
    """Give the keel block that she touches first, whose edge is at a place, m."""
    return min(placed, key=lambda block: abs(block.x - x))


def given_cap(placed: PlacedBlock, particulars: Particulars) -> dict[str, Given]:
    """Give the contact of the keel on a cap as inputs."""
    row = placed.row
    return {
        "contact_length": given(row.length),
        "block_width": given(row.width),
        "keel_width": given(row.bearing_width or particulars.keel.width),
    }


def given_allowable(plan: DockingPlan) -> dict[str, Given]:
    """Give the allowable pressure of the caps as inputs; nothing where the plan states none."""
    allowable = plan.allowable
    if allowable is None:
        return {}
    return {
        "allowable": given(allowable.value),
        "allowable_source": Given(allowable.source, allowable.source, allowable.here),
    }


@step()
def side_block_pairs(docking_plan: DockingPlan, frames: FrameTable) -> dict[str, SideBlocks]:
    """Give the pairs of side blocks by number, from aft."""
    pairs = sorted(docking_plan.side_blocks, key=lambda one: one.at.x)
    return {str(number): pair for number, pair in enumerate(pairs, start=1)}


class SideBlockPlace(Struct, frozen=True):
    """Where a pair of side blocks stands, whatever is known of the shell over it; lengths in m."""

    number: int
    position: str
    x: float
    off_centre: float
    length: float
    width: float


@step()
def side_block_places(side_block_pairs: dict[str, SideBlocks]) -> tuple[SideBlockPlace, ...]:
    """Give where every pair of side blocks stands, from aft."""
    return tuple(
        SideBlockPlace(int(number), one.at.text, one.at.x, one.off_centre.si, *side_cap(one))
        for number, one in side_block_pairs.items()
    )


@step_of(SIDE, "blocks.side-{}", each="side_block_pairs", kept=True)
def side_block_seats(pair: SideBlocks, hull: Hull, docking_plan: DockingPlan, keel_line: KeelLine) -> Uses:
    """Find how the shell lies over a side block, and how high it is built."""
    length, width = side_cap(pair)
    usual = "common practice, no source"
    inputs = {
        "offsets": hull.given,
        "x": given(pair.at),
        "y": given(pair.off_centre),
        "length": given(pair.length) if pair.length else Given(length, plainly(length, "distance"), usual),
        "width": given(pair.width) if pair.width else Given(width, plainly(width, "distance"), usual),
    }
    if docking_plan.block_height is not None:
        inputs["keel_block_height"] = given(docking_plan.block_height)
    return Uses(f"side blocks at {pair.at}", inputs | keel_line.given_at(pair.at.x), pair.here, of=f"at {pair.at}")


def side_cap(pair: SideBlocks) -> tuple[float, float]:
    """Give length and width of a side block's cap, m."""
    return pair.length.si if pair.length else LENGTH, pair.width.si if pair.width else WIDTH


@step()
def side_blocks(
    side_block_pairs: dict[str, SideBlocks], side_block_seats: Each[SideBlock]
) -> tuple[SideBlockResult, ...]:
    """Give the pairs of side blocks that lie under the hull, from aft, before any load."""
    found = []
    for number, one in side_block_seats.items():
        pair, shell = side_block_pairs[number], one.seat
        length, width = side_cap(pair)
        found.append(
            SideBlockResult(
                int(number),
                pair.at.text,
                pair.at.x,
                pair.off_centre.si,
                length,
                width,
                shell.height,
                shell.height_inboard,
                shell.height_outboard,
                one.height,
                shell.bevel,
                shell.bevel_forward,
            )
        )
    return tuple(found)
