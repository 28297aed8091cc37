"""Side and bilge blocks on the hull: height and bevel of the shell over a block, from the offsets."""

from __future__ import annotations

from collections.abc import Mapping
from math import atan
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS, OFFSETS, hull_from_offsets
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show

GRID = 33
NEAR = 1e-9
ROUNDS = 6


class Seat(Struct, frozen=True):
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
            raise OutOfRange(
                f"at x = {show(x, 'centre')} the hull does not reach {show(abs(y), 'centre')} from the centreline"
            )
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


class SideBlock(Struct, frozen=True):
    """A side block built to the shell."""

    seat: Seat
    raised: float | None
    """Height of the baseline above the dock floor [m]; None where the height of the keel blocks is not known."""

    @property
    def height(self) -> float | None:
        """Height of the middle of its cap above the dock floor [m]."""
        return None if self.raised is None else self.seat.height + self.raised


def side_block(
    offsets: Mapping[str, Any] | HullForm,
    x: float,
    y: float,
    length: float,
    width: float,
    keel: float = 0.0,
    keel_block_height: float | None = None,
) -> SideBlock:
    """Build one side block to the shell over it; see `seat`. Lengths in m. Raises OutOfRange."""
    raised = None if keel_block_height is None else keel_block_height - keel
    return SideBlock(seat(hull_from_offsets(offsets), x, y, length, width), raised)


def outputs_of(found: SideBlock) -> dict[str, float]:
    """Give a side block as outputs; without heights where that of the keel blocks is not known."""
    one = found.seat
    slopes = {"bevel": one.bevel, "bevel_forward": one.bevel_forward}
    if found.raised is None:
        return slopes
    heights = (one.height, one.height_inboard, one.height_outboard)
    names = ("height", "height_inboard", "height_outboard")
    return {name: height + found.raised for name, height in zip(names, heights, strict=True)} | slopes


METHOD = Method(
    name="blocks.side",
    title="Height and bevel of a side block from the offsets",
    formula="y(x, z) = y_block; bevel = atan(Δz/Δy) over the cap; height = z − keel + height of the keel block",
    source=Citation("Geometry of the offsets", standing="derived"),
    valid="moulded shell, without plating; level keel blocks; within the stations of the offsets",
    inputs={
        "offsets": OFFSETS,
        "x": quantity("length", "Middle of the block, forward of AP."),
        "y": quantity("length", "Middle of the block, from the centreline."),
        "length": quantity("length", "Of its cap along the ship."),
        "width": quantity("length", "Of its cap across the ship."),
        "keel": quantity("length", "Keel on its blocks, above the baseline; minus for a bar keel.", "-0.18 m"),
        "keel_block_height": quantity(
            "length",
            "Height of the keel blocks; without it no heights; 0 m for heights over them.",
        ),
    },
    outputs=(
        Symbol("height", "height over the middle of the block", "length", "m"),
        Symbol("height_inboard", "height over its inboard edge", "length", "m"),
        Symbol("height_outboard", "height over its outboard edge", "length", "m"),
        Symbol("bevel", "rise outboard", "angle", "deg"),
        Symbol("bevel_forward", "rise forward", "angle", "deg"),
    ),
    kernel=side_block,
    figures=outputs_of,
    example={
        "offsets": EXAMPLE_OFFSETS,
        "x": "15 m",
        "y": "2.4 m",
        "length": "0.4 m",
        "width": "0.6 m",
        "keel_block_height": "1.4 m",
    },
    optional=frozenset({"keel", "keel_block_height"}),
    cautions=("faired plating, laps and doublers change a height: the yard sights or templates each block",),
)
