"""The least shift, in frame spaces, that frees blocks from last time's places and from openings."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.blocks.footprint import (
    CLEARANCE,
    Footprint,
    distances,
    footprints_from_input,
    rectangles,
    sizes,
    too_near,
)
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show

NOT_FREE = 1e6
"""What it costs in the search to leave a block where it is not free; more than any shift."""

FURTHEST = 200
"""The most frame spaces that are searched either way."""


class Bottom(Struct, frozen=True):
    """What blocks must keep clear of, and where they may stand; m."""

    earlier: tuple[Footprint, ...]
    """Blocks of the docking or dockings before."""
    others: tuple[Footprint, ...]
    """Openings, plugs, anodes."""
    aft: float
    """After end of the keel on which blocks may stand, with the whole of their length."""
    forward: float
    margin: float = 0.0
    """Wanted between a block and an earlier place."""
    clearance: float = CLEARANCE


class Shift(Struct, frozen=True):
    """A shift of one row of blocks as a whole."""

    frames: int
    """Frame spaces forward; less than nothing for aft."""
    distance: float
    free: bool
    """Whether every block is then free."""
    held: int
    """Blocks not free there."""


class BlockShift(Struct, frozen=True):
    """A shift of one block by itself."""

    block: Footprint
    frames: int
    distance: float
    free: bool


def least_shift(
    blocks: Sequence[Footprint], bottom: Bottom, frame_space: float, most: int = 20, fixed: Sequence[Footprint] = ()
) -> Shift:
    """Find the least shift of all the blocks together, in whole frame spaces, at which every one is free.

    Formula: n = 0, +1, -1, +2, ... of the frame space until no block is nearer than `margin` to an earlier place or
        than `clearance` to an opening, nor beyond the keel; if none frees all, the shift that holds fewest.
    Symbols: frame space [m]; `most` frame spaces either way; `fixed` blocks that stay, not to be run into.
    Source: search (derived); varying block positions: IMO MEPC.207(62), section 6 (from memory). Raises OutOfRange.
    """
    _check(blocks, frame_space, most)
    steps = _steps(most)
    free = _free(blocks, bottom, [n * frame_space for n in steps], fixed)
    held = (~free).sum(axis=1)
    best = int(np.argmin(held))
    return Shift(steps[best], steps[best] * frame_space, bool(held[best] == 0), int(held[best]))


def least_shifts(
    blocks: Sequence[Footprint],
    bottom: Bottom,
    frame_space: float,
    most: int = 6,
    apart: float = 0.0,
    fixed: Sequence[Footprint] = (),
) -> list[BlockShift]:
    """Find the shifts of single blocks that free most of them with the fewest frame spaces in all.

    Formula: the least sum of |n_i| over a row from aft to forward, each block free where it goes and at least `apart`
        from the next, in their order; a block that cannot be freed stays. By dynamic programming, row by row.
    Symbols: as `least_shift`; `apart` from edge to edge of neighbours in a row [m]. Gives one entry a block, in order.
    Source: search (derived). Raises OutOfRange where the blocks as given already stand nearer than `apart`.
    """
    _check(blocks, frame_space, most)
    steps = _steps(most)
    free = _free(blocks, bottom, [n * frame_space for n in steps], fixed).T
    found: dict[int, BlockShift] = {}
    for y in sorted({one.y for one in blocks}):
        row = sorted((i for i, one in enumerate(blocks) if one.y == y), key=lambda i: blocks[i].x)
        for i, k in zip(row, _row_choice(blocks, row, free, steps, frame_space, apart), strict=True):
            found[i] = BlockShift(blocks[i], steps[k], steps[k] * frame_space, bool(free[i, k]))
    return [found[i] for i in range(len(blocks))]


def _row_choice(
    blocks: Sequence[Footprint], row: Sequence[int], free: Any, steps: Sequence[int], frame: float, apart: float
) -> list[int]:
    """Choose a step for each block of a row; least sum of costs with neighbours kept apart."""
    count = np.array(steps, dtype=np.float64)
    # Only where it stands may a block that is not free remain.
    cost = np.where(free[list(row)], np.abs(count), np.where(count == 0, NOT_FREE, np.inf))
    ends = [np.array([[b.x - b.length / 2], [b.x + b.length / 2]]) + count * frame for b in (blocks[i] for i in row)]
    total, came = [cost[0]], []
    for k, (before, after) in enumerate(pairwise(ends), 1):
        clear = after[0][:, None] - before[1][None, :] >= apart - 1e-9
        way = np.where(clear, total[-1][None, :], np.inf)
        came.append(way.argmin(axis=1))
        total.append(cost[k] + way.min(axis=1))
    if not np.isfinite(total[-1].min()):
        raise OutOfRange(
            f"the blocks at y = {show(blocks[row[0]].y, 'centre')} cannot be kept {show(apart, 'centre')} apart"
        )
    choice = [int(total[-1].argmin())]
    for step in reversed(came):
        choice.append(int(step[choice[-1]]))
    return choice[::-1]


def _free(
    blocks: Sequence[Footprint], bottom: Bottom, along: Sequence[float], fixed: Sequence[Footprint]
) -> NDArray[np.bool_]:
    """Tell for each way that all are moved along which blocks are free."""
    at = np.tile(sizes(blocks), (len(along), 1))
    at[:, 0] += np.repeat(along, len(blocks))
    within = (at[:, 0] - at[:, 2] >= bottom.aft - 1e-9) & (at[:, 0] + at[:, 2] <= bottom.forward + 1e-9)
    blocked = np.zeros(len(at), dtype=np.bool_)
    for others, clearance in ((bottom.earlier, bottom.margin), (bottom.others, bottom.clearance), (fixed, 0.0)):
        if others:
            blocked |= too_near(distances(at, sizes(others)), clearance).any(axis=1)
    return (within & ~blocked).reshape(len(along), len(blocks))


def _steps(most: int) -> list[int]:
    return [0] + [sign * n for n in range(1, most + 1) for sign in (1, -1)]


def _check(blocks: Sequence[Footprint], frame_space: float, most: int) -> None:
    if not blocks:
        raise OutOfRange("there are no blocks to shift")
    if frame_space <= 0 or not 0 <= most <= FURTHEST:
        raise OutOfRange(f"the frame space must be more than nothing and the frame spaces to search 0 to {FURTHEST}")


def _kernel(
    blocks: Sequence[Mapping[str, Any]],
    frame_space: float,
    keel_aft: float,
    keel_forward: float,
    earlier: Sequence[Mapping[str, Any]] = (),
    others: Sequence[Mapping[str, Any]] = (),
    margin: float = 0.0,
    clearance: float = CLEARANCE,
    apart: float = 0.0,
    most: int = 6,
) -> Mapping[str, Any]:
    row = footprints_from_input(blocks, "block")
    bottom = Bottom(
        tuple(footprints_from_input(earlier, "earlier")),
        tuple(footprints_from_input(others, "place")),
        keel_aft,
        keel_forward,
        margin,
        clearance,
    )
    whole = least_shift(row, bottom, frame_space, most)
    single = least_shifts(row, bottom, frame_space, most, apart)
    return {
        "frames": float(whole.frames),
        "shift": whole.distance,
        "free": whole.free,
        "held": float(whole.held),
        "single_frames": [one.frames for one in single],
        "single_shifts": [one.distance for one in single],
        "single_held": [one.block.name for one in single if not one.free],
        "searched": float(most),
        "searched_to": most * frame_space,
    }


METHOD = Method(
    name="blocks.shift",
    title="Least shift of blocks on frames that frees them",
    formula="least |n| with every block n frame spaces on clear of earlier places and openings; "
    "else block by block, least Σ|n_i|",
    source=Citation("Search; IMO MEPC.207(62), section 6, on varying block positions", "", "from memory"),
    valid="even frame spacing over the blocks; blocks of one row keep their order",
    inputs={
        "blocks": rectangles("Footprints of the blocks as first planned.", 1),
        "frame_space": quantity("length", "Frame spacing under the blocks."),
        "keel_aft": quantity("length", "After end of the keel that may bear, forward of AP."),
        "keel_forward": quantity("length", "Fore end of the keel that may bear, forward of AP."),
        "earlier": rectangles("Footprints of the docking or dockings before."),
        "others": rectangles("Openings, plugs, anodes, transducers."),
        "margin": quantity("length", "Wanted from earlier footprints (0.1 to 0.3 m: common practice, no source)."),
        "clearance": quantity("length", "Wanted from openings.", "0.3 m"),
        "apart": quantity("length", "Wanted between blocks of a row."),
        "most": {
            "type": "integer",
            "minimum": 0,
            "description": "Frame spaces to search either way; 6 where left out.",
        },
    },
    outputs=(
        Symbol("frames", "frame spaces forward that free all together, or hold fewest", "number", ""),
        Symbol("shift", "the same as a distance", "length", "m"),
        Symbol("free", "whether every block is then free", "truth", ""),
        Symbol("held", "blocks not free there", "each", "each"),
        Symbol("single_frames", "frame spaces forward of each block by itself", "number", ""),
        Symbol("single_shifts", "the same as distances", "length", "m"),
        Symbol("single_held", "blocks that cannot be freed by themselves", "text", ""),
        Symbol("searched", "frame spaces searched either way; what lies further off was not looked at", "number", ""),
        Symbol("searched_to", "the same as a distance", "length", "m"),
    ),
    kernel=_kernel,
    example={
        "blocks": [{"x": f"{x} m", "y": "0 m", "length": "0.3 m", "width": "1 m"} for x in (10, 11.1, 12.2)],
        "frame_space": "550 mm",
        "keel_aft": "2 m",
        "keel_forward": "42 m",
        "earlier": [{"x": f"{x} m", "y": "0 m", "length": "0.3 m", "width": "1 m"} for x in (10.1, 11.2, 12.3)],
        "others": [{"name": "plug", "x": "14 m", "y": "0.4 m", "length": "38 mm", "width": "38 mm"}],
        "margin": "0.1 m",
        "apart": "0.3 m",
    },
    optional=frozenset({"earlier", "others", "margin", "clearance", "apart", "most"}),
    cautions=("a block must stand under a floor or frame that can carry it: the naval architect says which",),
)
