"""Abrasive for blasting, and the spent waste it becomes."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.coatings.ranges import require_not_negative, require_positive
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import quantity

PUBLISHED_RATES = (5 * 0.45359237 / 0.3048**2, 825e3 / 10219.0)
"""Least and greatest rate met, kg/m²: 5 lb/ft² = 24.4, and 825 t of slag on 10 219 m² = 80.7 (both common practice, no
source)."""

OLD_PAINT_DENSITY = 1400.0
"""Density of old dry paint, kg/m³ (common practice, no source)."""


def abrasive_mass(area: float, rate: float) -> float:
    """Find the abrasive for an area, kg: A c, with the rate c in kg/m² from the yard, the seller or a trial.

    Source: derived; published rates run from about 25 to 80 kg/m², so the rate is never assumed.
    Raises OutOfRange.
    """
    require_not_negative("area", area)
    require_positive("abrasive rate", rate)
    return area * rate


def within_published_rates(rate: float) -> bool:
    """Tell whether a rate in kg/m² lies within the published ones; outside them it wants a reason."""
    low, high = PUBLISHED_RATES
    return low <= rate <= high


def spent_mass(
    area: float,
    rate: float,
    old_film: float = 0.0,
    paint_density: float = OLD_PAINT_DENSITY,
    rust: float = 0.0,
) -> float:
    """Find the mass of spent abrasive with the old paint and rust in it, kg.

    Formula: m = A (c + t rho + r). Symbols: area A in m², rate c in kg/m², old_film t in m, paint_density rho
    in kg/m³, rust r in kg/m². Source: derived. Raises OutOfRange.
    """
    require_not_negative("old film", old_film)
    require_positive("density of the paint", paint_density)
    require_not_negative("rust", rust)
    return abrasive_mass(area, rate) + area * (old_film * paint_density + rust)


def _kernel(
    area: float,
    rate: float,
    old_film: float = 0.0,
    paint_density: float = OLD_PAINT_DENSITY,
    rust: float = 0.0,
) -> Mapping[str, object]:
    return {
        "abrasive": abrasive_mass(area, rate),
        "spent": spent_mass(area, rate, old_film, paint_density, rust),
        "within_published_rates": within_published_rates(rate),
    }


METHOD = Method(
    name="coating.abrasive",
    title="Abrasive and spent waste of blasting",
    formula="m = A · c; spent = A · (c + t · ρ + r)",
    source=Citation("Rate by area, and a balance of mass", standing="derived"),
    valid="rate from the yard, the seller or a trial patch; published rates run from 24.4 to 80.7 kg/m²",
    inputs={
        "area": quantity("area", "Area to blast."),
        "rate": quantity("area_density", "Abrasive used per area; say where the figure comes from."),
        "old_film": quantity("length", "Thickness of the old paint that comes off."),
        "paint_density": quantity("density", "Density of the old paint; 1.4 t/m3 unless given.", "1400 kg/m3"),
        "rust": quantity("area_density", "Rust that comes off, per area."),
    },
    outputs=(
        Symbol("abrasive", "abrasive to buy", "mass", "t"),
        Symbol("spent", "spent abrasive with paint and rust", "mass", "t"),
        Symbol("within_published_rates", "whether the rate is within the published ones", "truth", ""),
    ),
    kernel=_kernel,
    example={"area": "620 m2", "rate": "40 kg/m2", "old_film": "300 um", "rust": "0.5 kg/m2"},
    optional=frozenset({"old_film", "paint_density", "rust"}),
    cautions=(
        "lead, tributyltin or PCB in the old paint makes the whole waste hazardous, not the paint alone",
        "the density of old paint is common practice, no source",
    ),
)
