"""Blocks of this docking and of earlier ones stand under her, are of the size of blocks, and are built as they say.

Ground: geometry. Sizes and stiffnesses: common practice, no source, with wide room.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import atan, degrees

from tenderwright.checks.coherence.ship.held import FRAME, held, near
from tenderwright.checks.coherence.ship.shell import Shell
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.docking_plan import BlockLayer, DockingPlan, KeelBlocks
from tenderwright.model.found import UsedBlock
from tenderwright.notices import Notice
from tenderwright.quantities.display import plainly, show
from tenderwright.quantities.position import FrameTable, Position
from tenderwright.quantities.quantity import Quantity

_SMALL_PITCH = 1.5
"""Of a small vessel, m, on whose short keel few blocks stand (common practice, no source)."""
CODE = "block-out-of-place"
_LENGTHS, _WIDTHS, _HEIGHTS = (0.15, 2.5), (0.25, 3.0), (0.4, 3.5)
_STIFF = (
    ("concrete", ("concrete",), 8e9, 60e9),
    ("steel", ("steel",), 180e9, 220e9),
    ("iron", ("iron",), 60e9, 220e9),
    ("rubber", ("rubber",), 1e6, 500e6),
    ("timber across the grain", ("oak", "fir", "pine", "timber", "wood", "hemlock", "spruce", "elm"), 50e6, 3e9),
)
"""Stiffness of a layer by what it is made of, the least and the most [Pa]; timber across the grain."""


def check(ship: Ship) -> Iterator[Notice]:
    """Report blocks that stand beside the ship or in each other, and layers that do not add up."""
    plan = ship.package.docking_plan
    if plan is not None:
        for row in plan.keel_blocks:
            yield from _size("keel block", row.length, row.width, None)
            yield from _bearing(ship, row)
            yield from _layers(plan, row)
        yield from _line(ship, plan)
        yield from _side_blocks(ship, plan)
        against = "a block stands from 0.4 m to 3.5 m high"
        yield from held(CODE, "height of the keel blocks", plan.block_height, *_HEIGHTS, against)
    for docking in ship.package.history:
        for keel in docking.blocks.keel:
            yield from _used(ship, keel, "keel")
            against = "a keel block stands on the centreline"
            yield from held(
                CODE, "distance of the keel blocks from the centreline", keel.off_centre, 0.0, 0.15, against
            )
            if keel.side != "centreline":
                yield Notice(CODE, keel.here, f"keel blocks are said to stand to {keel.side}", hints=("centreline?",))
        yield from _rows_of(ship, docking.blocks.keel)
        for side in docking.blocks.sides:
            yield from _used(ship, side, "side")
            yield from _used_side(ship, side, docking.blocks.keel)


def _size(what: str, length: Quantity | None, width: Quantity | None, height: Quantity | None) -> Iterator[Notice]:
    for name, stated, (low, high) in (
        ("length", length, _LENGTHS),
        ("width", width, _WIDTHS),
        ("height", height, _HEIGHTS),
    ):
        against = f"one is from {plainly(low, 'centre')} to {plainly(high, 'centre')} (common practice, no source)"
        yield from held(CODE, f"{name} of the {what}", stated, low, high, against)


def _bearing(ship: Ship, row: KeelBlocks) -> Iterator[Notice]:
    if row.bearing_width is None:
        return
    keel = ship.package.particulars.keel.width.si if ship.package.particulars is not None else 0.05
    low, high = min(0.9 * keel, row.width.si), row.width.si
    against = f"the keel is {show(keel, 'centre')} wide and the cap {row.width}"
    yield from held(CODE, "width on which the keel bears", row.bearing_width, low, high, against)


def _layers(plan: DockingPlan, row: KeelBlocks) -> Iterator[Notice]:
    for layer in row.layers:
        yield from _stiffness(layer)
    if row.layers and plan.block_height is not None:
        total = sum(layer.height.si for layer in row.layers)
        if abs(total - plan.block_height.si) > 0.03 * plan.block_height.si + 0.01:
            odd = max(row.layers, key=lambda one: one.height.si)
            for layer in row.layers:
                meant = plan.block_height.si - (total - layer.height.si)
                if any(abs(meant / layer.height.si / factor - 1) < 0.02 for factor in (0.1, 10, 0.001, 1000)):
                    odd = layer
            message = (
                f"the layers of the block at {row.at} are {show(total, 'centre')} high, and the block "
                f"{plan.block_height}"
            )
            yield Notice(CODE, odd.height.at, message, hints=("look at the height of each layer and of the block",))


def _stiffness(layer: BlockLayer) -> Iterator[Notice]:
    words = layer.material.lower()
    for name, names, low, high in _STIFF:
        if any(one in words for one in names):
            against = f"{name} has from {low / 1e6:g} to {plainly(high, 'block load')}"
            yield from held(CODE, f"stiffness of the {layer.material}", layer.stiffness, low, high, against)
            return


def _line(ship: Ship, plan: DockingPlan) -> Iterator[Notice]:
    """Hold the line of keel blocks against the straight keel, and each row against the next."""
    particulars, frames = ship.package.particulars, ship.package.frames
    if particulars is None or frames is None:
        return
    straight = particulars.keel.straight
    low, high = sorted((straight.from_.x, straight.to.x))
    yield from _interleaved(plan.keel_blocks)
    centres: list[tuple[float, Position, float]] = []
    for row in plan.keel_blocks:
        off = False
        for end in (row.at, *((row.to,) if row.to is not None else ())):
            room = max(0.5 * row.length.si, 0.3)
            if not low - room <= end.x <= high + room:
                yield Notice(
                    CODE,
                    end.at,
                    f"a keel block stands at {end}, and the straight keel runs over {straight}",
                    hints=(FRAME,),
                )
                off = True
        if not off:
            centres += [(x, row.at, row.length.si) for x in _centres(row, frames)]
            yield from _count(row, frames)
    centres.sort(key=lambda one: one[0])
    for (x, _, length), (after, at, other) in pairwise(centres):
        if after - x < (length + other) / 2 - 0.01:
            message = f"keel blocks stand at {frames.label(x)} and at {frames.label(after)}, one in the other"
            yield Notice(CODE, at.at, message, hints=("look at the frames, `every` and the lengths of the rows",))
            return


def _interleaved(rows: Sequence[KeelBlocks | UsedBlock]) -> Iterator[Notice]:
    """Tell of a row of keel blocks that begins before the one abaft it ends."""
    for one, other in pairwise(sorted(rows, key=lambda row: row.at.x)):
        if one.to is not None and other.at.x < one.to.x - 0.01:
            message = f"a row of keel blocks begins at {other.at}, and the one before ends at {one.to}"
            yield Notice(CODE, other.at.at, message, hints=("look at both frames",))
            return


def _centres(row: KeelBlocks, frames: FrameTable) -> list[float]:
    if row.to is None:
        return [row.at.x]
    if row.pitch is not None:
        way, reach = (1.0 if row.to.x >= row.at.x else -1.0), abs(row.to.x - row.at.x)
        return [row.at.x + way * k * row.pitch.si for k in range(int(reach / row.pitch.si + 1e-6) + 1)]
    within = [
        n for n, x in zip(frames.numbers, frames.distances, strict=True) if row.at.x - 0.01 <= x <= row.to.x + 0.01
    ]
    return [frames.x(n) for n in within[:: row.every]]


def _count(row: KeelBlocks, frames: FrameTable) -> Iterator[Notice]:
    """Tell of a row whose last block is not at its end."""
    found = _centres(row, frames)
    if row.to is not None and len(found) > 0 and abs(found[-1] - row.to.x) > 0.01 and abs(found[0] - row.at.x) < 0.01:
        key, step = ("every", f"{row.every} frames") if row.pitch is None else ("pitch", f"{row.pitch}")
        message = f"every {step} from {row.at} no block stands at {row.to}"
        yield Notice(CODE, row.to.at, message, hints=(f"look at `to` and at `{key}`",))


def _side_blocks(ship: Ship, plan: DockingPlan) -> Iterator[Notice]:
    half = max((row.width.si for row in plan.keel_blocks), default=0.5) / 2
    for pair in plan.side_blocks:
        wide = pair.width.si / 2 if pair.width is not None else 0.0
        yield from _size("side block", pair.length, pair.width, None)
        if pair.off_centre.si - wide < half - 0.01:
            message = f"the side block at {pair.at} stands {pair.off_centre} from the centreline, in the keel blocks"
            yield Notice(CODE, pair.off_centre.at, message, hints=("look at the distance and the widths",))
        elif ship.shell is not None:
            yield from _under(ship.shell, pair.at, pair.off_centre)


def _under(shell: Shell, at: Position, out: Quantity) -> Iterator[Notice]:
    """Tell of a side block beside the hull, or where the shell is too steep to rest on it."""
    if not shell.within(at.x):
        yield Notice(CODE, at.at, f"a side block stands at {at}, beyond the hull", hints=(FRAME,))
        return
    low, high = shell.bottom(at.x, out.si - 0.05), shell.bottom(at.x, out.si + 0.05)
    if low is None or high is None or low > 0.7 * shell.depth:
        most = max(shell.half_breadth(at.x, 0.5 * shell.depth), 0.0)
        message = (
            f"the side block at {at} stands {out} from the centreline, and the shell there is "
            f"{show(most, 'centre')} out"
        )
        yield Notice(CODE, out.at, message, hints=("look at the distance and the frame",))
        return
    slope = degrees(atan((high - low) / 0.1))
    if slope > 45:
        message = (
            f"the side block at {at} stands {out} from the centreline, where the shell rises at {slope:.0f} degrees"
        )
        yield Notice(CODE, out.at, message, hints=("nothing rests on so steep a side: look at the distance",))


def _used(ship: Ship, row: UsedBlock, kind: str) -> Iterator[Notice]:
    yield from _size(f"{kind} block", row.length, row.width, row.height)
    length, particulars = ship.length, ship.package.particulars
    if row.pitch is not None and row.to is not None:
        run = abs(row.to.x - row.at.x)
        low, high = row.length.si if row.length is not None else 0.2, max(run, 0.05)
        if kind == "keel":
            high = min(high, max(0.12 * length, _SMALL_PITCH) if length is not None else 5.0)
        against = f"the row runs over {show(run, 'centre', more=-1)}, and a block is {row.length or '0.2 m'} long"
        yield from held(CODE, f"pitch of the {kind} blocks", row.pitch, low, high, against)
    if kind == "keel" and particulars is not None:
        straight = particulars.keel.straight
        low, high = sorted((straight.from_.x, straight.to.x))
        room = 0.03 * particulars.dimensions.length_between_perpendiculars.si
        for end in (row.at, *((row.to,) if row.to is not None else ())):
            if not low - room <= end.x <= high + room:
                yield Notice(
                    CODE,
                    end.at,
                    f"a keel block stood at {end}, and the straight keel runs over {straight}",
                    hints=(FRAME,),
                )


def _rows_of(ship: Ship, rows: Sequence[UsedBlock]) -> Iterator[Notice]:
    """Tell of rows of keel blocks that lie in each other, or leave much of the straight keel without one."""
    particulars = ship.package.particulars
    yield from _interleaved(rows)
    spans = [(row.at.x, row.to.x if row.to is not None else row.at.x, row) for row in rows]
    if particulars is None or not spans:
        return
    straight = particulars.keel.straight
    run = abs(straight.to.x - straight.from_.x)
    reach = max(span[1] for span in spans) - min(span[0] for span in spans)
    if reach < 0.6 * run and any(row.to is not None for row in rows):
        message = (
            f"the keel blocks reached over {show(reach, 'centre', more=-1)}, and the straight keel runs over "
            f"{show(run, 'centre', more=-1)}, {straight}"
        )
        yield Notice(CODE, spans[-1][2].here, message, hints=("look at the frames of the rows",))


def _used_side(ship: Ship, row: UsedBlock, keel: Sequence[UsedBlock]) -> Iterator[Notice]:
    particulars = ship.package.particulars
    if row.side == "centreline":
        yield Notice(CODE, row.here, "a side block is said to stand on the centreline", hints=("`side: both`?",))
        return
    if row.off_centre is None or ship.shell is None or particulars is None or not ship.shell.within(row.at.x):
        return
    wide = row.width.si / 2 if row.width is not None else 0.2
    if row.off_centre.si - wide < 0.25 * min((one.width.si for one in keel if one.width is not None), default=0.5):
        message = f"the side block at {row.at} stood {row.off_centre} from the centreline, in the keel blocks"
        yield Notice(CODE, row.off_centre.at, message, hints=("look at the distance",))
        return
    off = list(_under(ship.shell, row.at, row.off_centre))
    yield from off
    stood = [one.height.si for one in keel if one.height is not None]
    up = ship.shell.bottom(row.at.x, row.off_centre.si)
    if not off and stood and up is not None and row.height is not None:
        depth = particulars.keel.depth.si if particulars.keel.depth is not None else 0.0
        found = stood[0] + depth + up
        room = max(0.06 * ship.shell.depth, 0.15)
        against = (
            f"on keel blocks of {show(stood[0], 'centre')} the shell there is {show(found, 'centre')} above the floor"
        )
        yield from held(
            CODE, f"height of the side block at {row.at}", row.height, *near(found, 0, room), against, exact=True
        )
