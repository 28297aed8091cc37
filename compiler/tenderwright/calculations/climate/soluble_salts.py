"""Soluble salts on steel from the conductivity of water that dissolved them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity
from tenderwright.calculations.verdict import within

SALT_CONSTANT = 5.0
"""kg of mixed salts per m² and S (kg m⁻² S⁻¹)."""

PATCH_VOLUME = 3e-6
"""Water put into the usual patch, m³."""
PATCH_AREA = 12.5e-4
"""Area under it, m²."""

SOURCE = Citation("ISO 8502-9", "conductance and surface density", standing="from memory")


@dataclass(frozen=True)
class SaltLimit:
    """A limit of soluble salts, mg/m² as sodium chloride."""

    name: str
    limit: float
    """kg/m²."""
    source: Citation


SALT_LIMITS = (
    SaltLimit("long term", 50e-6, Citation("IMO PSPC; MSC.1/Circ.1399", "long term, sodium chloride")),
    SaltLimit("short term", 80e-6, Citation("MSC.1/Circ.1399", "short term, sodium chloride")),
    SaltLimit("immersed, chloride", 30e-6, Citation("NAVSEA 009-32", "3 ug/cm2", standing="from memory")),
    SaltLimit("not immersed, chloride", 50e-6, Citation("NAVSEA 009-32", "5 ug/cm2", standing="from memory")),
)
"""Limits that have been published."""


def soluble_salts(conductivity: float, volume: float = PATCH_VOLUME, area: float = PATCH_AREA) -> float:
    """Find the soluble salts on a surface, kg/m².

    Formula: rho = c V dG/A, c = 5 kg m⁻² S⁻¹; 3 mL on 12.5 cm² give 1.2 mg/m² for each uS/cm.
    Symbols: conductivity dG in S/m, the rise over that of the clean water (1 uS/cm is 1e-4 S/m); volume V in m³;
    area A in m². Source: `SOURCE`. Raises OutOfRange.
    """
    if not (math.isfinite(conductivity) and conductivity >= 0.0):
        raise OutOfRange(f"the rise of conductivity cannot be less than nothing, got {conductivity:g} S/m")
    for name, value in (("volume of water", volume), ("area of the patch", area)):
        if not (math.isfinite(value) and value > 0.0):
            raise OutOfRange(f"the {name} must be more than nothing, got {value:g}")
    return SALT_CONSTANT * volume * conductivity / area


def _kernel(
    after: float,
    before: float = 0.0,
    volume: float = PATCH_VOLUME,
    area: float = PATCH_AREA,
    limit: float = SALT_LIMITS[0].limit,
) -> Mapping[str, float | bool]:
    salts = soluble_salts(1e-4 * (after - before), volume, area)
    return {"salts": salts, "passes": within(salts, limit)}


METHOD = Method(
    name="coating.soluble-salts",
    title="Soluble salts from conductivity",
    formula="ρ = c V Δγ / A, c = 5 kg/(m²·S)",
    source=SOURCE,
    valid="mixed salts as ISO 8502-9 reckons them; as sodium chloride about 1.1 of it",
    inputs={
        "after": number("Conductivity of the water drawn off, in uS/cm.", minimum=0),
        "before": number("Conductivity of the clean water, in uS/cm; nothing unless given.", minimum=0),
        "volume": quantity("volume", "Water put in; 3 mL unless given.", "3 mL"),
        "area": quantity("area", "Area of the patch; 12.5 cm2 unless given.", "12.5 cm2"),
        "limit": quantity("area_density", "Greatest that is allowed; 50 mg/m2 unless given.", "50 mg/m2"),
    },
    outputs=(
        Symbol("salts", "soluble salts", "area_density", "mg/m2"),
        Symbol("passes", "whether they are within the limit", "truth", ""),
    ),
    kernel=_kernel,
    example={"after": 38, "before": 3},
    optional=frozenset({"before", "volume", "area", "limit"}),
    cautions=("a limit stated as sodium chloride, as chloride, or as mixed salts is not the same limit",),
)
