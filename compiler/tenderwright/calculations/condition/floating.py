"""How the ship floats under her weights: drafts, trim, list and metacentric height."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import atan, degrees, radians, tan
from typing import Any

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.condition.condition_input import (
    EXAMPLE_TANKS,
    EXAMPLE_WEIGHTS,
    TANKS,
    WEIGHTS,
    tanks_from_input,
    weights_from_input,
)
from tenderwright.calculations.condition.loading import Loading, TankLoad, Weight, liquids, summed
from tenderwright.calculations.hydrostatics.buoyant import HULL, Buoyant, buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.equilibrium import float_at
from tenderwright.calculations.hydrostatics.hull_form import NEAR, HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS
from tenderwright.calculations.hydrostatics.particulars import Hydrostatics
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.tanks.liquid import Liquid
from tenderwright.quantities.display import show

LARGEST_LIST = radians(5.0)
"""Beyond this the small-angle formula for list is not used (common practice, no source)."""
ROUNDS = 30
SETTLED = 1e-8
"""A change of slope between rounds below this ends the search."""


class FloatingPosition(Struct, frozen=True):
    """A loading afloat: her hydrostatics, the liquid in each tank at her trim, list and metacentric
    height."""

    loading: Loading
    hydrostatics: Hydrostatics
    liquids: tuple[Liquid, ...]
    """In the order of the tanks; their planes follow the trim, not the list, whose effect is in the fluid
    GM."""
    heel: float | None
    """List [rad], positive starboard down; None where the fluid GM is not positive."""
    marks: tuple[float, ...] = ()
    """Readings at the draft marks asked for, in their order [m]."""

    @property
    def gm_solid(self) -> float:
        """Metacentric height without free surfaces [m]."""
        return self.hydrostatics.km_transverse - self.loading.vcg

    @property
    def gm_fluid(self) -> float:
        """Metacentric height less the loss by free surfaces [m]."""
        return self.gm_solid - self.loading.free_surface_moment / self.loading.mass

    def waterline_at(self, x: float) -> float:
        """Give the height of the waterline on the centreline at x [m] above the baseline [m]."""
        h = self.hydrostatics
        return h.draft + h.trim * (0.5 - x / h.length)

    def draft_at_marks(self, x: float, zero: float = 0.0) -> float:
        """Give the reading of draft marks at x [m] whose zero is at the height `zero` [m], mean of both
        sides."""
        return self.waterline_at(x) - zero


def floating_position(
    form: Buoyant, weights: Sequence[Weight], tanks: Sequence[TankLoad], density: float
) -> FloatingPosition:
    """Find how a ship floats under weights and tanks.

    Formula: draft and trim from `float_at`, the liquid in each tank taken again at each trim until the trim
    stays within 1e-8 L; GM = KM - VCG; GM fluid = GM - FSM/W; tan(phi) = -TCG/GM fluid.
    Symbols: see `Weight`, `TankLoad`; density of the water [kg/m3]; TCG to port [m], phi starboard down
    [rad].
    Source: statics of a floating body (derived); list and free surface as in Derrett, Ship Stability for
    Masters and Mates.
    Range: list up to 5 degrees, deck edge clear at it, which a table of hydrostatics does not tell. Raises OutOfRange.
    """
    slope, near = 0.0, None
    for _ in range(ROUNDS):
        bodies = liquids(tanks, slope, 0.0, near)
        loading = summed(weights, tanks, bodies)
        found = float_at(form, loading.mass, loading.lcg, loading.vcg, density)
        change, slope = found.trim / form.length - slope, found.trim / form.length
        if abs(change) < SETTLED:
            heel = _list(loading, found)
            if heel is not None and isinstance(form, HullForm):
                _deck_edge_clear(form, found, heel)
            return FloatingPosition(loading, found, tuple(bodies), heel)
        near = [b.level + b.centroid[0] * change for b in bodies]
    raise OutOfRange("the trim does not settle: liquid in long slack tanks runs from end to end")


def _list(loading: Loading, found: Hydrostatics) -> float | None:
    gm = found.km_transverse - loading.vcg - loading.free_surface_moment / loading.mass
    if gm <= 0:
        return None
    heel = atan(-loading.tcg / gm)
    if abs(heel) > LARGEST_LIST:
        raise OutOfRange(f"a list of {abs(heel) * 57.29578:.1f} degrees is beyond the small angles, 5 degrees")
    return heel


def _deck_edge_clear(form: HullForm, found: Hydrostatics, heel: float) -> None:
    """Hold the deck edge of the low side against the water at the list found. Raises OutOfRange where it is under it.

    Formula: z(x) + y tan|phi| <= deck edge, y its half-breadth. Source: geometry (derived).
    """
    edge = form.curves.half_breadth(form.deck_heights)
    over = form.deck_heights - form.heights(found.draft, found.trim) - edge * tan(abs(heel))
    least = int(np.argmin(over))
    if over[least] < -NEAR:
        raise OutOfRange(
            f"at the list found, {degrees(abs(heel)):.2f} degrees, the deck edge is "
            f"{show(-over[least], 'centre')} under water {show(form.stations[least], 'centre')} forward of AP"
        )


def condition_floating(
    weights: Sequence[Mapping[str, Any] | Weight],
    density: float = 1025.0,
    tanks: Sequence[Mapping[str, Any] | TankLoad] = (),
    marks: Sequence[Mapping[str, float]] = (),
    offsets: Mapping[str, Any] | HullForm | None = None,
    curves: Mapping[str, Any] | HullCurves | None = None,
) -> FloatingPosition:
    """Find how a ship floats from converted input; see `floating_position`. Raises OutOfRange."""
    form = buoyant(offsets, curves)
    found = floating_position(form, weights_from_input(weights), tanks_from_input(tanks), density)
    return replace(found, marks=tuple(found.draft_at_marks(m["x"], m.get("zero", 0.0)) for m in marks))


def outputs_of(found: FloatingPosition) -> dict[str, Any]:
    """Give a floating position as the outputs of the method; without a list where she would not float upright."""
    h = found.hydrostatics
    outputs: dict[str, Any] = {
        "displacement": found.loading.mass,
        "lcg": found.loading.lcg,
        "tcg": found.loading.tcg,
        "vcg": found.loading.vcg,
        "free_surface_moment": found.loading.free_surface_moment,
        "draft_aft": h.draft_aft,
        "draft_forward": h.draft_forward,
        "draft_mean": h.draft,
        "trim": h.trim,
        "list": found.heel,
        "km": h.km_transverse,
        "gm_solid": found.gm_solid,
        "gm_fluid": found.gm_fluid,
        "drafts_at_marks": list(found.marks) or None,
    }
    return {name: figure for name, figure in outputs.items() if figure is not None}


METHOD = Method(
    name="condition.floating",
    title="Drafts, trim, list and metacentric height from weights",
    formula="rho V = W; LCG - LCB = (t/L) (VCG - KB); GM = KM - VCG - FSM/W; tan(list) = -TCG/GM",
    source=Citation("statics of a floating body; Derrett, Ship Stability for Masters and Mates", "", "derived"),
    valid="small list, up to 5 degrees; deck edge clear of the water at it",
    inputs={
        **HULL,
        "weights": WEIGHTS,
        "density": quantity("density", "Density of the water."),
        "tanks": TANKS,
        "marks": {
            "type": "array",
            "description": "Draft marks at which to give readings.",
            "items": {
                "type": "object",
                "additionalProperties": False,
                "required": ["x"],
                "properties": {
                    "x": quantity("length", "Position forward of AP."),
                    "zero": quantity("length", "Height of the marks' zero above the baseline."),
                },
            },
        },
    },
    outputs=(
        Symbol("displacement", "displacement", "mass", "t"),
        Symbol("lcg", "centre of gravity forward of AP", "length", "m"),
        Symbol("tcg", "centre of gravity to port", "length", "m"),
        Symbol("vcg", "centre of gravity above the baseline", "length", "m"),
        Symbol("free_surface_moment", "free-surface moment", "moment", "t*m"),
        Symbol("draft_aft", "draft at the after perpendicular", "length", "m"),
        Symbol("draft_forward", "draft at the forward perpendicular", "length", "m"),
        Symbol("draft_mean", "draft midway between perpendiculars", "length", "m"),
        Symbol("trim", "trim, positive by the stern", "length", "m"),
        Symbol("list", "list, positive starboard down", "angle", "deg"),
        Symbol("km", "transverse metacentre above the baseline", "length", "m"),
        Symbol("gm_solid", "metacentric height without free surfaces", "length", "m"),
        Symbol("gm_fluid", "metacentric height with free surfaces", "length", "m"),
        Symbol("drafts_at_marks", "readings at the draft marks, in their order", "length", "m"),
    ),
    kernel=condition_floating,
    figures=outputs_of,
    example={
        "offsets": EXAMPLE_OFFSETS,
        "weights": EXAMPLE_WEIGHTS,
        "density": "1025 kg/m3",
        "tanks": EXAMPLE_TANKS,
        "marks": [{"x": "1 m"}, {"x": "38 m", "zero": "-0.1 m"}],
    },
    optional=frozenset({"offsets", "curves", "density", "tanks", "marks"}),
    cautions=(
        "Stability is for a naval architect to confirm; weights and lightship are only as good as their source.",
    ),
)
