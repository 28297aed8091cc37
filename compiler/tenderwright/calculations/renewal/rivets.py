"""Rivets that an insert takes with it: to be drilled out, driven anew, and near enough to a weld to be looked at."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.quantities.display import plainly

Fastening = Literal["riveted", "welded edges"]
Ends = Literal["riveted lap", "riveted strap", "weld"]
ENDS: Mapping[Ends, int] = {"riveted lap": 1, "riveted strap": 2, "weld": 0}
"""How the ends of an insert are joined to the old plate, with the sides of the joint that have their rows of rivets."""

SEAM_PITCH = 4.5
FRAME_PITCH = 7.0
"""Pitch of rivets in diameters: watertight seams and butts 4 to 4.5, frames 7."""
PITCH_SOURCE = Citation("Rules of shell riveting", "pitch in diameters", standing="from memory")

WELD_CLEARANCE = 0.1524
"""Least distance of a weld from a riveted joint that stays, m: 6 in."""
CLEARANCE_SOURCE = Citation("US Navy training manual 14119, Hull Maintenance Technician", "fig. 13-52")

RING_WELD_SOURCE = Citation("USCG NVIC 7-68", "E-37 and E-38: temporary, a few scattered rivets only")

MOST_CROSSED = 1000
"""Seams, and frames, that one insert may cross; far beyond any, so that a slip fills no memory."""

_ROUND_OFF = 1e-9


class Line(Struct, frozen=True):
    """Rivets along a joint: its length, the rows of rivets that it takes in all, their pitch and diameter, m."""

    length: float
    rows: int
    pitch: float
    rivet: float

    def __post_init__(self) -> None:
        if not (math.isfinite(self.pitch) and self.pitch > 0.0):
            raise OutOfRange(f"the pitch of rivets must be more than nothing, got {plainly(self.pitch, 'centre')}")
        if self.rows < 0:
            raise OutOfRange("a joint cannot have fewer than no rows of rivets")

    @property
    def rivets(self) -> int:
        """Count its rivets."""
        return rivets_in(self.length, self.pitch, self.rows)

    def near(self, clearance: float) -> int:
        """Count its rivets within a distance of one of its ends."""
        return rivets_in(min(clearance, self.length), self.pitch, self.rows)


class InsertJoints(Struct, frozen=True):
    """The riveted joints of one insert."""

    seams: tuple[tuple[Line, ...], ...]
    """Each seam, edges and those within, in lengths that are riveted alike, from aft."""
    frames: tuple[Line, ...]
    """Each frame that crosses it, at the ends and between, strake by strake."""
    butts: tuple[Line, ...] = ()
    """Existing butts that it opens."""
    ends: tuple[Line, ...] = ()
    """New butts at its ends, where they are riveted: laps, or straps with the rows of both sides."""
    weld: float = 0.0
    """New butts at its ends, where they are welded, m."""


class RivetCount(Struct, frozen=True):
    """Rivets and joints of one insert."""

    removed: int
    renewed: int
    near_welds: int
    """Rivets that stay within the clearance of a weld: ring-welded where they weep, and tested."""
    seam: float
    """Metres of seam opened, at the edges and within."""
    butt: float
    """Metres of riveted butt, those opened and those new at its ends."""
    end_weld: float
    """Metres of new butt welded."""
    by_diameter: tuple[tuple[float, int], ...]
    """Rivets driven, by their diameter in m, the smallest first."""

    @property
    def joint(self) -> float:
        """Give the length to be tested, m."""
        return self.seam + self.butt + self.end_weld


def ends_of(fastening: Fastening) -> Ends:
    """Give how the ends are joined where nothing is said: as the edges are."""
    return "weld" if fastening == "welded edges" else "riveted lap"


def rivets_in(length: float, pitch: float, rows: int) -> int:
    """Count the rivets along a joint: rows times ceil(l / p) (derived)."""
    if not (math.isfinite(length) and length >= 0.0):
        raise OutOfRange(f"the length of a joint cannot be less than nothing, got {plainly(length, 'centre')}")
    return rows * math.ceil(length / pitch - _ROUND_OFF)


def insert_rivets(
    joints: InsertJoints, fastening: Fastening = "riveted", clearance: float = WELD_CLEARANCE
) -> RivetCount:
    """Count the rivets of an insert.

    Formula: n = rows ceil(l/p) for each length of joint. Removed are those of seams, frames and butts opened; driven
    anew the same and those of the new ends, with welded edges those of the frames alone. Where edges or ends are
    welded, on each seam at each end rows ceil(c/p) rivets stay within the clearance c of the weld. Symbols: length l
    and pitch p in m. Source: derived; clearance `CLEARANCE_SOURCE`; ring-welding `RING_WELD_SOURCE`. Raises OutOfRange.
    """
    if not (math.isfinite(clearance) and clearance >= 0.0):
        raise OutOfRange(f"the clearance of a weld cannot be less than nothing, got {plainly(clearance, 'centre')}")
    welded = fastening == "welded edges"
    if welded and joints.ends:
        raise OutOfRange("an insert whose edges are welded has its ends welded too")
    seams = [line for seam in joints.seams for line in seam]
    removed = [*seams, *joints.frames, *joints.butts]
    driven = [*joints.frames] if welded else [*removed, *joints.ends]
    near = 0
    if welded or joints.weld:
        near = sum(seam[0].near(clearance) + seam[-1].near(clearance) for seam in joints.seams if seam)
    by_diameter: dict[float, int] = {}
    for line in driven:
        by_diameter[line.rivet] = by_diameter.get(line.rivet, 0) + line.rivets
    return RivetCount(
        sum(line.rivets for line in removed),
        sum(line.rivets for line in driven),
        near,
        sum(line.length for line in seams),
        sum(line.length for line in (*joints.butts, *joints.ends)),
        joints.weld,
        tuple(sorted(by_diameter.items())),
    )


def _kernel(
    length: float,
    breadth: float,
    seams: int,
    frames: int,
    diameter: float,
    seam_rows: int,
    butt_rows: int,
    butts: list[float] | None = None,
    seam_pitch: float | None = None,
    frame_pitch: float | None = None,
    fastening: Fastening = "riveted",
    ends: Ends | None = None,
) -> Mapping[str, float]:
    if min(seams, frames) < 0 or max(seams, frames) > MOST_CROSSED:
        raise OutOfRange(f"an insert crosses from none to {MOST_CROSSED} seams and as many frames")
    pitch = SEAM_PITCH * diameter if seam_pitch is None else seam_pitch
    at_frames = FRAME_PITCH * diameter if frame_pitch is None else frame_pitch
    made = ends_of(fastening) if ends is None else ends
    rows = butt_rows * ENDS[made]
    joints = InsertJoints(
        seams=((Line(length, seam_rows, pitch, diameter),),) * seams,
        frames=(Line(breadth, 1, at_frames, diameter),) * frames,
        butts=tuple(Line(butt, butt_rows, pitch, diameter) for butt in butts or ()),
        ends=(Line(breadth, rows, pitch, diameter),) * 2 if rows else (),
        weld=0.0 if rows else 2.0 * breadth,
    )
    found = insert_rivets(joints, fastening)
    return {
        "removed": float(found.removed),
        "renewed": float(found.renewed),
        "near_welds": float(found.near_welds),
        "seam": found.seam,
        "butt": found.butt,
        "end_weld": found.end_weld,
    }


def _number(description: str) -> dict[str, Any]:
    return {"type": "integer", "minimum": 0, "maximum": MOST_CROSSED, "description": description}


METHOD = Method(
    name="renewal.rivets",
    title="Rivets and seams of an insert",
    formula="n = rows · ceil(l / p) for each seam, frame and butt that it opens",
    source=Citation("Count of rivets by pitch and rows", standing="derived"),
    valid="an estimate by pitch; rivets counted on the ship come before it",
    inputs={
        "length": _length("Length of the insert."),
        "breadth": _length("Breadth of the insert."),
        "seams": _number("Riveted seams along it, edges and those within."),
        "frames": _number("Frames that cross it, at the ends and between."),
        "diameter": _length("Diameter of the rivets."),
        "seam_rows": _number("Rows of rivets in a seam."),
        "butt_rows": _number("Rows of rivets in a lapped butt; of a strap those on one side of it."),
        "butts": {
            "type": "array",
            "items": _length("Length of one butt."),
            "description": "Riveted butts opened; none unless given.",
        },
        "seam_pitch": _length("Pitch at seams and butts; 4.5 diameters unless given.", "85 mm"),
        "frame_pitch": _length("Pitch at frames; 7 diameters unless given.", "130 mm"),
        "fastening": {
            "type": "string",
            "enum": ["riveted", "welded edges"],
            "description": "How the edges along its seams are fastened; riveted unless given.",
        },
        "ends": {
            "type": "string",
            "enum": list(ENDS),
            "description": "How its ends are joined to the old plate; as the edges are unless given.",
        },
    },
    outputs=(
        Symbol("removed", "rivets to remove", "each", "each"),
        Symbol("renewed", "rivets to drive", "each", "each"),
        Symbol("near_welds", "rivets that stay within 6 in of a weld", "each", "each"),
        Symbol("seam", "seam opened", "length", "m"),
        Symbol("butt", "riveted butt, opened and new at the ends", "length", "m"),
        Symbol("end_weld", "new butt welded", "length", "m"),
    ),
    kernel=_kernel,
    example={
        "length": "1.68 m",
        "breadth": "1.15 m",
        "seams": 2,
        "frames": 4,
        "diameter": "19 mm",
        "seam_rows": 2,
        "butt_rows": 2,
        "butts": ["1.15 m"],
    },
    optional=frozenset({"butts", "seam_pitch", "frame_pitch", "fastening", "ends"}),
    cautions=(
        "pitches of 4.5 and 7 diameters are from memory",
        "ring-welding is temporary, for a few scattered rivets of frames and seams, "
        "and not at butts or outboard of hatches on deck",
    ),
)
