"""Water over sill and blocks at a tide, and the least tide at which she can enter."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import tan
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record


def water_over_sill(tide: float, sill_below_datum: float) -> float:
    """Give the water over the sill, tide + depth of the sill below datum, m. Source: geometry (derived)."""
    return tide + sill_below_datum


def water_over_blocks(tide: float, floor_below_datum: float, block_height: float) -> float:
    """Give the water over the blocks, tide + depth of the floor below datum - block height, m.

    Source: geometry (derived); UFC 4-213-10, par. 3-2.1, for the parts. Raises OutOfRange.
    """
    if block_height < 0:
        raise OutOfRange("the height of the blocks must not be less than nothing")
    return tide + floor_below_datum - block_height


def deepest(
    draft_aft: float,
    draft_forward: float,
    length: float,
    points: Sequence[tuple[float, float, float]],
    heel: float = 0.0,
) -> float:
    """Give the greatest draft of the points of keel and appendages, m.

    Formula: draft at x of the baseline - z + |y| tan(heel).
    Symbols: drafts above the baseline, L [m]; points as (x forward of AP, y from the centreline, z above the baseline)
        [m]; heel [rad], to either side.
    Source: geometry (derived). Raises OutOfRange.
    """
    if length <= 0 or not points:
        raise OutOfRange("the length must be more than nothing, and there must be points of the keel")
    trim = draft_aft - draft_forward
    return max(draft_aft - trim * x / length - z + abs(y) * tan(abs(heel)) for x, y, z in points)


def _kernel(
    tide: float,
    draft_aft: float,
    draft_forward: float,
    length: float,
    points: Sequence[Mapping[str, float]],
    floor_below_datum: float,
    block_height: float,
    sill_below_datum: float | None = None,
    clearance: float = 0.3,
    heel: float = 0.0,
) -> Mapping[str, Any]:
    draft = deepest(draft_aft, draft_forward, length, [(p["x"], p.get("y", 0.0), p["z"]) for p in points], heel)
    over_blocks = water_over_blocks(tide, floor_below_datum, block_height)
    over_sill = None if sill_below_datum is None else water_over_sill(tide, sill_below_datum)
    least = min(over_blocks, over_blocks if over_sill is None else over_sill)
    return {
        "deepest": draft,
        "over_blocks": over_blocks,
        "over_sill": over_sill,
        "margin": least - draft - clearance,
        "least_tide": tide - (least - draft - clearance),
    }


METHOD = Method(
    name="facility.water",
    title="Water over sill and blocks, and the least tide for entering",
    formula="over blocks = tide + floor depth − block height; over sill = tide + sill depth; least − draft ≥ c",
    source=Citation("Geometry; UFC 4-213-10, par. 3-2.1, for the parts", standing="derived"),
    valid="level water; drafts in the dock's own water",
    inputs={
        "tide": quantity("length", "Height of tide above datum."),
        "draft_aft": quantity("length", "Draft aft above the baseline."),
        "draft_forward": quantity("length", "Draft forward above the baseline."),
        "length": quantity("length", "Length between the drafts."),
        "points": listed(
            record(
                "A point of keel or appendage.",
                ("x", "z"),
                x=quantity("length", "Forward of AP."),
                y=quantity("length", "From the centreline.", "0 m"),
                z=quantity("length", "Above the baseline; minus for below it."),
            ),
            "Lowest points of keel, rudder, bilge keels and appendages.",
        ),
        "floor_below_datum": quantity("length", "Dock floor below datum."),
        "block_height": quantity("length", "Height of the blocks, highest."),
        "sill_below_datum": quantity("length", "Sill below datum."),
        "clearance": quantity("length", "Clearance over both; 0.3 m is common practice, no source.", "0.3 m"),
        "heel": quantity("angle", "List to allow for, to either side.", "1 deg"),
    },
    outputs=(
        Symbol("deepest", "greatest draft of keel and appendages", "length", "m"),
        Symbol("over_blocks", "water over the blocks", "length", "m"),
        Symbol("over_sill", "water over the sill", "length", "m"),
        Symbol("margin", "lesser of them less draft and clearance", "length", "m"),
        Symbol("least_tide", "least height of tide above datum", "length", "m"),
    ),
    kernel=_kernel,
    example={
        "tide": "3.9 m",
        "draft_aft": "3.4 m",
        "draft_forward": "2.9 m",
        "length": "48 m",
        "points": [{"x": "1 m", "z": "-0.18 m"}, {"x": "40 m", "z": "-0.18 m"}],
        "floor_below_datum": "1.6 m",
        "block_height": "1.2 m",
        "sill_below_datum": "1.2 m",
    },
    optional=frozenset({"sill_below_datum", "clearance", "heel"}),
    cautions=("tides are predictions: pressure, wind and river change them; the dockmaster decides on the day",),
)
