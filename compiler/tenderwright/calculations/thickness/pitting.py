"""Pitting: what each pit of a stretch of plate calls for, by rules apart from those of general wastage."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import listed, quantity, record
from tenderwright.calculations.thickness.readings import GREATEST_THICKNESS
from tenderwright.calculations.verdict import within
from tenderwright.quantities.display import plainly

Treatment = Literal["watch", "fill with epoxy", "weld", "local insert"]
TREATMENTS: tuple[Treatment, ...] = ("watch", "fill with epoxy", "weld", "local insert")
"""What a pit may call for, the least first."""

ESP = Citation("IMO ESP Code and IACS CSR", "pitting, side structure")
NSG = Citation("LR Naval Survey Guidance", "Ch. 12")
REC_47 = Citation("IACS Recommendation 47", "Part B", standing="from memory")

INTENSITY_TO_GAUGE = 0.15
"""Share of one side's area in pits above which the five deepest are gauged (`ESP`)."""
LEAST_IN_PITS = 0.70
"""Share of the thickness as built that must be left, strictly above, in each pit of such plate (`ESP`)."""
PITS_TO_GAUGE = 5
DEPTH_TO_WELD = 0.33
"""Depth, of the plate's thickness, from which a pit is welded and no longer filled (`NSG`)."""
LEAST_TO_WELD = 0.006
"""Thickness left, m, strictly above which a pit may be welded (`NSG`; `REC_47` renews below it)."""
INTENSITY_TO_RENEW = 0.25
DEPTH_TO_RENEW = 0.50
"""Intensity and depth above both of which the plate is renewed (`NSG`)."""
DEPTH_TO_FILL = 0.001
"""Depth, m, from which a pit is filled; a shallower one is coated over and watched (common practice, no source)."""


class Pit(Struct, frozen=True):
    """One pit with what it calls for; lengths in m."""

    at: float | None
    """Forward of the after perpendicular, where that is known."""
    as_built: float
    left: float
    depth: float
    treatment: Treatment
    why: str


class Pitting(Struct, frozen=True):
    """What the pits of one stretch call for."""

    thickness: float
    """Of the plate between the pits, m."""
    intensity: float
    """Share of one face that is pits."""
    pits: tuple[Pit, ...]
    """The deepest first."""
    gauge_five: bool
    """Whether the five deepest are to be gauged, on at least 300 mm across cleaned at the worst spot."""
    reasons: tuple[str, ...]
    """What the surveyor is still to do."""

    @property
    def remaining(self) -> float:
        """Give the least thickness left in the pits, m."""
        return min((pit.left for pit in self.pits), default=self.thickness)

    @property
    def share_left(self) -> float:
        """Give the least that is left of the thickness as built."""
        return min((pit.left / pit.as_built for pit in self.pits), default=1.0)

    @property
    def treatment(self) -> Treatment:
        """Give what the worst of them calls for."""
        return max((pit.treatment for pit in self.pits), key=TREATMENTS.index, default="watch")

    def number(self, treatment: Treatment) -> int:
        """Count the pits that call for one treatment."""
        return sum(pit.treatment == treatment for pit in self.pits)


def judge_pits(
    pits: Sequence[Mapping[str, Any]],
    intensity: float,
    plate: Sequence[float] = (),
    shallow: float = DEPTH_TO_FILL,
    weldable: bool = True,
) -> Pitting:
    """Judge the pits of a stretch one by one.

    Formula: t is the mean of the plate between the pits, d = max(0, t - left). A pit calls for a local insert where
    d >= 0.33 t and no more than 6 mm is left; where more than a quarter of the face is pitted and d > t/2; where more
    than 15 % of it is and no more than 0.70 t0 is left; where d >= 0.33 t and no weld is made on the plate. Otherwise
    it is welded where d >= 0.33 t, filled where d is not under `shallow`, else watched.
    Symbols: pits, each with as_built t0 and what is left in m; intensity, the share of one face that is pits; plate,
    thicknesses between the pits in m (none: as built); shallow in m. The source does not say which t: the present one
    is the stricter. Source: `ESP`; `NSG`; `REC_47`. Raises OutOfRange.
    """
    built = [one["as_built"] for one in pits]
    _require(intensity, plate or built, [*built, *plate, *(one["left"] for one in pits)])
    thickness = sum(plate or built) / len(plate or built)
    judged = (_judged(one, thickness, intensity, shallow, weldable) for one in pits)
    gauge = not within(intensity, INTENSITY_TO_GAUGE)
    few = gauge and len(pits) < PITS_TO_GAUGE
    reasons = ("more than 15 % is pitted: the five deepest pits are to be gauged",) if few else ()
    return Pitting(thickness, intensity, tuple(sorted(judged, key=lambda pit: pit.left)), gauge, reasons)


def _judged(pit: Mapping[str, Any], thickness: float, intensity: float, shallow: float, weldable: bool) -> Pit:
    built, left = pit["as_built"], pit["left"]
    depth = max(thickness - left, 0.0)
    treatment, why = _treatment(built, thickness, left, depth, intensity, shallow)
    if treatment == "weld" and not weldable:
        treatment, why = "local insert", f"{why}, and no weld is made on this plate"
    return Pit(pit.get("at"), built, left, depth, treatment, why)


def _treatment(
    built: float, thickness: float, left: float, depth: float, intensity: float, shallow: float
) -> tuple[Treatment, str]:
    deep = within(depth, DEPTH_TO_WELD * thickness, at_least=True)
    if deep and within(left, LEAST_TO_WELD):
        return "local insert", "no more than 6 mm is left to weld on"
    if not within(intensity, INTENSITY_TO_RENEW) and not within(depth, DEPTH_TO_RENEW * thickness):
        return "local insert", "more than a quarter of the face is pitted, and the pit is deeper than half the plate"
    if not within(intensity, INTENSITY_TO_GAUGE) and within(left, LEAST_IN_PITS * built):
        return "local insert", "more than 15 % is pitted, and no more than 70 % of the thickness as built is left"
    if deep:
        return "weld", "a third of the plate deep or more"
    if within(depth, shallow, strict=True):
        return "watch", "shallow: coated over"
    return "fill with epoxy", "less than a third of the plate deep"


def equivalent_thickness(thickness: float, intensity: float, mean_depth: float, shape: float = 1.0) -> float:
    """Find the thickness of an even plate of the same mass, m: t - i d k. An aid to reporting, never a limit.

    Symbols: thickness t between the pits and mean depth d in m; intensity i; shape k, the volume of a pit of that
    of a cylinder (1 gives the least thickness, one half is a paraboloid, one third a cone). Source: derived. Raises
    OutOfRange.
    """
    _require(intensity, (thickness,), (thickness,))
    if not 0.0 <= mean_depth <= thickness:
        raise OutOfRange(
            f"a pit is at least nothing and at most the plate deep, got {plainly(mean_depth, 'thickness')}"
        )
    if not 0.0 < shape <= 1.0:
        raise OutOfRange(f"the shape of a pit is above 0 and at most 1, got {shape:g}")
    return thickness - intensity * mean_depth * shape


def _require(intensity: float, thicknesses: Sequence[float], lengths: Sequence[float]) -> None:
    if not thicknesses:
        raise OutOfRange("give one or more pits, or the thickness of the plate")
    for value in lengths:
        if not 0.0 < value < GREATEST_THICKNESS:
            raise OutOfRange(
                f"a thickness of plate or in a pit lies between 0 and 500 mm, got {plainly(value, 'thickness')}"
            )
    if not 0.0 <= intensity <= 1.0:
        raise OutOfRange(f"the intensity of pitting is a fraction of 0 to 1, got {intensity:g}")


def outputs_of(found: Pitting) -> Mapping[str, Any]:
    """Give the pits as the outputs of the method."""
    mean = sum(pit.depth for pit in found.pits) / len(found.pits) if found.pits else 0.0
    return {
        "thickness": found.thickness,
        "remaining": found.remaining,
        "share_left": found.share_left,
        "gauge_five": found.gauge_five,
        "treatment": found.treatment,
        "reasons": list(found.reasons),
        "inserts": float(found.number("local insert")),
        "welds": float(found.number("weld")),
        "fills": float(found.number("fill with epoxy")),
        "watched": float(found.number("watch")),
        "mean_depth": mean,
        "equivalent_thickness": equivalent_thickness(found.thickness, found.intensity, mean),
        "pits": [{column.name: getattr(pit, column.name) for column in PITS.columns} for pit in found.pits],
    }


PITS = Symbol(
    "pits",
    "each pit, the deepest first",
    "table",
    "",
    (
        Symbol("at", "place forward of the after perpendicular, where known", "length", "m"),
        Symbol("left", "thickness left", "length", "mm"),
        Symbol("depth", "depth below the plate between the pits", "length", "mm"),
        Symbol("treatment", "watch, fill with epoxy, weld, or local insert", "text", ""),
        Symbol("why", "why", "text", ""),
    ),
)

METHOD = Method(
    name="thickness.pitting",
    title="Pits of a stretch of plate",
    formula="d = t − left; insert where d ≥ 0.33 t with 6 mm or less left, or above 25 % intensity with d > t/2, or "
    "above 15 % with 0.70 t₀ or less left; else weld from 0.33 t, fill under it",
    source=Citation("LR Naval Survey Guidance", "Ch. 12; IMO ESP Code and IACS CSR, pitting"),
    valid="plate pitted from one side; pits as gauged, before they are cleaned",
    inputs={
        "pits": listed(
            record(
                "One pit.",
                ("as_built", "left"),
                at=_length("Place forward of the after perpendicular."),
                as_built=_length("Thickness of its plate as built."),
                left=_length("Thickness left in it."),
            ),
            "The pits gauged; the five deepest where more than 15 % is pitted.",
        ),
        "intensity": quantity("fraction", "Share of the area of one face that is pitted."),
        "plate": listed(_length("One reading."), "Thicknesses between the pits; as built where there are none.", 0),
        "weldable": {"type": "boolean", "description": "Whether the plate may be welded; it may unless given."},
        "shallow": _length("Depth under which a pit is coated over and watched; 1 mm unless given.", "1 mm"),
    },
    outputs=(
        Symbol("thickness", "thickness of the plate between the pits", "length", "mm"),
        Symbol("remaining", "least thickness left in the pits", "length", "mm"),
        Symbol("share_left", "least left, of the thickness as built", "fraction", "%"),
        Symbol("gauge_five", "whether the five deepest pits are to be gauged", "truth", ""),
        Symbol("treatment", "what the worst calls for: watch, fill with epoxy, weld, or local insert", "text", ""),
        Symbol("reasons", "what is still to be done", "text", ""),
        Symbol("inserts", "pits that call for a local insert", "each", "each"),
        Symbol("welds", "pits to weld", "each", "each"),
        Symbol("fills", "pits to fill with epoxy", "each", "each"),
        Symbol("watched", "pits to watch", "each", "each"),
        Symbol("mean_depth", "mean depth of the pits gauged", "length", "mm"),
        Symbol("equivalent_thickness", "thickness of an even plate of the same mass", "length", "mm"),
        PITS,
    ),
    kernel=judge_pits,
    figures=outputs_of,
    example={
        "pits": [
            {"at": "20.2 m", "as_built": "11.1 mm", "left": left} for left in ("7.9 mm", "8.2 mm", "8.4 mm", "9.9 mm")
        ],
        "intensity": "12 %",
        "plate": ["10.4 mm", "10.6 mm"],
    },
    optional=frozenset({"plate", "shallow", "weldable"}),
    cautions=(
        "pits are gauged by a probe 3 to 5 mm across; one of 10 mm is unsuitable",
        "welding of pits: at least four beads a pit; afloat, only as the surveyor agrees",
        "the equivalent thickness is an aid to reporting; no rule takes it for a limit",
        "a pit is judged as gauged: it is gauged again when it is clean, before anything is done",
    ),
)
