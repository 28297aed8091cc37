"""Pitting: what the pits of a plate call for, by rules apart from those of general wastage."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.thickness.readings import GREATEST_THICKNESS
from tenderwright.calculations.verdict import within

Treatment = Literal["none", "fill with epoxy", "weld", "renew"]

ESP = Citation("IMO ESP Code and IACS CSR", "pitting, side structure")
NSG = Citation("LR Naval Survey Guidance", "Ch. 12")
REC_47 = Citation("IACS Recommendation 47", "Part B", standing="from memory")

INTENSITY_TO_GAUGE = 0.15
"""Share of one side's area in pits above which the five deepest are gauged (`ESP`)."""
LEAST_IN_PITS = 0.70
"""Share of the thickness as built that must be left, strictly above, under the deepest of them (`ESP`)."""
PITS_TO_GAUGE = 5
DEPTH_TO_WELD = 0.33
"""Depth, of the plate's thickness, from which a pit is welded and no longer filled (`NSG`)."""
LEAST_TO_WELD = 0.006
"""Thickness left, m, strictly above which a pit may be welded (`NSG`; `REC_47` renews below it)."""
INTENSITY_TO_RENEW = 0.25
DEPTH_TO_RENEW = 0.50
"""Intensity and depth above both of which the plate is renewed (`NSG`)."""


class Pitting(Struct, frozen=True):
    """What the pits of one plate call for."""

    remaining: float
    """Least thickness left in the pits, m."""
    share_left: float
    """The same, of the thickness as built."""
    gauge_five: bool
    """Whether the five deepest are to be gauged, on at least 300 mm across cleaned at the worst spot."""
    passes: bool
    """Whether more than 70 % of the thickness as built is left under the deepest pit; asked above 15 % intensity."""
    treatment: Treatment
    reasons: tuple[str, ...]


def judge_pitting(as_built: float, thickness: float, intensity: float, depths: Sequence[float]) -> Pitting:
    """Judge the pits of a plate.

    Symbols: as_built t0, thickness t of the plate between the pits (depths are taken from it), depths of the deepest
    pits in m, intensity the share of one side's area in pits.
    Rules: above 15 % intensity the five deepest are gauged, and more than 0.70 t0 must be left; depth under
    0.33 t is filled; from 0.33 t it is welded if more than 6 mm are left; intensity above 25 % with depth above
    half of t, or a thin remainder, renews. The source does not say which t: the present one is the stricter.
    Source: `ESP`; `NSG`; `REC_47`. Raises OutOfRange.
    """
    _require(as_built, thickness, intensity, depths)
    deepest = max(depths, default=0.0)
    remaining = thickness - deepest
    gauge = not within(intensity, INTENSITY_TO_GAUGE)
    passes = not gauge or within(remaining, LEAST_IN_PITS * as_built, strict=True, at_least=True)
    reasons: list[str] = []
    treatment: Treatment = "none" if deepest == 0.0 else "fill with epoxy"
    if within(deepest, DEPTH_TO_WELD * thickness, at_least=True):
        treatment = "weld"
        reasons.append("a pit is a third of the plate deep or more")
        if within(remaining, LEAST_TO_WELD):
            treatment = "renew"
            reasons.append("no more than 6 mm is left to weld on")
    if not within(intensity, INTENSITY_TO_RENEW) and not within(deepest, DEPTH_TO_RENEW * thickness):
        treatment = "renew"
        reasons.append("more than a quarter of the area is pitted, and deeper than half the plate")
    if not passes:
        treatment = "renew"
        reasons.append("no more than 70 % of the thickness as built is left in the pits")
    if gauge and len(depths) < PITS_TO_GAUGE:
        reasons.append("more than 15 % is pitted: the five deepest pits are to be gauged")
    return Pitting(remaining, remaining / as_built, gauge, passes, treatment, tuple(reasons))


def equivalent_thickness(thickness: float, intensity: float, mean_depth: float, shape: float = 1.0) -> float:
    """Find the thickness of an even plate of the same mass, m: t - i d k. An aid to reporting, never a limit.

    Symbols: thickness t between the pits and mean depth d in m; intensity i; shape k, the volume of a pit of that
    of a cylinder (1 is the safe side, one half a paraboloid, one third a cone). Source: derived. Raises OutOfRange.
    """
    _require(thickness, thickness, intensity, (mean_depth,))
    if not 0.0 < shape <= 1.0:
        raise OutOfRange(f"the shape of a pit is above 0 and at most 1, got {shape:g}")
    return thickness - intensity * mean_depth * shape


def _require(as_built: float, thickness: float, intensity: float, depths: Sequence[float]) -> None:
    for name, value in (("as built", as_built), ("of the plate", thickness)):
        if not 0.0 < value < GREATEST_THICKNESS:
            raise OutOfRange(f"the thickness {name} lies between 0 and 500 mm, got {1e3 * value:g} mm")
    if not 0.0 <= intensity <= 1.0:
        raise OutOfRange(f"the intensity of pitting is a fraction of 0 to 1, got {intensity:g}")
    for depth in depths:
        if not (math.isfinite(depth) and 0.0 <= depth <= thickness):
            raise OutOfRange(
                "a pit is at least nothing and at most the plate deep, "
                f"got {1e3 * depth:g} mm in {1e3 * thickness:g} mm"
            )


def _kernel(
    as_built: float,
    thickness: float,
    intensity: float,
    depths: Sequence[float],
    mean_depth: float | None = None,
) -> Mapping[str, Any]:
    found = judge_pitting(as_built, thickness, intensity, depths)
    even = None if mean_depth is None else equivalent_thickness(thickness, intensity, mean_depth)
    return {
        "remaining": found.remaining,
        "share_left": found.share_left,
        "gauge_five": found.gauge_five,
        "passes": found.passes,
        "treatment": found.treatment,
        "reasons": list(found.reasons),
        "equivalent_thickness": even,
    }


METHOD = Method(
    name="thickness.pitting",
    title="Pitting of plate",
    formula="fill below 0.33 t, weld above it if more than 6 mm are left; above 15 % intensity over 0.70 t₀ left",
    source=Citation("LR Naval Survey Guidance", "Ch. 12; IMO ESP Code and IACS CSR, pitting"),
    valid="plate pitted from one side",
    inputs={
        "as_built": _length("Thickness as built.", "11.1 mm"),
        "thickness": _length("Thickness of the plate between the pits.", "10.4 mm"),
        "intensity": quantity("fraction", "Share of the area of one side that is pitted.", "20 %"),
        "depths": {
            "type": "array",
            "items": _length("Depth of one pit.", "2.5 mm"),
            "description": "Depths of the deepest pits, five where more than 15 % is pitted.",
        },
        "mean_depth": _length("Mean depth of the pits, for the equivalent thickness.", "1.5 mm"),
    },
    outputs=(
        Symbol("remaining", "least thickness left in the pits", "length", "mm"),
        Symbol("share_left", "least left, of the thickness as built", "fraction", "%"),
        Symbol("gauge_five", "whether the five deepest pits are to be gauged", "truth", ""),
        Symbol("passes", "whether enough is left in the pits", "truth", ""),
        Symbol("treatment", "none, fill with epoxy, weld, or renew", "text", ""),
        Symbol("reasons", "why", "text", ""),
        Symbol("equivalent_thickness", "thickness of an even plate of the same mass", "length", "mm"),
    ),
    kernel=_kernel,
    example={
        "as_built": "11.1 mm",
        "thickness": "10.4 mm",
        "intensity": "20 %",
        "depths": ["2.5 mm", "2.2 mm", "2.0 mm", "1.9 mm", "1.8 mm"],
        "mean_depth": "1.5 mm",
    },
    optional=frozenset({"mean_depth"}),
    cautions=(
        "the equivalent thickness is an aid to reporting; no rule takes it for a limit",
        "pits are gauged by a probe 3 to 5 mm across; one of 10 mm is unsuitable",
        "welding of pits: at least four beads a pit; afloat, only as the surveyor agrees",
    ),
)
