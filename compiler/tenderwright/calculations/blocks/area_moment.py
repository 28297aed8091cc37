"""Loads of separate, unequal or interrupted blocks under a rigid hull by the area-moment method."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.blocks.plane import on_springs
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity, record


class Block(Struct, frozen=True):
    """One block: its middle and bearing size in m; x forward of AP, y to port; k by area where not given."""

    x: float
    length: float
    width: float
    y: float = 0.0
    stiffness: float | None = None
    """On any scale common to all the blocks."""

    @property
    def area(self) -> float:
        """Give the bearing area, m2."""
        return self.length * self.width


class BlockLoads(Struct, frozen=True):
    """What each block carries, kg, in the order of the blocks; 0 where the hull has lifted off."""

    blocks: tuple[Block, ...]
    reactions: tuple[float, ...]
    lifted: tuple[int, ...]
    """Indices of blocks that carry nothing."""
    rounds: int


def area_moment(
    weight: float, lcg: float, blocks: Sequence[Block], tcg: float = 0.0, own_inertia: bool = False
) -> BlockLoads:
    """Share a rigid hull's weight between blocks, dropping those that would pull until none does.

    Formula: R_i = W k_i/sum(k) + W (LCG - x_c) k_i (x_i - x_c)/J, x_c = sum(k x)/sum(k), J = sum(k (x - x_c)^2) (plus
        k a^2/12 of each block with `own_inertia`); with blocks off the centreline the transverse terms likewise.
    Symbols: W [kg]; LCG, TCG, x, y, block length a [m]; k stiffness or, where none is given, area.
    Source: R. Heger, "Calculating Block Load by the Moment Area Method", Dry Dock Conference, Norfolk, May 2008.
    Range: rigid hull, equal build; the centre of gravity within the blocks. Raises OutOfRange.
    """
    if weight <= 0:
        raise OutOfRange("the weight must be more than nothing")
    if len(blocks) < 2 or min(min(b.length, b.width) for b in blocks) <= 0:
        raise OutOfRange("she needs at least two blocks, each with length and width more than nothing")
    stated = [b.stiffness for b in blocks if b.stiffness is not None]
    if 0 < len(stated) < len(blocks) or any(k <= 0 for k in stated):
        raise OutOfRange("give the stiffness of every block or of none, and more than nothing")
    k = np.array([b.area if b.stiffness is None else b.stiffness for b in blocks])
    size = np.array([(b.length, b.width) for b in blocks])
    places = np.array([(b.x, b.y) for b in blocks])
    wide = bool(np.ptp(places[:, 1]) > 1e-9)
    if not wide and abs(tcg - places[0, 1]) > 1e-9:
        raise OutOfRange("her centre of gravity is not over the one line of blocks")
    axes = 2 if wide else 1
    rocking = k[:, None] * size[:, :axes] ** 2 / 12 * own_inertia
    found = on_springs(weight, (lcg, tcg)[:axes], places[:, :axes], k, rocking=rocking)
    return BlockLoads(
        tuple(blocks), tuple(found.reaction.tolist()), tuple(np.flatnonzero(~found.bears).tolist()), found.rounds
    )


def _kernel(
    weight: float,
    lcg: float,
    blocks: Sequence[Mapping[str, float]],
    tcg: float = 0.0,
    own_inertia: bool = False,
) -> BlockLoads:
    line = [Block(b["x"], b["length"], b["width"], b.get("y", 0.0), b.get("relative_stiffness")) for b in blocks]
    return area_moment(weight, lcg, line, tcg, own_inertia)


def outputs_of(found: BlockLoads) -> Mapping[str, Any]:
    """Give the loads as outputs."""
    most = max(range(len(found.blocks)), key=lambda i: found.reactions[i])
    return {
        "loads": list(found.reactions),
        "greatest": found.reactions[most],
        "at": found.blocks[most].x,
        "lifted": [found.blocks[i].x for i in found.lifted],
    }


BLOCK = record(
    "One block.",
    ("x", "length", "width"),
    x=quantity("length", "Middle of the block, forward of AP."),
    y=quantity("length", "Middle of the block, to port.", "0 m"),
    length=quantity("length", "Bearing length along the ship."),
    width=quantity("length", "Bearing width."),
    relative_stiffness=number("In place of the area, for all blocks.", exclusiveMinimum=0),
)

METHOD = Method(
    name="blocks.area-moment",
    title="Loads of separate blocks under a rigid hull",
    formula="R_i = W k_i/Σk + W(LCG − x_c) k_i(x_i − x_c)/J; blocks that would pull are dropped, and again",
    source=Citation("R. Heger, Calculating Block Load by the Moment Area Method, Dry Dock Conference", "Norfolk, 2008"),
    valid="stiff hull; blocks of one build, so that load goes by area, or with their stiffness given",
    inputs={
        "weight": quantity("mass", "Weight on the blocks."),
        "lcg": quantity("length", "Centre of gravity, forward of AP."),
        "blocks": listed(BLOCK, "The blocks.", 2),
        "tcg": quantity("length", "Centre of gravity to port, for blocks in more than one line.", "0 m"),
        "own_inertia": {"type": "boolean", "description": "Whether long blocks resist rocking by themselves."},
    },
    outputs=(
        Symbol("loads", "load on each block, in their order", "mass", "t"),
        Symbol("greatest", "greatest load on a block", "mass", "t"),
        Symbol("at", "place of that block", "length", "m"),
        Symbol("lifted", "places of blocks that carry nothing", "length", "m"),
    ),
    kernel=_kernel,
    figures=outputs_of,
    example={
        "weight": "2000 t",
        "lcg": "21.5 m",
        "blocks": [{"x": f"{x} m", "length": "0.3 m", "width": "0.2 m"} for x in range(2, 40, 4)],
    },
    optional=frozenset({"tcg", "own_inertia"}),
    cautions=("a hull that lifts off blocks is a matter for the naval architect and the dockmaster",),
)
