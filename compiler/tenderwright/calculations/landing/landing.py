"""A landing from her offsets or her hydrostatics: the hydrostatics read again at every step, beside the hand method."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.hydrostatics.buoyant import HULL, buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS
from tenderwright.calculations.landing.curve import LandingCurve, held_curve, landing_curve
from tenderwright.calculations.landing.exact import Lander, greatest_entry_trim, held_particulars, settle_exactly
from tenderwright.calculations.landing.held import Afloat, BlockLine
from tenderwright.calculations.landing.settling import (
    BLOCK_INPUTS,
    LANDING_SYMBOLS,
    LARGE_SHARE,
    LEAST_GM,
    SHARE_SYMBOLS,
    Landing,
    outputs_of,
    settle,
)
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import number, quantity


class BothLandings(Struct, frozen=True):
    """A landing by either way, with its curves."""

    afloat: Afloat
    """Her particulars before she touches."""
    gm_afloat: float
    """The lesser virtual metacentric height as she touches, m."""
    density: float
    """Of the dock's water, kg/m3."""
    exact: Landing
    held: Landing
    curve: LandingCurve
    held_curve: LandingCurve
    entry_trim: float | None
    """Greatest trim on entering that keeps the least metacentric height, hydrostatics read again, m."""

    @property
    def bear_within(self) -> float | None:
        """Give the fall of the water below settling within which side blocks and shores bear, by either way, m.

        The lesser of the two; less than nothing where they would have to bear before she settles.
        """
        found = [one.bearing.margin for one in (self.exact, self.held) if one.bearing is not None]
        return min(found, default=None)

    @property
    def upthrust_share(self) -> float:
        """Give the upthrust at settling by displacement."""
        return self.exact.settling.upthrust / self.afloat.displacement


def lander(
    displacement: float,
    lcg: float,
    vcg: float,
    block_aft: float,
    block_forward: float,
    density: float = 1025.0,
    declivity: float = 0.0,
    keel: float = 0.0,
    free_surface_moment: float = 0.0,
    least_gm: float | None = None,
    offsets: Mapping[str, Any] | HullForm | None = None,
    curves: Mapping[str, Any] | HullCurves | None = None,
    rake: float = 0.0,
) -> Lander:
    """Set her over the blocks from converted input. Raises OutOfRange."""
    form, blocks = buoyant(offsets, curves), BlockLine(block_aft, block_forward, declivity)
    return Lander(form, displacement, lcg, vcg, density, blocks, keel, free_surface_moment, least_gm, rake)


def both_landings(**inputs: Any) -> BothLandings:
    """Land her by either way, from the inputs of `lander`; see `settle_exactly` and `settle`. Raises OutOfRange."""
    ship = lander(**inputs)
    afloat, blocks = held_particulars(ship), ship.blocks
    exact, held = settle_exactly(ship), settle(afloat, blocks, ship.least_gm)
    curve = landing_curve(ship)
    gm, falls = ship.stability(ship.afloat).gm, held_curve(afloat, blocks, curve.fall)
    return BothLandings(afloat, gm, ship.density, exact, held, curve, falls, greatest_entry_trim(ship))


def figures_of(found: BothLandings) -> dict[str, Any]:
    """Give both landings as the outputs of the method."""
    curve = found.curve
    return (
        outputs_of(found.exact)
        | outputs_of(found.held, "_held")
        | {
            "upthrust_share": found.upthrust_share,
            "hand_method_in_range": found.upthrust_share <= LARGE_SHARE,
            "bear_within": found.bear_within,
            "entry_trim": found.entry_trim,
            "curve_water": curve.water.tolist(),
            "curve_upthrust": curve.upthrust.tolist(),
            "curve_gm": curve.gm.tolist(),
        }
    )


METHOD = Method(
    name="docking.landing",
    title="Landing with the hydrostatics read again, beside the hand method",
    formula="ρV + P = W; W(LCG − s VCG) = ρV(LCB − s KB) + P(x − s z); RM = (W − P) KM − W KG + P z − FSM; side blocks "
    "and shores bear before RM/W is the least GM",
    source=Citation("Statics of a floating body with an upward force at the block", standing="derived"),
    valid="upright, deck edge clear of the water, straight keel line; liquids keep their centres as she trims",
    inputs={
        **HULL,
        "displacement": quantity("mass", "Displacement afloat."),
        "lcg": quantity("length", "Centre of gravity, forward of the after perpendicular."),
        "vcg": quantity("length", "Centre of gravity above the baseline, without free surfaces."),
        **BLOCK_INPUTS,
        "density": quantity("density", "Density of the dock's water."),
        "keel": quantity("length", "Keel that the blocks touch, above the baseline; minus for a bar keel.", "-0.18 m"),
        "rake": number("Rise of that keel forward against the baseline, per length; then `keel` is at AP."),
        "free_surface_moment": quantity("moment", "Sum over the slack tanks."),
        "least_gm": LEAST_GM,
    },
    outputs=(
        *LANDING_SYMBOLS,
        *(
            Symbol(f"{s.name}_held", f"{s.meaning}; particulars held constant", s.dimension, s.unit)
            for s in LANDING_SYMBOLS
        ),
        *SHARE_SYMBOLS,
        Symbol("bear_within", "fall of water below settling within which side blocks and shores bear", "length", "m"),
        Symbol("entry_trim", "greatest trim on entering that keeps the least metacentric height", "length", "m"),
        Symbol("curve_water", "water over the block touched first, from touch to dry", "length", "m"),
        Symbol("curve_upthrust", "upthrust at each level", "mass", "t"),
        Symbol("curve_gm", "lesser virtual GM at each level", "length", "m"),
    ),
    kernel=both_landings,
    figures=figures_of,
    example={
        "offsets": EXAMPLE_OFFSETS,
        "displacement": "480 t",
        "lcg": "18.9 m",
        "vcg": "3.1 m",
        "block_aft": "4 m",
        "block_forward": "36 m",
        "density": "1012 kg/m3",
        "free_surface_moment": "5 t*m",
    },
    optional=frozenset(
        {"offsets", "curves", "density", "declivity", "keel", "rake", "free_surface_moment", "least_gm"}
    ),
    cautions=(
        "drafts are above the keel on the blocks",
        "side blocks and shores are not counted: they bear before the metacentric height is the least asked for",
        "the docking plan and stability are for a naval architect and the dockmaster",
    ),
)
