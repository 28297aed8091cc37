"""Usual densities of the liquids carried in tanks, each with its source."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from msgspec import Struct

from tenderwright.calculations.method import Citation

USUAL = Citation("Usual densities of liquids aboard", standing="common practice, no source")
ISO_8217 = Citation("ISO 8217:2010/2012", "density limits at 15 degC")


class LiquidDensity(Struct, frozen=True):
    """The density of one liquid [kg/m3], whether it is a limit rather than a usual value, and its source."""

    density: float
    source: Citation
    upper_limit: bool = False


LIQUID_DENSITIES: Mapping[str, LiquidDensity] = MappingProxyType(
    {
        "sea water": LiquidDensity(1025.0, USUAL),
        "fresh water": LiquidDensity(1000.0, USUAL),
        "heavy fuel oil": LiquidDensity(950.0, USUAL),
        "diesel oil": LiquidDensity(880.0, USUAL),
        "lubricating oil": LiquidDensity(900.0, USUAL),
        "cylinder oil": LiquidDensity(920.0, USUAL),
        "DMA": LiquidDensity(890.0, ISO_8217, upper_limit=True),
        "DMZ": LiquidDensity(890.0, ISO_8217, upper_limit=True),
        "DMB": LiquidDensity(900.0, ISO_8217, upper_limit=True),
        "RMA10": LiquidDensity(920.0, ISO_8217, upper_limit=True),
        "RMB30": LiquidDensity(960.0, ISO_8217, upper_limit=True),
        "RMD80": LiquidDensity(975.0, ISO_8217, upper_limit=True),
        "RME180": LiquidDensity(991.0, ISO_8217, upper_limit=True),
        "RMG": LiquidDensity(991.0, ISO_8217, upper_limit=True),
        "RMK": LiquidDensity(1010.0, ISO_8217, upper_limit=True),
    }
)
"""Densities [kg/m3] by the name of the liquid; prefer a measured value."""
