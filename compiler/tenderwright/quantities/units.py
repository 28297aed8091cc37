"""Units of the trade, defined afresh in pint so that no unit is read as something else.

Importing pint takes longer than reading a package, so everyday_units.json beside this file keeps what pint makes of
every spelling below; `python -m tenderwright.quantities.units` writes it, and pint itself reads any other unit.
"""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from msgspec import Struct

if TYPE_CHECKING:
    import pint

EVERYDAY = Path(__file__).with_name("everyday_units.json")

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
MN = 1e6 * N
bar = 1e5 * Pa
psi = 6894.757293168 * Pa
mA = 0.001 * ampere
volt = kilogram * metre ** 2 / second ** 3 / ampere = V
ohm = volt / ampere
kWh = 3.6e6 * kilogram * metre ** 2 / second ** 2
"""

# How people write units; each maps to a pint expression. `m2` and the like are the trade's plain form.
_SPELLINGS = {
    "m2": "m**2", "m²": "m**2", "m^2": "m**2", "mm2": "mm**2", "cm2": "cm**2", "ft2": "ft**2", "in2": "in**2",
    "m3": "m**3", "m³": "m**3", "m^3": "m**3", "ft3": "ft**3", "m4": "m**4", "µm": "um", "μm": "um", "l": "L",
    "litre": "L", "litres": "L", "metres": "metre", "tonne": "t", "tonnes": "t", "°": "deg", "%": "percent",
    "ea": "each", "pcs": "each", "no": "each", "hours": "hour", "days": "day", "weeks": "week", "years": "yr",
    "year": "yr", "a": "yr", "°C": "degC", "lbs": "lb", '"': "in", "'": "ft", "kg/m2": "kg/m**2", "mg/m2": "mg/m**2",
    "g/m2": "g/m**2", "m2/L": "m**2/L", "t/m3": "t/m**3", "kg/m3": "kg/m**3", "g/cm3": "g/cm**3", "mA/m2": "mA/m**2",
    "lb/ft2": "lb/ft**2", "ft2/US_gal": "ft**2/US_gal", "MPa": "MPa", "visit": "each", "set": "each", "sets": "each",
    "shots": "each", "shot": "each", "kg/L": "kg/L", "m/s": "m/s", "person-hours": "person_hour",
    "person_hours": "person_hour", "t*m": "t*m", "t.m": "t*m", "ft-in": "ft", "mm/yr": "mm/yr",
    "person-hour": "person_hour", "knots": "nmi/h", "kn": "nmi/h", "g/kg": "g/kg",
}  # fmt: skip

# Compound units in everyday use that need no spelling of their own.
_COMPOUND = (
    "t/m",
    "kg/m",
    "lb/ft",
    "long_ton/ft",
    "long_ton/m",
    "t/m2",
    "kN/m",
    "kN/m2",
    "N/mm2",
    "m3/h",
    "L/h",
    "mm/h",
    "t/cm",
    "t*m/cm",
    "A/m2",
    "t*m",
    "MN/m",
    "person_hour/t",
)

_BY_CHANCE = {"mass": ("t*m/cm",), "speed": ("mm/yr", "mm/h"), "rate_of_loss": ("kn", "knots", "m/s")}
"""Units that are never used for what they measure by their dimensions alone."""

_POWER = re.compile(r"(?<![A-Za-z_])(mm|cm|m|in|ft|yd)(?:\^?([234])|([²³]))(?![0-9A-Za-z])")
"""A power written the plain way inside a compound unit, such as the `m2` of `t/m2`."""

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
    "stiffness": "kilogram/second**2",
    "potential": "kilogram*metre**2/second**3/ampere",
    "resistance": "kilogram*metre**2/second**3/ampere**2",
    "temperature_difference": "kelvin",
    "work_rate": "person_hour/kilogram",
}


_NUMBERS = dict.fromkeys(("%", "percent"), "fraction") | dict.fromkeys(("deg", "degree", "°", "rad", "radian"), "angle")
"""What a unit without dimensions of its own measures."""


class Unit(Struct, frozen=True):
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
    import pint

    units: pint.UnitRegistry[Any] = pint.UnitRegistry(None)
    units.load_definitions(_DEFINITIONS.strip().splitlines())
    return units


@cache
def unit(name: str) -> Unit:
    """Find a unit by the name people write; raises UnknownUnit or AmbiguousUnit."""
    if name in AMBIGUOUS:
        raise AmbiguousUnit(name, AMBIGUOUS[name])
    kept = _everyday().get(name)
    return Unit(name, kept[0], kept[1], kept[1] == "dimensionless") if kept else worked_out(name)


@cache
def _everyday() -> dict[str, tuple[float, str]]:
    kept: dict[str, tuple[float, str]] = json.loads(EVERYDAY.read_text("utf-8"))
    return kept


def worked_out(name: str) -> Unit:
    """Work a unit out by pint; raises UnknownUnit or AmbiguousUnit."""
    for word in re.findall(r"[A-Za-z_]+", name):
        if word in AMBIGUOUS:
            raise AmbiguousUnit(name, tuple(name.replace(word, choice) for choice in AMBIGUOUS[word]))
    expression = _SPELLINGS.get(name) or _POWER.sub(_plain_power, name)
    try:
        base = registry().parse_units(expression).dimensionality
        factor = registry().Quantity(1.0, expression).to_base_units().magnitude
    except Exception as error:  # pint raises many kinds for text that is no unit
        raise UnknownUnit(name) from error
    return Unit(name, float(factor), str(base), not base)


def _plain_power(match: re.Match[str]) -> str:
    return f"{match[1]}**{match[2] or {'²': 2, '³': 3}[match[3]]}"


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
    if found.dimensionless:
        return _NUMBERS.get(found.name, "number")
    return found.signature


def known_units() -> list[str]:
    """List the unit names that may be written."""
    return sorted((_registered() | set(_SPELLINGS)) - {"°C"})


def units_measuring(dimension: str) -> tuple[str, ...]:
    """List the units of a dimension in everyday use, but for those that measure it by chance."""
    alike = (name for name in [*known_units(), *_COMPOUND] if unit(name).signature == signature(dimension))
    return tuple(dict.fromkeys(name for name in alike if name not in _BY_CHANCE.get(dimension, ())))


def everyday_units() -> str:
    """Write what pint makes of every spelling as the text of everyday_units.json."""
    found = [worked_out(name) for name in {*_registered(), *_SPELLINGS, *_COMPOUND, *_DIMENSIONS.values()} - {"°C"}]
    lines = [json.dumps(unit.name, ensure_ascii=False) + ": " + json.dumps([unit.factor, unit.signature])
             for unit in sorted(found, key=lambda unit: unit.name)]  # fmt: skip
    return "{\n" + ",\n".join(lines) + "\n}\n"


def _registered() -> set[str]:
    return {part.strip() for line in _DEFINITIONS.strip().splitlines() for part in line.split("=")
            if part.strip().isidentifier()}  # fmt: skip


if __name__ == "__main__":
    EVERYDAY.write_text(everyday_units(), "utf-8")
