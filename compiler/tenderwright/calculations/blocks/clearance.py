"""How near blocks stand to openings, plugs and fittings on the hull, counting the height of a thing over a block."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import hypot
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.blocks.footprint import CLEARANCE, distances, footprints_from_input, rectangles, sizes
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, quantity
from tenderwright.calculations.verdict import within

LOOKED_AT = 2.0
"""Distance in plan within which a block is near a thing, m."""
REACH = 1.0
"""A docking plug no higher than this over the block is drawn from below, so that nothing may stand under it, m."""
_ROUND_OFF = 1e-6


class Near(Struct, frozen=True):
    """A block near a thing, each by its place in its list."""

    block: int
    other: int
    gap: float
    """From edge to edge, m; 0 where the block stands under the thing."""


class Clearance(Struct, frozen=True):
    """Blocks beside what is on the hull."""

    blocks: tuple[str, ...]
    """Their names."""
    others: tuple[str, ...]
    conflicts: tuple[Near, ...]
    """Nearer than the clearance, thing by thing."""
    nearest: tuple[Near, ...]
    """The nearest block of each thing of a name of its own, where there is one near it."""


def clear_of(
    blocks: Sequence[Mapping[str, Any]], others: Sequence[Mapping[str, Any]], clearance: float = CLEARANCE
) -> Clearance:
    """Find the blocks that stand too near to something on the hull, and the block nearest to each thing.

    Formula: g = sqrt(max(d, 0)² + h²), h = max(z - t, 0); too near where g < c. Symbols: distance d from edge to edge
    in plan; height z of the lower edge of the thing and t of what stands on the block, both over one line (h is 0
    where either is unknown, and for what is drawn downward from less than 1 m over the block); clearance c; all in m.
    Range: pairs within 2 m in plan. Source: geometry (derived); c = 0.3 m is common practice, no source.
    Raises OutOfRange.
    """
    if clearance < 0:
        raise OutOfRange("the clearance must not be less than nothing")
    caps, things = footprints_from_input(blocks, "block"), footprints_from_input(others, "place")
    apart = distances(sizes(caps), sizes(things))
    near: list[Near] = []
    for other, thing in enumerate(others):
        there = np.flatnonzero(apart[:, other] < LOOKED_AT)
        for block in sorted(there.tolist(), key=lambda one: (apart[one, other], caps[one].x)):
            near.append(Near(block, other, _gap(float(apart[block, other]), blocks[block], thing)))
    nearest: dict[str, Near] = {}
    for one in near:
        name = things[one.other].name
        if one.gap <= LOOKED_AT and (name not in nearest or one.gap < nearest[name].gap):
            nearest[name] = one
    too_near = tuple(one for one in near if not within(one.gap, clearance - _ROUND_OFF, at_least=True))
    names, other_names = (tuple(one.name for one in ones) for ones in (caps, things))
    return Clearance(names, other_names, too_near, tuple(nearest.values()))


def _gap(distance: float, block: Mapping[str, Any], thing: Mapping[str, Any]) -> float:
    over = max(thing["lowest"] - block["top"], 0.0) if "lowest" in thing and "top" in block else 0.0
    if thing.get("drawn_down", False) and over < REACH:
        over = 0.0
    return hypot(max(distance, 0.0), over)


def outputs_of(found: Clearance) -> dict[str, Any]:
    """Give what is near to what as the outputs of the method."""

    def rows(pairs: Sequence[Near]) -> list[dict[str, Any]]:
        return [{"block": found.blocks[one.block], "other": found.others[one.other], "gap": one.gap} for one in pairs]

    return {
        "count": float(len(found.conflicts)),
        "conflicts": rows(sorted(found.conflicts, key=lambda one: one.gap)),
        "nearest": rows(found.nearest),
        "least": min((one.gap for one in found.nearest), default=None),
    }


_COLUMNS = (
    Symbol("block", "block", "text", ""),
    Symbol("other", "what it is near to", "text", ""),
    Symbol("gap", "from edge to edge; 0 where the block stands under it", "length", "m"),
)

METHOD = Method(
    name="blocks.clearance",
    title="Blocks against openings, plugs, anodes and fittings",
    formula="g = √(max(d, 0)² + h²) ≥ c; d from edge to edge in plan, h of the thing's lower edge over the block",
    source=Citation("Geometry; a clearance of 0.3 m", "", "common practice, no source"),
    valid="rectangles along the ship; within 2 m in plan; what is drawn downward is near in plan whatever its height",
    inputs={
        "blocks": rectangles(
            "Footprints of the blocks.",
            1,
            top=length("Height of what stands on it; as high as all unless given."),
        ),
        "others": rectangles(
            "Openings, plugs, anodes, transducers, seams to be worked.",
            lowest=length("Height of its lower edge, over the same line; on the block unless given."),
            drawn_down={"type": "boolean", "description": "Whether it is drawn downward, as a docking plug is."},
        ),
        "clearance": quantity("length", "Clearance required, from edge to edge; 0.3 m unless given.", "0.3 m"),
    },
    outputs=(
        Symbol("count", "pairs that are too near", "each", "each"),
        Symbol("conflicts", "each pair that is too near", "table", "", _COLUMNS),
        Symbol("nearest", "the nearest block of each thing that has one near it", "table", "", _COLUMNS),
        Symbol("least", "least of those distances", "length", "m"),
    ),
    kernel=clear_of,
    figures=outputs_of,
    example={
        "blocks": [
            {"name": "keel 1", "x": "10.0 m", "y": "0 m", "length": "0.3 m", "width": "1.0 m", "top": "-0.2 m"},
            {"name": "keel 2", "x": "11.2 m", "y": "0 m", "length": "0.3 m", "width": "1.0 m", "top": "-0.2 m"},
        ],
        "others": [
            {
                "name": "docking plug",
                "x": "11.5 m",
                "y": "0.45 m",
                "length": "38 mm",
                "width": "38 mm",
                "drawn_down": True,
            },
            {"name": "sea inlet", "x": "10.2 m", "y": "0.8 m", "length": "0.2 m", "width": "0.2 m", "lowest": "0.15 m"},
        ],
    },
    optional=frozenset({"clearance"}),
)
