"""The least move of single keel blocks, by whole frame spaces as they are at each, that frees the bottom."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import groupby, pairwise
from typing import Any

from msgspec import Struct

from tenderwright.calculations.blocks.footprint import CLEARANCE, footprints_from_input
from tenderwright.calculations.blocks.shift import METHOD as SHIFT
from tenderwright.calculations.blocks.shift import Bottom, least_shifts
from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity
from tenderwright.quantities.display import show

MOST = 6
"""Frame spaces either way within which a place is looked for."""


class LeastShift(Struct, frozen=True):
    """The least move of a row of keel blocks, in whole frame spaces, that frees what the last docking covered."""

    blocks: tuple[int, ...]
    """Numbers of the blocks to move, from aft; empty where nothing is to be moved."""
    frames: tuple[int, ...]
    """By how many frame spaces forward each of them moves; less than nothing aft."""
    held: tuple[int, ...]
    """Numbers of the blocks that no move within the search frees."""


def frame_shift(
    blocks: Sequence[Mapping[str, Any]],
    frames: Sequence[float],
    keel_aft: float,
    keel_forward: float,
    earlier: Sequence[Mapping[str, Any]] = (),
    others: Sequence[Mapping[str, Any]] = (),
    margin: float = 0.0,
    clearance: float = CLEARANCE,
    most: int = MOST,
) -> LeastShift:
    """Search each stretch of equal frame spaces by itself, the blocks of the others standing where they are.

    Formula: `least_shifts` of each group of blocks with one frame space. Symbols: places of the frames, rising [m].
    Source: search (derived). Raises OutOfRange.
    """
    if len(frames) < 2 or any(b <= a for a, b in pairwise(frames)):
        raise OutOfRange("there must be two frames or more, each forward of the one before")
    row = footprints_from_input(blocks, "block")
    bottom = Bottom(
        tuple(footprints_from_input(earlier, "earlier")),
        tuple(footprints_from_input(others, "place")),
        keel_aft,
        keel_forward,
        margin,
        clearance,
    )
    moved: list[tuple[int, int]] = []
    held: list[int] = []
    ordered = sorted(range(len(row)), key=lambda i: row[i].x)
    for space, group in groupby(ordered, key=lambda i: _frame_space(frames, row[i].x)):
        own = list(group)
        fixed = [row[i] for i in ordered if i not in own]
        for i, one in zip(own, least_shifts([row[i] for i in own], bottom, space, most, 0.0, fixed), strict=True):
            number = ordered.index(i) + 1
            if one.frames:
                moved.append((number, one.frames))
            if not one.free:
                held.append(number)
    return LeastShift(tuple(number for number, _ in moved), tuple(by for _, by in moved), tuple(held))


def _frame_space(frames: Sequence[float], x: float) -> float:
    """Give the frame space in which a place lies, m."""
    for a, b in pairwise(frames):
        if a - 1e-6 <= x < b - 1e-6:
            return round(b - a, 6)
    return round(frames[-1] - frames[-2], 6)


def outputs_of(found: LeastShift) -> Mapping[str, Any]:
    """Give the move as outputs."""
    return {
        "held": float(len(found.held)),
        "free": not found.held,
        "moved": [float(number) for number in found.blocks],
        "single_frames": [float(by) for by in found.frames],
    }


METHOD = Method(
    name="blocks.frame-shift",
    title="Least move of single keel blocks on the frames as they are",
    formula="for the blocks in each stretch of equal frame spaces, the least Σ|n_i| that leaves each clear",
    source=SHIFT.source,
    valid="blocks keep their order; a block moves within frame spaces like the one that it stands in",
    inputs={
        "blocks": SHIFT.inputs["blocks"],
        "frames": listed(quantity("length", "A frame, forward of AP."), "The frames, from aft.", 2),
        **{name: SHIFT.inputs[name] for name in ("keel_aft", "keel_forward", "earlier", "others")},
        **{name: SHIFT.inputs[name] for name in ("margin", "clearance", "most")},
    },
    outputs=(
        Symbol("held", "blocks that no move frees", "each", "each"),
        Symbol("free", "whether every block is then free", "truth", ""),
        Symbol("moved", "numbers of the blocks that move, from aft", "number", ""),
        Symbol("single_frames", "frame spaces forward of each of them", "number", ""),
    ),
    kernel=frame_shift,
    figures=outputs_of,
    example={name: entry for name, entry in SHIFT.example.items() if name not in ("frame_space", "apart")}
    | {"frames": [f"{show(9 + 0.55 * number, 'centre')}" for number in range(14)]},
    optional=frozenset({"earlier", "others", "margin", "clearance", "most"}),
    cautions=SHIFT.cautions,
)
