"""Side and bilge blocks on the hull: height and bevel of the shell over a block, from the offsets."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import atan, degrees
from typing import Any

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS, OFFSETS, hull_from_offsets
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record

GRID = 33
NEAR = 1e-9
ROUNDS = 6


@dataclass(frozen=True)
class Seat:
    """The shell over one block; heights in m above the baseline, angles in rad."""

    x: float
    y: float
    height: float
    """Of the shell over the middle of the block."""
    height_inboard: float
    height_outboard: float
    bevel: float
    """Rise of the shell outboard, from edge to edge of the cap."""
    bevel_forward: float
    """Rise of the shell forward, from end to end of the cap."""


def shell_height(form: HullForm, x: float, y: float) -> float:
    """Find the height of the moulded shell above a point of the bottom, m: the lowest z at which the half-breadth is y.

    Formula: y(x, z) = |y| along the section curves through the offsets, searched upward from the keel.
    Symbols: x forward of AP, y from the centreline [m]. Source: geometry (derived). Raises OutOfRange where the hull
    does not reach so far out there.
    """
    low, high = form.keel_at(x), form.deck_at(x)
    for _ in range(ROUNDS):
        z = np.linspace(low, high, GRID)
        reached = np.flatnonzero(form.half_breadth_at(x, z) >= abs(y) - NEAR)
        if reached.size == 0:
            raise OutOfRange(f"at x = {x:.2f} m the hull does not reach {abs(y):.2f} m from the centreline")
        k = int(reached[0])
        if k == 0:
            return float(z[0])
        low, high = float(z[k - 1]), float(z[k])
    return 0.5 * (low + high)


def seat(form: HullForm, x: float, y: float, length: float, width: float) -> Seat:
    """Find how the shell lies over a block of a length and width at (x, y).

    Formula: bevel = atan((z(y + b/2) - z(y - b/2))/b) and so along the ship; y outboard, whichever side.
    Source: geometry (derived); moulded, without plating. Raises OutOfRange.
    """
    if min(length, width) <= 0:
        raise OutOfRange("the block must have length and width")
    inner, outer = max(0.0, abs(y) - width / 2), abs(y) + width / 2
    z_in, z_out = shell_height(form, x, inner), shell_height(form, x, outer)
    aft, forward = shell_height(form, x - length / 2, y), shell_height(form, x + length / 2, y)
    return Seat(
        x,
        y,
        shell_height(form, x, y),
        z_in,
        z_out,
        atan((z_out - z_in) / (outer - inner)),
        atan((forward - aft) / length),
    )


def _kernel(
    offsets: Mapping[str, Any],
    blocks: Sequence[Mapping[str, float]],
    keel: float = 0.0,
    keel_block_height: float = 0.0,
) -> Mapping[str, Any]:
    form = hull_from_offsets(offsets)
    seats = [seat(form, b["x"], b["y"], b["length"], b["width"]) for b in blocks]
    raised = keel_block_height - keel
    return {
        "height": [one.height + raised for one in seats],
        "height_inboard": [one.height_inboard + raised for one in seats],
        "height_outboard": [one.height_outboard + raised for one in seats],
        "bevel": [degrees(one.bevel) for one in seats],
        "bevel_forward": [degrees(one.bevel_forward) for one in seats],
    }


METHOD = Method(
    name="blocks.side",
    title="Heights and bevels of side blocks from the offsets",
    formula="y(x, z) = y_block; bevel = atan(Δz/Δy) over the cap; height = z − keel + height of the keel block",
    source=Citation("Geometry of the offsets", standing="derived"),
    valid="moulded shell, without plating; level keel blocks; within the stations of the offsets",
    inputs={
        "offsets": OFFSETS,
        "blocks": listed(
            record(
                "A side block.",
                ("x", "y", "length", "width"),
                x=quantity("length", "Middle, forward of AP.", "18 m"),
                y=quantity("length", "Middle, from the centreline.", "2.4 m"),
                length=quantity("length", "Along the ship.", "0.4 m"),
                width=quantity("length", "Across the ship.", "0.6 m"),
            ),
            "The side blocks.",
        ),
        "keel": quantity("length", "Keel on its blocks, above the baseline; minus for a bar keel.", "-0.18 m"),
        "keel_block_height": quantity("length", "Height of the keel blocks; 0 gives heights over their tops.", "1.4 m"),
    },
    outputs=(
        Symbol("height", "height over the middle of each block", "length", "m"),
        Symbol("height_inboard", "height over its inboard edge", "length", "m"),
        Symbol("height_outboard", "height over its outboard edge", "length", "m"),
        Symbol("bevel", "rise outboard, degrees", "number", ""),
        Symbol("bevel_forward", "rise forward, degrees", "number", ""),
    ),
    kernel=_kernel,
    example={
        "offsets": EXAMPLE_OFFSETS,
        "blocks": [
            {"x": "15 m", "y": "2.4 m", "length": "0.4 m", "width": "0.6 m"},
            {"x": "22 m", "y": "2.4 m", "length": "0.4 m", "width": "0.6 m"},
        ],
        "keel_block_height": "1.4 m",
    },
    optional=frozenset({"keel", "keel_block_height"}),
    cautions=("faired plating, laps and doublers change a height: the yard sights or templates each block",),
)
