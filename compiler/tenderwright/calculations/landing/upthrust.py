"""Upthrust of the block touched first: while the water falls, and when she is about to lie on all the blocks."""

from __future__ import annotations

from collections.abc import Mapping
from math import radians, tan

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import plainly, show

LARGEST_DECLIVITY = radians(10.0)


def critical_upthrust(moment_to_change_trim: float, trim_to_remove: float, lever: float) -> float:
    """Give the upthrust when she is about to lie on all the blocks, P = MCT t_c/l, kg.

    Symbols: MCT [kg m/m]; t_c trim less that of the blocks [m], of either sign; l block to LCF [m].
    Source: Derrett, Ship Stability for Masters and Mates, pp. 246-249. Raises OutOfRange.
    """
    if lever <= 0 or moment_to_change_trim <= 0:
        raise OutOfRange("the distance from the first block to the centre of flotation and MCTC must be positive")
    return moment_to_change_trim * abs(trim_to_remove) / lever


def fall_per_upthrust(
    mass_per_immersion: float, moment_to_change_trim: float, lever: float, length: float, at: float | None = None
) -> float:
    """Give the fall of water per upthrust while one end bears, 1/TPI + l a/(MCT L), m/kg.

    Symbols: TPI [kg/m]; MCT [kg m/m]; l block to LCF, a lever at which the draft changes (the block itself
    where None), L length of the trim [m].
    Source: sinkage and trim by the moments of Derrett, Ship Stability for Masters and Mates, pp. 246-249 (derived).
    Raises OutOfRange.
    """
    if min(mass_per_immersion, moment_to_change_trim, lever, length) <= 0:
        raise OutOfRange("TPC, MCTC, the lever and the length must be more than nothing")
    return 1.0 / mass_per_immersion + lever * (lever if at is None else at) / (moment_to_change_trim * length)


def partial_upthrust(
    fall: float, mass_per_immersion: float, moment_to_change_trim: float, lever: float, length: float
) -> float:
    """Give the upthrust once the water has fallen by f since first touch, P = f/(1/TPI + l^2/(MCT L)), kg.

    Symbols: f [m], others as in `fall_per_upthrust`. Range: until she lies on all the blocks. Raises OutOfRange.
    """
    if fall < 0:
        raise OutOfRange(f"the fall of the water must not be less than nothing, got {plainly(fall, 'water level')}")
    return fall / fall_per_upthrust(mass_per_immersion, moment_to_change_trim, lever, length)


def _kernel(
    trim: float,
    length: float,
    lever: float,
    moment_to_change_trim: float,
    mass_per_immersion: float,
    declivity: float = 0.0,
    fall: float | None = None,
) -> Mapping[str, float]:
    if abs(declivity) >= LARGEST_DECLIVITY:
        raise OutOfRange("the declivity of the blocks must be within 10 degrees")
    removed = trim - length * tan(declivity)
    critical = critical_upthrust(moment_to_change_trim, removed, lever)
    last = critical * fall_per_upthrust(mass_per_immersion, moment_to_change_trim, lever, length)
    found = {"trim_to_remove": removed, "upthrust": critical, "fall_to_settling": last}
    if fall is None:
        return found
    if fall > last * (1 + 1e-9):
        raise OutOfRange(
            f"she lies on all the blocks once the water has fallen {show(last, 'centre', more=1)}; the "
            "partial stage ends there"
        )
    return found | {
        "partial_upthrust": partial_upthrust(fall, mass_per_immersion, moment_to_change_trim, lever, length)
    }


METHOD = Method(
    name="docking.upthrust",
    title="Upthrust of the first block while she lands",
    formula="t_c = t − L tan δ; P = MCTC t_c/l; partial stage P = f/(1/TPC + l²/(MCTC L)), f ≤ f_c",
    source=Citation(
        "Derrett, Ship Stability for Masters and Mates",
        "Drydocking and grounding, pp. 246-249; the partial stage and the sign of the declivity are derived",
    ),
    valid="TPC, MCTC and LCF held constant, which holds up to 5 to 10 % of displacement (common practice, no source); "
    "that is for you to look at, since the displacement is not asked for",
    inputs={
        "trim": quantity("length", "Trim afloat in the dock, draft aft less draft forward."),
        "length": quantity("length", "Length over which the trim is measured."),
        "lever": quantity("length", "From the block touched first to the centre of flotation."),
        "moment_to_change_trim": quantity("mass", "Moment to change trim per unit of trim (MCTC)."),
        "mass_per_immersion": quantity("line_load", "Mass per unit of immersion (TPC)."),
        "declivity": quantity("angle", "Angle by which the block line falls aft.", "0.2 deg"),
        "fall": quantity("length", "Fall of the water since the first touch, for a partial stage."),
    },
    outputs=(
        Symbol("trim_to_remove", "trim still to be taken off by the blocks", "length", "m"),
        Symbol("upthrust", "upthrust when about to lie on all the blocks", "mass", "t"),
        Symbol("fall_to_settling", "fall of water from first touch to lying on all the blocks", "length", "m"),
        Symbol("partial_upthrust", "upthrust at the fall given", "mass", "t"),
    ),
    kernel=_kernel,
    example={
        "trim": "0.5 m",
        "length": "84 m",
        "lever": "40 m",
        "moment_to_change_trim": "80 t*m/cm",
        "mass_per_immersion": "12 t/cm",
        "fall": "20 cm",
    },
    optional=frozenset({"declivity", "fall"}),
    cautions=("the docking plan and stability are for a naval architect and the dockmaster",),
)
