"""The greatest trim with which she may enter and still keep a required metacentric height as she settles."""

from __future__ import annotations

from collections.abc import Mapping
from math import tan
from typing import Any

from tenderwright.calculations.landing.stability import Form
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show


def greatest_upthrust(
    displacement: float, km: float, kg: float, least_gm: float, form: Form, free_surface_moment: float = 0.0
) -> float:
    """Give the upthrust at which one form of the virtual GM falls to `least_gm`, kg.

    Formula: (a) KM falls, P = (W (GM - x) - FSM)/KM; (b) KG rises, P = W - (W KG + FSM)/(KM - x), with x the
        required GM; without free surfaces these are (GM - x) W/KM and (GM - x) W/(KG + GM - x).
    Symbols: W [kg]; KM, KG, x [m]; FSM [kg m].
    Source: Derrett, Ship Stability for Masters and Mates, pp. 246-249. Raises OutOfRange where she has not that
    GM afloat.
    """
    if displacement <= 0 or km <= 0 or not 0 <= least_gm < km:
        raise OutOfRange("displacement and KM must be positive, and the required GM not negative and below KM")
    if form == "KM falls":
        upthrust = (displacement * (km - kg - least_gm) - free_surface_moment) / km
    else:
        upthrust = displacement - (displacement * kg + free_surface_moment) / (km - least_gm)
    if upthrust < 0:
        raise OutOfRange(
            "her metacentric height afloat is already below the "
            f"{show(least_gm, 'metacentric height', more=1)} required"
        )
    return upthrust


def _kernel(
    displacement: float,
    km: float,
    kg: float,
    least_gm: float,
    lever: float,
    moment_to_change_trim: float,
    free_surface_moment: float = 0.0,
    length: float | None = None,
    declivity: float = 0.0,
) -> Mapping[str, Any]:
    if lever <= 0 or moment_to_change_trim <= 0:
        raise OutOfRange("the distance from the first block to the centre of flotation and MCTC must be positive")
    if length is None and declivity != 0.0:
        raise OutOfRange("blocks with declivity need the length over which the trim is measured")
    resting = (length or 0.0) * tan(declivity)
    forms: tuple[Form, Form] = ("KM falls", "KG rises")
    falls, rises = (greatest_upthrust(displacement, km, kg, least_gm, form, free_surface_moment) for form in forms)
    trim_falls, trim_rises = (resting + p * lever / moment_to_change_trim for p in (falls, rises))
    return {
        "upthrust_km_falls": falls,
        "upthrust_kg_rises": rises,
        "trim_km_falls": trim_falls,
        "trim_kg_rises": trim_rises,
        "trim": min(trim_falls, trim_rises),
        "conservative": forms[0] if falls <= rises else forms[1],
    }


METHOD = Method(
    name="docking.entry-trim",
    title="Greatest entry trim for a required metacentric height",
    formula="(a) P = (W(GM − x) − FSM)/KM; (b) P = W − (W KG + FSM)/(KM − x); t = P l/MCTC + L tan δ",
    source=Citation("Derrett, Ship Stability for Masters and Mates", "Drydocking and grounding, pp. 246-249"),
    valid="TPC, MCTC, LCF and KM held constant; trim by the end that touches first",
    inputs={
        "displacement": quantity("mass", "Displacement afloat."),
        "km": quantity("length", "Transverse metacentre above the keel."),
        "kg": quantity("length", "Centre of gravity above the keel, without free surfaces."),
        "least_gm": quantity("length", "Metacentric height required as she settles."),
        "lever": quantity("length", "From the block touched first to the centre of flotation."),
        "moment_to_change_trim": quantity("mass", "Moment to change trim per unit of trim (MCTC)."),
        "free_surface_moment": quantity("moment", "Sum over the slack tanks.", "100 t*m"),
        "length": quantity("length", "Length over which the trim is measured; needed with declivity.", "100 m"),
        "declivity": quantity("angle", "Angle by which the block line falls aft.", "0.2 deg"),
    },
    outputs=(
        Symbol("upthrust_km_falls", "greatest upthrust, form (a)", "mass", "t"),
        Symbol("upthrust_kg_rises", "greatest upthrust, form (b)", "mass", "t"),
        Symbol("trim_km_falls", "greatest trim, form (a)", "length", "m"),
        Symbol("trim_kg_rises", "greatest trim, form (b)", "length", "m"),
        Symbol("trim", "lesser of the two", "length", "m"),
        Symbol("conservative", "form that gives the lesser trim", "text", ""),
    ),
    kernel=_kernel,
    example={
        "displacement": "3000 t",
        "km": "6 m",
        "kg": "5.5 m",
        "least_gm": "0.3 m",
        "lever": "48 m",
        "moment_to_change_trim": "40 t*m/cm",
    },
    optional=frozenset({"free_surface_moment", "length", "declivity"}),
    cautions=("the required GM is an input: the naval architect, the yard or the society states it",),
)
