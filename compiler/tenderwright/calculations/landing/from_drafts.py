"""Upthrust and where it acts, from the drafts read before and after she touched."""

from __future__ import annotations

from tenderwright.calculations.landing.upthrust import fall_per_upthrust
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity


def upthrust_from_drafts(
    length: float,
    lcf: float,
    mass_per_immersion: float,
    moment_to_change_trim: float,
    before_aft: float,
    before_forward: float,
    after_aft: float,
    after_forward: float,
) -> dict[str, float]:
    """Find the upthrust and its place from two readings of the drafts.

    Formula: P = TPI (d - d') at the LCF; distance forward of the LCF = MCT (t' - t)/P; rise of water to float her =
        P (1/TPI + l^2/(MCT L)).
    Symbols: L, LCF forward of AP, drafts [m]; TPI [kg/m]; MCT [kg m/m]; d, t before and d', t' after.
    Source: moments about the centre of flotation (derived), as in Derrett, Ship Stability for Masters and Mates,
    pp. 246-249. Range: TPC and MCTC held constant. Raises OutOfRange where the drafts show no upthrust.
    """
    if min(length, mass_per_immersion, moment_to_change_trim) <= 0:
        raise OutOfRange("length, TPC and MCTC must be more than nothing")
    share = lcf / length
    before = before_aft - (before_aft - before_forward) * share
    after = after_aft - (after_aft - after_forward) * share
    upthrust = mass_per_immersion * (before - after)
    if upthrust <= 0:
        raise OutOfRange("the true mean draft has not become less, so the drafts show no upthrust")
    change = (after_aft - after_forward) - (before_aft - before_forward)
    forward = moment_to_change_trim * change / upthrust
    rise = upthrust / mass_per_immersion
    if forward != 0.0:
        rise = upthrust * fall_per_upthrust(mass_per_immersion, moment_to_change_trim, abs(forward), length)
    return {"upthrust": upthrust, "position": lcf + forward, "distance_from_lcf": forward, "rise_to_float": rise}


METHOD = Method(
    name="docking.upthrust-from-drafts",
    title="Upthrust and its place from the drafts read",
    formula="P = TPC (d − d'); l = MCTC (t' − t)/P; rise to float = P(1/TPC + l²/(MCTC L))",
    source=Citation("Moments about the centre of flotation", standing="derived"),
    valid="TPC and MCTC held constant; one place of contact",
    inputs={
        "length": quantity("length", "Length between the drafts."),
        "lcf": quantity("length", "Centre of flotation, forward of the after perpendicular."),
        "mass_per_immersion": quantity("line_load", "Mass per unit of immersion (TPC)."),
        "moment_to_change_trim": quantity("mass", "Moment to change trim per unit of trim (MCTC)."),
        "before_aft": quantity("length", "Draft aft before."),
        "before_forward": quantity("length", "Draft forward before."),
        "after_aft": quantity("length", "Draft aft after."),
        "after_forward": quantity("length", "Draft forward after."),
    },
    outputs=(
        Symbol("upthrust", "upthrust", "mass", "t"),
        Symbol("position", "where it acts, forward of AP", "length", "m"),
        Symbol("distance_from_lcf", "distance forward of the centre of flotation", "length", "m"),
        Symbol("rise_to_float", "rise of water that floats her again", "length", "m"),
    ),
    kernel=upthrust_from_drafts,
    example={
        "length": "142 m",
        "lcf": "71 m",
        "mass_per_immersion": "23.4 t/cm",
        "moment_to_change_trim": "192 t*m/cm",
        "before_aft": "8.86 m",
        "before_forward": "6.70 m",
        "after_aft": "9.30 m",
        "after_forward": "5.90 m",
    },
)
