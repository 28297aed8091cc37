"""Density of sea and brackish water from salinity and temperature."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show

PURE = (999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9)
LINEAR = (8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9)
HALF = (-5.72466e-3, 1.0227e-4, -1.6546e-6)
SQUARE = 4.8314e-4


def water_density(salinity: float, temperature: float) -> dict[str, float]:
    """Compute the density of water at the surface by EOS-80.

    Formula: rho = A(t) + B(t)*S + C(t)*S^1.5 + d*S^2, A, B, C polynomials of degree 5, 4, 2.
    Symbols: practical salinity S, near enough g/kg; temperature t [degC]; rho [kg/m3].
    Source: Fofonoff and Millard, UNESCO technical papers in marine science 44 (EOS-80), at atmospheric
    pressure.
    Range: S 0-42, t -2 to 40 degC. Raises OutOfRange.
    """
    if not 0 <= salinity <= 42:
        raise OutOfRange(f"a salinity of {salinity:.2f} g/kg is outside 0 to 42")
    if not -2 <= temperature <= 40:
        raise OutOfRange(f"a temperature of {show(temperature, 'temperature', more=1)} is outside -2 to 40")
    pure, linear, half = (
        sum(c * temperature**n for n, c in enumerate(coefficients)) for coefficients in (PURE, LINEAR, HALF)
    )
    return {"density": pure + linear * salinity + half * salinity**1.5 + SQUARE * salinity**2}


METHOD = Method(
    name="water.density",
    title="Density of water from salinity and temperature",
    formula="rho = A(t) + B(t) S + C(t) S^1.5 + d S^2 (EOS-80, surface)",
    source=Citation("UNESCO technical papers in marine science 44 (EOS-80)"),
    valid="salinity 0 to 42 g/kg, temperature -2 to 40 degC, at the surface",
    inputs={
        "salinity": quantity("salinity", "Salinity."),
        "temperature": quantity("temperature", "Temperature of the water."),
    },
    outputs=(Symbol("density", "density of the water", "density", "kg/m3"),),
    kernel=water_density,
    example={"salinity": "35 g/kg", "temperature": "15 degC"},
    cautions=("Silt and pollution in a dock are not in it; a hydrometer reading at the berth goes before it.",),
)
