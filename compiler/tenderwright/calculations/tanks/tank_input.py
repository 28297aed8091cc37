"""A tank as an input: its shape as a box or by sections, and its sounding pipe."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec.structs import replace

from tenderwright.calculations.hydrostatics.offsets import OFFSETS, hull_from_offsets
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schema import length, listed, record
from tenderwright.calculations.tanks.capacity_plan import OPTIONAL, PLAN, tank_of_plan
from tenderwright.calculations.tanks.polyhedron import Polyhedron, box, from_hull, lofted
from tenderwright.calculations.tanks.sounding import SoundingPipe, Tank

BOX = record(
    "A rectangular tank: x forward of AP, y to port, z above the baseline.",
    ("x_aft", "x_forward", "y_starboard", "y_port", "bottom", "top"),
    x_aft=length("After end."),
    x_forward=length("Fore end."),
    y_starboard=length("Starboard side; y is positive to port."),
    y_port=length("Port side."),
    bottom=length("Height of the bottom."),
    top=length("Height of the top."),
)

SECTIONS = listed(
    record(
        "One section.",
        ("x", "corners"),
        x=length("Position forward of AP."),
        corners={
            "type": "array",
            "minItems": 3,
            "items": record("A corner.", ("y", "z"), y=length("To port."), z=length("Above the baseline.")),
        },
    ),
    "Transverse sections from aft forward, each with the same number of corners in the same order.",
    2,
)

POINT = record(
    "A point in ship axes.",
    ("x", "y", "z"),
    x=length("Forward of AP."),
    y=length("To port."),
    z=length("Above the baseline."),
)

HULL = record(
    "A tank bounded by the hull.",
    ("offsets", "x_aft", "x_forward"),
    offsets=OFFSETS,
    x_aft=length("After end."),
    x_forward=length("Fore end."),
    bottom=length("Height of the bottom; the hull's own where left out."),
    top=length("Height of the top; the deck edge where left out."),
    inboard=length("Inboard side, from the centreline; 0 where left out."),
    outboard=length("Outboard side, from the centreline; the shell where left out."),
    side={"type": "string", "enum": ["port", "starboard", "both"], "description": "Side of the centreline."},
)

PLANNED = record("A tank as its capacity plan gives it.", tuple(name for name in PLAN if name not in OPTIONAL), **PLAN)

SHAPE = {
    "type": "object",
    "additionalProperties": False,
    "minProperties": 1,
    "maxProperties": 1,
    "description": "The tank's shape: a box, straight between sections, bounds inside the hull, or a capacity plan.",
    "properties": {"box": BOX, "sections": SECTIONS, "hull": HULL, "plan": PLANNED},
}


def body_from_input(shape: Mapping[str, Any] | Polyhedron) -> Polyhedron:
    """Build the tank's space from a converted shape (metres), or take one that is built. Raises OutOfRange."""
    if isinstance(shape, Polyhedron):
        return shape
    return tank_of_plan(**shape["plan"]).body if "plan" in shape else replace(_body(shape), shape=shape)


def _body(shape: Mapping[str, Any]) -> Polyhedron:
    if "hull" in shape:
        h = shape["hull"]
        bounds = {name: h[name] for name in ("bottom", "top", "inboard", "outboard", "side") if name in h}
        return from_hull(hull_from_offsets(h["offsets"]), (h["x_aft"], h["x_forward"]), **bounds)
    if "box" in shape:
        b = shape["box"]
        return box((b["x_aft"], b["x_forward"]), (b["y_starboard"], b["y_port"]), (b["bottom"], b["top"]))
    if "sections" not in shape:
        raise OutOfRange("a tank needs a box, sections, or bounds inside the hull")
    sections = shape["sections"]
    if len({len(s["corners"]) for s in sections}) != 1:
        raise OutOfRange("each section needs the same number of corners")
    return lofted([s["x"] for s in sections], [[(c["y"], c["z"]) for c in s["corners"]] for s in sections])


def point_from_input(point: Mapping[str, float]) -> tuple[float, float, float]:
    """Give a converted point as a tuple."""
    return point["x"], point["y"], point["z"]


def tank_from_input(
    shape: Mapping[str, Any] | Polyhedron,
    pipe_foot: Mapping[str, float] | None = None,
    pipe_head: Mapping[str, float] | None = None,
    permeability: float = 1.0,
) -> Tank:
    """Build the tank with its pipe; without a head the pipe stands upright to the tank's top. Raises
    OutOfRange."""
    body = body_from_input(shape)
    if body.shape is not None and "plan" in body.shape:
        return replace(tank_of_plan(**body.shape["plan"]), permeability=permeability)
    if pipe_foot is None:
        return Tank(body, permeability)
    foot = point_from_input(pipe_foot)
    head = (foot[0], foot[1], body.top) if pipe_head is None else point_from_input(pipe_head)
    return Tank(body, permeability, SoundingPipe(foot, head))
