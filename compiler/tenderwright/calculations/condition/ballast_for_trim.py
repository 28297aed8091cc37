"""Target trim as a calculation that runs alone on an input file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.condition.condition_input import (
    EXAMPLE_TANKS,
    EXAMPLE_WEIGHTS,
    TANK_FIELDS,
    WEIGHTS,
    tanks_from_input,
    weights_from_input,
)
from tenderwright.calculations.condition.loading import Weight
from tenderwright.calculations.condition.target_trim import MovableTank, TrimPlan, target_trim
from tenderwright.calculations.hydrostatics.buoyant import HULL, buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import listed, quantity, record, text

TARGET_TANKS: Mapping[str, Any] = listed(
    record(
        "A tank.",
        ("name", "shape", "liquid", "density", "mass"),
        **TANK_FIELDS,
        liquid=text("Liquid; tanks of one liquid may be pumped into each other."),
        minimum=quantity("mass", "Least mass; none where left out."),
        maximum=quantity("mass", "Greatest mass; full where left out."),
    ),
    "Tanks, the liquid in each, and the limits to keep.",
)


def trim_by_liquids(
    weights: Sequence[Mapping[str, Any] | Weight],
    tanks: Sequence[Mapping[str, Any] | MovableTank],
    trim: float,
    density: float = 1025.0,
    upright: bool = False,
    exchanged: Sequence[str] = ("sea water",),
    offsets: Mapping[str, Any] | HullForm | None = None,
    curves: Mapping[str, Any] | HullCurves | None = None,
) -> TrimPlan:
    """Find the least liquid to move for a wanted trim from converted input; see `target_trim`."""
    movable = [tank if isinstance(tank, MovableTank) else _movable(tank) for tank in tanks]
    return target_trim(
        buoyant(offsets, curves),
        weights_from_input(weights),
        movable,
        trim,
        density,
        upright=upright,
        exchanged=exchanged,
    )


def _movable(tank: Mapping[str, Any]) -> MovableTank:
    load = tanks_from_input([tank])[0]
    greatest = tank.get("maximum", load.tank.capacity * load.density)
    return MovableTank(load, tank["liquid"], tank.get("minimum", 0.0), greatest)


def outputs_of(plan: TrimPlan) -> dict[str, Any]:
    """Give a plan as the outputs of the method."""
    found = plan.position.hydrostatics
    return {
        "met": 1.0 if plan.feasible else 0.0,
        "trim": found.trim,
        "draft_aft": found.draft_aft,
        "draft_forward": found.draft_forward,
        "gm_fluid": plan.position.gm_fluid,
        "moved": plan.moved,
        "changes": list(plan.changes),
        "transfers": [
            {"source": t.source, "destination": t.destination, "liquid": t.liquid, "mass": t.mass}
            for t in plan.transfers
        ],
    }


METHOD = Method(
    name="condition.target-trim",
    title="Least liquid to move for a wanted trim",
    formula="least sum of pumped mass subject to sum(w (x - s z)) = W (LCB - s KB), s = t/L, and each tank's limits",
    source=Citation("linear programming on the moments of weights", "", "derived"),
    valid="deck edge clear; list up to 5 degrees; the result is floated in full",
    inputs={
        **HULL,
        "weights": WEIGHTS,
        "tanks": TARGET_TANKS,
        "trim": quantity("length", "Wanted draft aft less draft forward."),
        "density": quantity("density", "Density of the water."),
        "upright": {"type": "boolean", "description": "Whether the list must be nothing too."},
        "exchanged": {
            "type": "array",
            "items": {"type": "string"},
            "description": "Liquids that may be taken from and put into the sea; sea water where left out.",
        },
    },
    outputs=(
        Symbol("met", "1 where the trim is met, 0 where this is the nearest", "each", "each"),
        Symbol("trim", "trim in the end", "length", "m"),
        Symbol("draft_aft", "draft at the after perpendicular in the end", "length", "m"),
        Symbol("draft_forward", "draft at the forward perpendicular in the end", "length", "m"),
        Symbol("gm_fluid", "metacentric height with free surfaces in the end", "length", "m"),
        Symbol("moved", "mass pumped in all", "mass", "t"),
        Symbol("changes", "change in each tank, in their order", "mass", "t"),
        Symbol(
            "transfers",
            "what to pump from where to where",
            "table",
            "",
            (
                Symbol("source", "from", "text", ""),
                Symbol("destination", "to", "text", ""),
                Symbol("liquid", "liquid", "text", ""),
                Symbol("mass", "mass", "mass", "t"),
            ),
        ),
    ),
    kernel=trim_by_liquids,
    figures=outputs_of,
    example={
        "offsets": EXAMPLE_OFFSETS,
        "weights": EXAMPLE_WEIGHTS,
        "tanks": [{**tank, "liquid": "sea water" if "peak" in tank["name"] else "gas oil"} for tank in EXAMPLE_TANKS],
        "trim": "0.3 m",
        "upright": True,
    },
    optional=frozenset({"offsets", "curves", "density", "upright", "exchanged"}),
    cautions=(
        "Free surfaces while pumping, and the order of pumping, are not examined: "
        "the naval architect and the dockmaster decide.",
    ),
)
