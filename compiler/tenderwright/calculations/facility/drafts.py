"""Her drafts over the blocks and over the sill in a facility's own water."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.facility.water import deepest
from tenderwright.calculations.hydrostatics.buoyant import HULL, buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.equilibrium import float_at
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import length, listed, quantity, record


class Drafts(Struct, frozen=True):
    """Drafts in a facility's water, m."""

    aft: float
    forward: float
    over_blocks: float
    """Greatest of the keel that stands on the blocks."""
    over_sill: float
    """Greatest of keel and all that hangs below the hull."""


def drafts(
    displacement: float,
    lcg: float,
    vcg: float,
    density: float,
    keel: Sequence[Mapping[str, float]],
    hanging: Sequence[Mapping[str, float]] = (),
    heel: float = 0.0,
    offsets: Mapping[str, Any] | HullForm | None = None,
    curves: Mapping[str, Any] | HullCurves | None = None,
) -> Drafts:
    """Float her in the water and find how deep keel and appendages reach; see `float_at` and `deepest`.

    Symbols: displacement [kg]; centre of gravity [m]; density [kg/m3]; points x, y, z [m]; heel [rad].
    Source: as `float_at` (derived). Raises OutOfRange.
    """
    afloat = float_at(buoyant(offsets, curves), displacement, lcg, vcg, density)
    points, below = ([(p["x"], p.get("y", 0.0), p["z"]) for p in some] for some in (keel, hanging))
    there = afloat.draft_aft, afloat.draft_forward, afloat.length
    return Drafts(
        afloat.draft_aft,
        afloat.draft_forward,
        deepest(*there, points, heel),
        deepest(*there, points + below, heel),
    )


def outputs_of(found: Drafts) -> Mapping[str, float]:
    """Give the drafts as outputs."""
    return {
        "draft_aft": found.aft,
        "draft_forward": found.forward,
        "over_blocks": found.over_blocks,
        "over_sill": found.over_sill,
    }


_POINT = record(
    "A point.",
    ("x", "z"),
    x=length("Forward of AP.", "1 m"),
    y=length("From the centreline.", "0 m"),
    z=length("Above the baseline; minus for below it.", "-0.18 m"),
)

METHOD = Method(
    name="facility.drafts",
    title="Drafts over blocks and sill in a facility's water",
    formula="ρV = W, LCG − LCB = (t/L)(VCG − KB); greatest of draft at x − z + |y| tan(heel)",
    source=Citation("Archimedes' principle and the statics of a floating body; geometry", standing="derived"),
    valid="deck edge clear of the water; small heel",
    inputs={
        **HULL,
        "displacement": quantity("mass", "Weight of the ship."),
        "lcg": length("Centre of gravity, forward of AP."),
        "vcg": length("Centre of gravity above the baseline."),
        "density": quantity("density", "Density of the facility's water."),
        "keel": listed(_POINT, "Ends of the straight keel, at its underside."),
        "hanging": listed(_POINT, "Lowest points of rudder, bilge keels and other appendages.", 0),
        "heel": quantity("angle", "List, to either side.", "0.2 deg"),
    },
    outputs=(
        Symbol("draft_aft", "draft at the after perpendicular", "length", "m"),
        Symbol("draft_forward", "draft at the forward perpendicular", "length", "m"),
        Symbol("over_blocks", "greatest draft of the keel along the blocks", "length", "m"),
        Symbol("over_sill", "greatest draft of keel and appendages", "length", "m"),
    ),
    kernel=drafts,
    figures=outputs_of,
    example={
        "offsets": EXAMPLE_OFFSETS,
        "displacement": "480 t",
        "lcg": "20 m",
        "vcg": "3 m",
        "density": "1012 kg/m3",
        "keel": [{"x": "2 m", "z": "-0.18 m"}, {"x": "38 m", "z": "-0.18 m"}],
    },
    optional=frozenset({"offsets", "curves", "hanging", "heel"}),
)
