"""Drafts in the dock's water from those outside it: bodily sinkage and the trim that comes with it."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show

LIGHTEST, HEAVIEST = 980, 1050
"""Densities of the water, kg/m3, wider than any river, dock or sea (judgement, no source)."""
SEA = 1025.0


def drafts_in_dock_water(
    displacement: float,
    length: float,
    draft_aft: float,
    draft_forward: float,
    lcf: float,
    lcb: float,
    mass_per_immersion: float,
    moment_to_change_trim: float,
    density_outside: float,
    density_dock: float,
) -> dict[str, float]:
    """Find the drafts after she passes into water of another density.

    Formula: sinkage = W (1/rho2 - 1/rho1) 1025/TPI; shift of buoyancy BB1 = (LCB - LCF)(rho2/rho1 - 1);
        change of trim by the stern = W BB1/MCT2, MCT2 = MCT rho2/1025, shared by the LCF.
    Symbols: W [kg]; L, drafts, LCF and LCB forward of AP [m]; TPI [kg/m] and MCT [kg m/m] in sea water of 1025; rho
        outside and in the dock [kg/m3]. All results in m but MCT2.
    Source: Archimedes' principle and moments about the centre of flotation (derived).
    Range: TPC, MCTC, LCF and LCB held constant over the sinkage; water of 980 to 1050 kg/m3. Raises OutOfRange.
    """
    positive = (displacement, length, mass_per_immersion, moment_to_change_trim, density_outside, density_dock)
    if min(positive) <= 0:
        raise OutOfRange("displacement, length, TPC, MCTC and both densities must be more than nothing")
    for density in (density_outside, density_dock):
        if not LIGHTEST <= density <= HEAVIEST:
            raise OutOfRange(
                f"water of {show(density, 'density in kilograms', more=-1)} is not water that ships float "
                f"in, {LIGHTEST} to {HEAVIEST}"
            )
    sinkage = displacement * (1.0 / density_dock - 1.0 / density_outside) * SEA / mass_per_immersion
    shift = (lcb - lcf) * (density_dock / density_outside - 1.0)
    moment = moment_to_change_trim * density_dock / SEA
    trim = displacement * shift / moment
    return {
        "sinkage": sinkage,
        "shift_of_buoyancy": shift,
        "moment_to_change_trim": moment,
        "change_of_trim": trim,
        "draft_aft": draft_aft + sinkage + trim * lcf / length,
        "draft_forward": draft_forward + sinkage - trim * (1.0 - lcf / length),
    }


METHOD = Method(
    name="docking.dock-water",
    title="Drafts in the dock's water",
    formula="sinkage = W(1/ρ₂ − 1/ρ₁)·1025/TPC; BB₁ = (LCB − LCF)(ρ₂/ρ₁ − 1); change of trim = W BB₁/MCTC₂",
    source=Citation("Archimedes' principle and moments about the centre of flotation", standing="derived"),
    valid="TPC, MCTC, LCF and LCB held constant over the sinkage; water of 980 to 1050 kg/m3",
    inputs={
        "displacement": quantity("mass", "Displacement."),
        "length": quantity("length", "Length between the drafts."),
        "draft_aft": quantity("length", "Draft aft outside the dock."),
        "draft_forward": quantity("length", "Draft forward outside the dock."),
        "lcf": quantity("length", "Centre of flotation, forward of the after perpendicular."),
        "lcb": quantity("length", "Centre of buoyancy, forward of the after perpendicular."),
        "mass_per_immersion": quantity("line_load", "TPC in sea water of 1025 kg/m3."),
        "moment_to_change_trim": quantity("mass", "MCTC in sea water of 1025 kg/m3."),
        "density_outside": quantity("density", "Density of the water outside."),
        "density_dock": quantity("density", "Density of the water in the dock."),
    },
    outputs=(
        Symbol("sinkage", "bodily sinkage; minus where she rises", "length", "cm"),
        Symbol("shift_of_buoyancy", "shift of the centre of buoyancy forward", "length", "m"),
        Symbol("moment_to_change_trim", "MCTC in the dock's water", "mass", "t*m/cm"),
        Symbol("change_of_trim", "change of trim by the stern", "length", "m"),
        Symbol("draft_aft", "draft aft in the dock", "length", "m"),
        Symbol("draft_forward", "draft forward in the dock", "length", "m"),
    ),
    kernel=drafts_in_dock_water,
    example={
        "displacement": "19200 t",
        "length": "235 m",
        "draft_aft": "10.88 m",
        "draft_forward": "9.42 m",
        "lcf": "112.5 m",
        "lcb": "120.5 m",
        "mass_per_immersion": "32 t/cm",
        "moment_to_change_trim": "254 t*m/cm",
        "density_outside": "1005 kg/m3",
        "density_dock": "1020 kg/m3",
    },
)
