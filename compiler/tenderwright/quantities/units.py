"""Units of the trade, defined afresh in pint so that no unit is read as something else."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Any

import pint

# Exact definitions: metric by the SI Brochure (9th ed.); inch, foot, pound, gallon by the international
# yard and pound agreement (1959) and NIST Handbook 44, Appendix C; nautical mile 1852 m.
_DEFINITIONS = """
metre = [length] = m
kilogram = [mass] = kg
second = [time] = s
ampere = [current] = A
kelvin = [temperature] = K
each = [count]
person_hour = [work]
radian = [] = rad
degree = 0.017453292519943295 * radian = deg
percent = 0.01
mm = 0.001 * metre
cm = 0.01 * metre
km = 1000 * metre
um = 1e-6 * metre
inch = 0.0254 * metre = in
foot = 0.3048 * metre = ft
yard = 0.9144 * metre = yd
mil = 0.0000254 * metre
nmi = 1852 * metre
g = 0.001 * kilogram
mg = 1e-6 * kilogram
t = 1000 * kilogram
lb = 0.45359237 * kilogram
long_ton = 1016.0469088 * kilogram
short_ton = 907.18474 * kilogram
L = 0.001 * metre ** 3
mL = 1e-6 * metre ** 3
US_gal = 0.003785411784 * metre ** 3
imp_gal = 0.00454609 * metre ** 3
minute = 60 * second = min
hour = 3600 * second = h
day = 86400 * second = d
week = 604800 * second
yr = 31557600 * second
N = kilogram * metre / second ** 2
kN = 1000 * N
Pa = N / metre ** 2
kPa = 1000 * Pa
MPa = 1e6 * Pa
bar = 1e5 * Pa
psi = 6894.757293168 * Pa
mA = 0.001 * ampere
kWh = 3.6e6 * kilogram * metre ** 2 / second ** 2
"""

# How people write units; each maps to a pint expression. `m2` and the like are the trade's plain form.
_SPELLINGS = {
    "m2": "m**2", "m²": "m**2", "m^2": "m**2", "mm2": "mm**2", "cm2": "cm**2", "ft2": "ft**2", "in2": "in**2",
    "m3": "m**3", "m³": "m**3", "m^3": "m**3", "ft3": "ft**3", "m4": "m**4",
    "µm": "um", "μm": "um", "l": "L", "litre": "L", "litres": "L", "metres": "metre", "tonne": "t", "tonnes": "t",
    "°": "deg", "%": "percent", "ea": "each", "pcs": "each", "no": "each", "hours": "hour", "days": "day", "weeks": "week",
    "years": "yr", "year": "yr", "a": "yr", "°C": "degC", "lbs": "lb", '"': "in", "'": "ft", "kg/m2": "kg/m**2",
    "mg/m2": "mg/m**2", "g/m2": "g/m**2", "m2/L": "m**2/L", "t/m3": "t/m**3", "kg/m3": "kg/m**3", "g/cm3": "g/cm**3",
    "mA/m2": "mA/m**2", "lb/ft2": "lb/ft**2", "ft2/US_gal": "ft**2/US_gal", "MPa": "MPa", "visit": "each", "set": "each",
    "sets": "each", "shots": "each", "shot": "each", "kg/L": "kg/L", "m/s": "m/s", "person-hours": "person_hour", "person_hours": "person_hour",
    "t*m": "t*m", "t.m": "t*m", "ft-in": "ft", "mm/yr": "mm/yr", "person-hour": "person_hour", "knots": "nmi/h", "kn": "nmi/h", "g/kg": "g/kg",
}  # fmt: skip

# Words that mean different things in different places; the reader is asked to say which.
AMBIGUOUS = {
    "ton": ("t", "long_ton", "short_ton"),
    "tons": ("t", "long_ton", "short_ton"),
    "gallon": ("US_gal", "imp_gal"),
    "gallons": ("US_gal", "imp_gal"),
    "gal": ("US_gal", "imp_gal"),
    "mile": ("nmi", "km"),
    "miles": ("nmi", "km"),
}

_DIMENSIONS = {
    "length": "metre",
    "area": "metre**2",
    "volume": "metre**3",
    "mass": "kilogram",
    "density": "kilogram/metre**3",
    "pressure": "Pa",
    "force": "N",
    "time": "second",
    "speed": "metre/second",
    "line_load": "kilogram/metre",
    "area_density": "kilogram/metre**2",
    "spreading_rate": "1/metre",
    "each": "each",
    "person_hour": "person_hour",
    "current": "ampere",
    "current_density": "ampere/metre**2",
    "moment": "kilogram*metre",
    "second_moment": "metre**4",
    "rate_of_loss": "metre/second",
    "energy": "kilogram*metre**2/second**2",
}


@dataclass(frozen=True)
class Unit:
    """A unit: the factor that takes a number in it to SI, and what it measures."""

    name: str
    factor: float
    signature: str
    """The dimensions in base units, as text; equal for units that measure the same thing."""
    dimensionless: bool = False


class UnknownUnit(ValueError):
    """The unit is not in the list of definitions."""


class AmbiguousUnit(ValueError):
    """The unit means different things in different places; `choices` are what it may mean."""

    def __init__(self, unit: str, choices: tuple[str, ...]) -> None:
        super().__init__(unit)
        self.unit = unit
        self.choices = choices


@cache
def registry() -> pint.UnitRegistry[Any]:
    """Make the unit registry from our own definitions alone."""
    units: pint.UnitRegistry[Any] = pint.UnitRegistry(None)
    units.load_definitions(_DEFINITIONS.strip().splitlines())
    return units


@cache
def unit(name: str) -> Unit:
    """Find a unit by the name people write; raises UnknownUnit or AmbiguousUnit."""
    if name in AMBIGUOUS:
        raise AmbiguousUnit(name, AMBIGUOUS[name])
    try:
        base = registry().parse_units(_SPELLINGS.get(name, name)).dimensionality
        factor = registry().Quantity(1.0, _SPELLINGS.get(name, name)).to_base_units().magnitude
    except Exception as error:  # pint raises many kinds for text that is no unit
        raise UnknownUnit(name) from error
    return Unit(name, float(factor), str(base), not base)


@cache
def signature(dimension: str) -> str:
    """Give the base dimensions of one of our named dimensions."""
    return unit(_DIMENSIONS[dimension]).signature


def base_expression(dimension: str) -> str:
    """Give the base units of one of our named dimensions; empty for a name that is none."""
    return _DIMENSIONS.get(dimension, "")


def dimension_of(found: Unit) -> str:
    """Name what a unit measures, in a word."""
    for name in _DIMENSIONS:
        if signature(name) == found.signature:
            return name
    return "number" if found.dimensionless else found.signature


def known_units() -> list[str]:
    """List the unit names that may be written."""
    return sorted(
        {line.split("=")[0].strip() for line in _DEFINITIONS.strip().splitlines()} | set(_SPELLINGS)
    )
