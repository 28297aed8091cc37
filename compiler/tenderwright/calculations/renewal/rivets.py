"""Rivets that an insert takes with it: to be drilled out, driven anew, and near enough to a weld to be looked at."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length

Fastening = Literal["riveted", "welded edges"]

SEAM_PITCH = 4.5
FRAME_PITCH = 7.0
"""Pitch of rivets in diameters: watertight seams and butts 4 to 4.5, frames 7."""
PITCH_SOURCE = Citation("Rules of shell riveting", "pitch in diameters", standing="from memory")

WELD_CLEARANCE = 0.1524
"""Least distance of a weld from a riveted joint that stays, m: 6 in."""
CLEARANCE_SOURCE = Citation("US Navy training manual 14119, Hull Maintenance Technician", "fig. 13-52")

RING_WELD_SOURCE = Citation("USCG NVIC 7-68", "E-37 and E-38: temporary, a few scattered rivets only")

_ROUND_OFF = 1e-9


class Riveting(Struct, frozen=True):
    """How the shell is riveted; pitches in m, rows of rivets in each joint."""

    seam_pitch: float
    seam_rows: int
    butt_rows: int
    frame_pitch: float
    frame_rows: int = 1
    butt_pitch: float | None = None
    """That of the seams unless given."""

    def __post_init__(self) -> None:
        for pitch in (
            self.seam_pitch,
            self.frame_pitch,
            self.seam_pitch if self.butt_pitch is None else self.butt_pitch,
        ):
            if not (math.isfinite(pitch) and pitch > 0.0):
                raise OutOfRange(f"the pitch of rivets must be more than nothing, got {pitch:g} m")
        if min(self.seam_rows, self.butt_rows, self.frame_rows) < 0:
            raise OutOfRange("a joint cannot have fewer than no rows of rivets")


class RivetCount(Struct, frozen=True):
    """Rivets and joints of one insert."""

    removed: int
    renewed: int
    near_welds: int
    """Rivets that stay within the clearance of a weld: ring-welded where they weep, and tested."""
    seam: float
    """Metres of seam opened, at the edges and within."""
    butt: float
    """Metres of riveted butt opened."""


def default_riveting(diameter: float, seam_rows: int, butt_rows: int) -> Riveting:
    """Give the riveting of a shell from the diameter of its rivets, m: pitch 4.5 d at seams, 7 d at frames.

    Source: `PITCH_SOURCE`; the ship's own pitches come before it. Raises OutOfRange.
    """
    return Riveting(SEAM_PITCH * diameter, seam_rows, butt_rows, FRAME_PITCH * diameter)


def rivets_in(length: float, pitch: float, rows: int) -> int:
    """Count the rivets along a joint: rows times ceil(l / p) (derived)."""
    if not (math.isfinite(length) and length >= 0.0):
        raise OutOfRange(f"the length of a joint cannot be less than nothing, got {length:g} m")
    return rows * math.ceil(length / pitch - _ROUND_OFF)


def insert_rivets(
    length: float,
    breadth: float,
    seams: int,
    frames: int,
    butts: Sequence[float],
    riveting: Riveting,
    fastening: Fastening = "riveted",
    clearance: float = WELD_CLEARANCE,
) -> RivetCount:
    """Count the rivets of an insert.

    Formula: removed = seams·rows·ceil(l/p) + frames·rows·ceil(b/pf) + rows·ceil(b'/pb) for each riveted butt b'.
    Riveted again, all are driven anew; with welded edges only those of the frames are, and on each seam at each end
    rows·ceil(c/p) rivets stay within the clearance c of the weld.
    Symbols: length l and breadth b in m; seams, the riveted seams along it, both edges and those within; frames,
    the frames that cross it, at both ends and between; butts, the lengths of riveted butts opened, m.
    Source: derived; clearance `CLEARANCE_SOURCE`; ring-welding `RING_WELD_SOURCE`. Raises OutOfRange.
    """
    if seams < 0 or frames < 0:
        raise OutOfRange("an insert cannot cross fewer than no seams or frames")
    if not (math.isfinite(clearance) and clearance >= 0.0):
        raise OutOfRange(f"the clearance of a weld cannot be less than nothing, got {clearance:g} m")
    butt_pitch = riveting.seam_pitch if riveting.butt_pitch is None else riveting.butt_pitch
    at_seams = seams * rivets_in(length, riveting.seam_pitch, riveting.seam_rows)
    at_frames = frames * rivets_in(breadth, riveting.frame_pitch, riveting.frame_rows)
    at_butts = sum(rivets_in(butt, butt_pitch, riveting.butt_rows) for butt in butts)
    removed = at_seams + at_frames + at_butts
    welded = fastening == "welded edges"
    near = 2 * seams * rivets_in(clearance, riveting.seam_pitch, riveting.seam_rows) if welded else 0
    return RivetCount(removed, at_frames if welded else removed, near, seams * length, sum(butts))


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
) -> Mapping[str, float]:
    usual = default_riveting(diameter, seam_rows, butt_rows)
    riveting = Riveting(
        usual.seam_pitch if seam_pitch is None else seam_pitch,
        seam_rows,
        butt_rows,
        usual.frame_pitch if frame_pitch is None else frame_pitch,
    )
    found = insert_rivets(length, breadth, seams, frames, butts or [], riveting, fastening)
    return {
        "removed": float(found.removed),
        "renewed": float(found.renewed),
        "near_welds": float(found.near_welds),
        "seam": found.seam,
        "butt": found.butt,
    }


def _number(description: str) -> dict[str, Any]:
    return {"type": "integer", "minimum": 0, "description": description}


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
        "butt_rows": _number("Rows of rivets in a butt, on one side of it."),
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
            "description": "How the insert is fastened; riveted unless given.",
        },
    },
    outputs=(
        Symbol("removed", "rivets to remove", "each", "each"),
        Symbol("renewed", "rivets to drive", "each", "each"),
        Symbol("near_welds", "rivets that stay within 6 in of a weld", "each", "each"),
        Symbol("seam", "seam opened", "length", "m"),
        Symbol("butt", "riveted butt opened", "length", "m"),
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
    optional=frozenset({"butts", "seam_pitch", "frame_pitch", "fastening"}),
    cautions=(
        "pitches of 4.5 and 7 diameters are from memory",
        "ring-welding is temporary, for a few scattered rivets of frames and seams, "
        "and not at butts or outboard of hatches on deck",
    ),
)
