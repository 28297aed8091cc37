"""The riveted joints of the shell by strake and kind, and those that an insert opens and makes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Literal

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, OutOfRange
from tenderwright.calculations.renewal.outlines import Outline
from tenderwright.calculations.renewal.rivets import ENDS, FRAME_PITCH, SEAM_PITCH, Ends, InsertJoints, Line
from tenderwright.calculations.renewal.shell_plan import ShellPlan
from tenderwright.calculations.schema import length, listed, record, text
from tenderwright.quantities.display import show

Where = Literal["seam", "lower seam", "butt", "frame"]
Kind = Literal["lap", "strap", "double strap"]
KINDS: tuple[Kind, ...] = ("lap", "strap", "double strap")
JOINTS: tuple[Where, ...] = ("seam", "lower seam", "butt", "frame")

EDGE_DISTANCE = 1.5
LAP_ROWS = 3.5
STRAP_ROWS = 2.5
"""Distance of the rivets from the edge of the plate, and of rows in a lap and under a strap, in diameters."""
EDGE_SOURCE = Citation(
    "LR, minimum shell riveting", "edge 1.5 d, rows 3.5 d in butt laps, 2.5 d in butt straps", "from memory"
)

_NEAR = 1e-6


class Joint(Struct, frozen=True):
    """How one kind of joint of some strakes is riveted; lengths in m."""

    joint: Where
    """A seam is the upper one of its strake; the lower seam is that of the lowest strake to the keel."""
    strakes: tuple[str, ...]
    """All of them where none is named."""
    kind: Kind
    rows: int
    """Of a strap those on each side of the butt."""
    rivet: float
    pitch: float
    aft: float = -np.inf
    forward: float = np.inf

    def fits(self, joint: Where, strake: str, x: float) -> bool:
        """Tell whether it says how a joint of a strake is riveted at a place."""
        named = not self.strakes or strake in self.strakes
        return self.joint == joint and named and self.aft - _NEAR <= x <= self.forward + _NEAR

    def line(self, length: float) -> Line:
        """Give its rivets along a length; a strap has its rows on either side."""
        return Line(length, self.rows * (1 if self.kind == "lap" else 2), self.pitch, self.rivet)


JOINTS_INPUT = listed(
    record(
        "One kind of joint.",
        ("joint", "strakes", "kind", "rows", "rivet"),
        joint={
            "type": "string",
            "enum": list(JOINTS),
            "description": "The upper seam, the lower seam of the lowest strake, butts, or frames.",
        },
        strakes=listed(text("Name of a strake."), "The strakes whose joint it is."),
        kind={"type": "string", "enum": list(KINDS), "description": "How the plates are joined."},
        rows={"type": "integer", "minimum": 1, "description": "Rows of rivets; of a strap on each side of the butt."},
        rivet=length("Diameter of the rivets."),
        pitch=length("Pitch; 4.5 diameters, or 7 at frames, unless given.", "85 mm"),
        **{
            "from": length("After end of the stretch; the whole strake unless given.", "18 m"),
            "to": length("Forward end of the stretch.", "34.2 m"),
        },
    ),
    "Joints by strake and kind; the first that fits counts, and the ship's usual joint where none does.",
    0,
)


def joints_from_input(joints: Sequence[Mapping[str, Any]], usual: Sequence[Joint]) -> tuple[Joint, ...]:
    """Make joints of converted records, with the ship's usual ones after them."""
    made = []
    for one in joints:
        pitch = (FRAME_PITCH if one["joint"] == "frame" else SEAM_PITCH) * one["rivet"]
        ends = (one.get("from", -np.inf), one.get("to", np.inf))
        made.append(
            Joint(
                one["joint"],
                tuple(one["strakes"]),
                one["kind"],
                one["rows"],
                one["rivet"],
                one.get("pitch", pitch),
                *ends,
            )
        )
    return (*made, *usual)


def usual_joints(
    rivet: float, seam_rows: int, butt_rows: int, seam_pitch: float | None = None, frame_pitch: float | None = None
) -> tuple[Joint, ...]:
    """Give the ship's usual joints: lapped seams and butts, and one row at frames."""
    pitch = SEAM_PITCH * rivet if seam_pitch is None else seam_pitch
    rows: dict[Where, int] = {"seam": seam_rows, "lower seam": seam_rows, "butt": butt_rows}
    frame = Joint("frame", (), "lap", 1, rivet, FRAME_PITCH * rivet if frame_pitch is None else frame_pitch)
    return (*(Joint(name, (), "lap", number, rivet, pitch) for name, number in rows.items()), frame)


def joint_at(joints: Sequence[Joint], joint: Where, strake: str, x: float) -> Joint:
    """Find how a joint of a strake is riveted at a place; raises OutOfRange where nothing says it."""
    found = next((one for one in joints if one.fits(joint, strake, x)), None)
    if found is None:
        raise OutOfRange(f"nothing says how the {joint} of strake {strake} is riveted at {show(x, 'centre')}")
    return found


def joints_of(plan: ShellPlan, outline: Outline, joints: Sequence[Joint], ends: Ends) -> InsertJoints:
    """Find the joints that an insert opens, and those that it makes at its ends.

    Seams and frames are counted strake by strake as they are riveted at each frame space; an end that lies on an
    existing butt is that butt and no new one. A new end is riveted as the butts of its strake there, in a lap or under
    a strap. Source: derived.
    """
    frames, grid = plan.grid.frames, plan.grid
    aft, forward = float(frames[outline.aft]), float(frames[outline.forward])
    crossed, butts, new, weld = [], [], [], 0.0
    for row in outline.strakes:
        name = plan.strakes[row]
        for frame in range(outline.aft, outline.forward + 1):
            bay = min(max(frame, outline.aft), outline.forward - 1)
            girth = grid.breadth(row, row + 1, bay, bay + 1)
            crossed.append(joint_at(joints, "frame", name, float(frames[frame])).line(girth))
        inside = plan.butts[row]
        inside = inside[(inside >= aft - _NEAR) & (inside <= forward + _NEAR)]
        for x in inside.tolist():
            butts.append(joint_at(joints, "butt", name, x).line(_girth(plan, row, outline, x)))
        for x in (aft, forward):
            if inside.size and np.abs(inside - x).min() <= _NEAR:
                continue
            girth = _girth(plan, row, outline, x)
            if ends == "weld":
                weld += girth
            else:
                like = joint_at(joints, "butt", name, x)
                new.append(Line(girth, like.rows * ENDS[ends], like.pitch, like.rivet))
    seams = tuple(tuple(_seam(plan, outline, joints, row)) for row in range(outline.lower, outline.upper + 1))
    return InsertJoints(seams, tuple(crossed), tuple(butts), tuple(new), weld)


def _girth(plan: ShellPlan, row: int, outline: Outline, x: float) -> float:
    """Give the breadth of a strake at a place within an insert, m: that of the frame space there."""
    frames = plan.grid.frames
    bay = int(np.clip(np.searchsorted(frames, x, side="right") - 1, outline.aft, outline.forward - 1))
    return plan.grid.breadth(row, row + 1, bay, bay + 1)


def _seam(plan: ShellPlan, outline: Outline, joints: Sequence[Joint], row: int) -> Iterator[Line]:
    """Give a seam in lengths that are riveted alike; the seam below the lowest strake is its lower seam."""
    name = plan.strakes[max(row - 1, 0)]
    where: Where = "seam" if row else "lower seam"
    frames = plan.grid.frames
    begin, like = float(frames[outline.aft]), None
    for bay in outline.bays:
        at = joint_at(joints, where, name, 0.5 * float(frames[bay] + frames[bay + 1]))
        if like is not None and at != like:
            yield like.line(float(frames[bay]) - begin)
            begin = float(frames[bay])
        like = at
    if like is not None:
        yield like.line(float(frames[outline.forward]) - begin)


def end_plate(joints: InsertJoints, ends: Ends) -> float:
    """Find the plate that laps or straps at the ends of an insert take besides, m2.

    Formula: lap (2 e + (n - 1) r) d b with n rows; strap twice that with the rows of one side. Symbols: edge e and rows
    r in diameters d; breadth b in m. Source: `EDGE_SOURCE`.
    """
    area = 0.0
    for line in joints.ends:
        rows = line.rows // ENDS[ends]
        apart = LAP_ROWS if ends == "riveted lap" else STRAP_ROWS
        area += ENDS[ends] * (2.0 * EDGE_DISTANCE + (rows - 1) * apart) * line.rivet * line.length
    return area
