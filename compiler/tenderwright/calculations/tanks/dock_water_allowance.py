"""Fresh-water allowance and dock-water allowance."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show

SEA, FRESH = 1025.0, 1000.0


def dock_water_allowance(
    density: float,
    displacement: float | None = None,
    mass_per_immersion: float | None = None,
    fresh_water_allowance: float | None = None,
) -> dict[str, float]:
    """Compute the change of mean draft between sea water and dock water.

    Formula: FWA = W*(1/1000 - 1/1025)*1025/TPI, which is W/(4*TPC) mm in t and t/cm; DWA = FWA*(1025 -
    rho)/25.
    Symbols: density rho of the dock water [kg/m3]; displacement W [kg]; mass per immersion TPI in sea water
    [kg/m] (TPC); or the fresh-water allowance itself [m]. FWA, DWA [m].
    Source: Derrett, Ship Stability for Masters and Mates, p. 79.
    Range: rho 1000 to 1025, near the draft that FWA is for. Raises OutOfRange.
    """
    if not FRESH <= density <= SEA:
        raise OutOfRange(f"a density of {show(density, 'density in kilograms')} is outside {FRESH:.0f} to {SEA:.0f}")
    if fresh_water_allowance is None:
        if displacement is None or mass_per_immersion is None:
            raise OutOfRange("give the fresh-water allowance, or displacement with mass per immersion")
        if displacement <= 0 or mass_per_immersion <= 0:
            raise OutOfRange("displacement and mass per immersion must be positive")
        fresh_water_allowance = displacement * (SEA - FRESH) / (FRESH * mass_per_immersion)
    elif displacement is not None or mass_per_immersion is not None:
        raise OutOfRange("give the fresh-water allowance, or displacement with mass per immersion, not both")
    return {
        "fresh_water_allowance": fresh_water_allowance,
        "dock_water_allowance": fresh_water_allowance * (SEA - density) / (SEA - FRESH),
    }


METHOD = Method(
    name="water.dock-water-allowance",
    title="Fresh-water and dock-water allowance",
    formula="FWA = W/(4 TPC) [mm]; DWA = FWA (1025 - rho)/25",
    source=Citation("Derrett, Ship Stability for Masters and Mates", "p. 79"),
    valid="dock water of 1000 to 1025 kg/m3, near the draft that TPC is for",
    inputs={
        "density": quantity("density", "Density of the dock water."),
        "displacement": quantity("mass", "Displacement."),
        "mass_per_immersion": quantity("line_load", "Mass per unit of immersion in sea water (TPC).", "6.77 t/cm"),
        "fresh_water_allowance": quantity("length", "Fresh-water allowance, in place of displacement and TPC."),
    },
    outputs=(
        Symbol("fresh_water_allowance", "fresh-water allowance", "length", "mm"),
        Symbol("dock_water_allowance", "rise of mean draft in the dock water", "length", "mm"),
    ),
    kernel=dock_water_allowance,
    example={"density": "1008 kg/m3", "fresh_water_allowance": "180 mm"},
    optional=frozenset({"displacement", "mass_per_immersion", "fresh_water_allowance"}),
)
