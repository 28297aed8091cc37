"""Show a magnitude in US customary units, in the unit that suits its size."""

from __future__ import annotations

from tenderwright.quantities.display import METRIC_UNITS, US_UNITS, decimals, in_unit, shown_unit

_SMALLER = {"length": (("in", 2), ("mil", 1)), "mass": (("lb", 1),)}
"""By dimension, the units and decimals taken where one of the unit before is more than the magnitude."""

_MIL = 2.54e-5
_LENGTHS = ("ft", "in", "ft-in", "'", '"', "foot", "inch", "yd")
_MASSES = ("lb", "lbs", "long_ton", "short_ton", "long_ton/ft", "lb/ft2")
_WRITTEN = (*_LENGTHS, *_MASSES, "ft2", "in2", "ft3", "US_gal", "imp_gal")


def customary(si: float, dimension: str) -> str:
    """Write an SI figure of a dimension that has a customary unit, such as `6.2 ft`, `0.37 in` or `5.9 mil`."""
    name, places = US_UNITS[dimension]
    for smaller, more in _SMALLER.get(dimension, ()):
        least = 0.05 if smaller == "mil" else 1.0
        if si == 0 or abs(_in(si, name, dimension)) >= least:
            break
        name, places = smaller, more
    return f"{decimals(_in(si, name, dimension), places)} {shown_unit(name)}"


def _in(si: float, name: str, dimension: str) -> float:
    return si / _MIL if name == "mil" else in_unit(si, name, dimension)


def is_customary(name: str) -> bool:
    """Tell whether a unit is a customary one, so that what is written in it is shown as written."""
    return name in _WRITTEN


def metric_unit(dimension: str) -> str:
    """Name the metric unit beside which a customary figure is shown."""
    return METRIC_UNITS[dimension]
