"""Units of the trade, defined afresh in pint so that no unit is read as something else.

Importing pint takes longer than reading a package, so everyday_units.json beside this file keeps what pint makes of
every spelling below; `python -m tenderwright.quantities.units` writes it, and pint itself reads any other unit.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from tenderwright.quantities.spellings import SPELLINGS, spelled

if TYPE_CHECKING:
    import pint

EVERYDAY = Path(__file__).with_name("everyday_units.json")

# Exact definitions: metric by the SI Brochure (9th ed.); inch, foot, pound, gallon by the international
# yard and pound agreement (1959) and NIST Handbook 44, Appendix C; nautical mile 1852 m. Force by standard gravity,
# 9.80665 m/s2 (SI Brochure, 9th ed.).
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
fathom = 1.8288 * metre
nmi = 1852 * metre
statute_mile = 1609.344 * metre
g = 0.001 * kilogram
mg = 1e-6 * kilogram
ug = 1e-9 * kilogram
t = 1000 * kilogram
lb = 0.45359237 * kilogram
oz = 0.028349523125 * kilogram
long_cwt = 50.80234544 * kilogram
short_cwt = 45.359237 * kilogram
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
ksi = 6894757.293168 * Pa
lbf = 4.4482216152605 * N
kip = 4448.2216152605 * N
kgf = 9.80665 * N
mph = 0.44704 * metre / second
mA = 0.001 * ampere
volt = kilogram * metre ** 2 / second ** 3 / ampere = V
mV = 0.001 * volt
ohm = volt / ampere
kWh = 3.6e6 * kilogram * metre ** 2 / second ** 2
W = kilogram * metre ** 2 / second ** 3
kW = 1000 * W
Ah = 3600 * ampere * second
"""

# Powers in the trade's plain form, and words that keep their own name; each maps to a pint expression.
_SPELLINGS = {
    "m2": "m**2", "mm2": "mm**2", "cm2": "cm**2", "ft2": "ft**2", "in2": "in**2", "yd2": "yd**2", "m3": "m**3",
    "cm3": "cm**3", "ft3": "ft**3", "in3": "in**3", "yd3": "yd**3", "m4": "m**4", "cm4": "cm**4", "ft4": "ft**4",
    "in4": "in**4", "%": "percent", "hours": "hour", "days": "day", "weeks": "week", "years": "yr",
    "year": "yr", "a": "yr", "kg/m2": "kg/m**2", "mg/m2": "mg/m**2", "g/m2": "g/m**2", "m2/L": "m**2/L",
    "t/m3": "t/m**3", "kg/m3": "kg/m**3", "g/cm3": "g/cm**3", "mA/m2": "mA/m**2", "lb/ft2": "lb/ft**2",
    "ft2/US_gal": "ft**2/US_gal", "visit": "each", "set": "each", "sets": "each", "shots": "each", "shot": "each",
    "kg/L": "kg/L", "m/s": "m/s", "t*m": "t*m", "t.m": "t*m", "mm/yr": "mm/yr", "kn": "nmi/h",
    "g/kg": "g/kg",
}  # fmt: skip

# Compound units in everyday use that need no spelling of their own.
_COMPOUND = (
    "t/m", "kg/m", "lb/ft", "long_ton/ft", "short_ton/ft", "long_ton/m", "t/m2", "long_ton/ft2", "short_ton/ft2",
    "lb/in2", "lb/ft3", "lb/US_gal", "ug/cm2", "kN/m", "kN/m2", "N/mm2", "lbf/ft2", "lbf/in2", "kgf/cm2",
    "m3/h", "L/h", "US_gal/min",
    "US_gal/h", "imp_gal/h", "mm/h", "mil/yr", "in/yr", "ft/s", "ft/min", "km/h", "t/cm", "long_ton/in", "t*m/cm",
    "ft*long_ton/in", "A/m2", "mA/ft2", "ft*long_ton", "ft*short_ton", "ft*lb", "MN/m", "person_hour/t",
    "person_hour/long_ton", "ft2/imp_gal", "lbf/in",
    "m2*week", "m2*day", "m*week", "m3*week", "t*week", "each*day", "each*week", "ft2*week", "ft*week",
)  # fmt: skip

_BY_CHANCE = {
    "mass": ("t*m/cm", "ft*long_ton/in"),
    "speed": ("mm/yr", "mm/h", "mil/yr", "in/yr"),
    "rate_of_loss": ("kn", "m/s", "ft/s", "ft/min", "km/h", "mph"),
    "area_density": ("lb/in2",),
}
"""Units that are never used for what they measure by their dimensions alone."""

_POWER = re.compile(r"(?<![A-Za-z_])(mm|cm|m|in|ft|yd)([234])(?![0-9A-Za-z])")
"""A power written the plain way inside a compound unit, such as the `m2` of `t/m2`."""

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
    "power": "kilogram*metre**2/second**3",
    "charge": "ampere*second",
    "flow": "metre**3/second",
}


_NUMBERS = dict.fromkeys(("%", "percent"), "fraction") | dict.fromkeys(("deg", "rad"), "angle")
"""What a unit without dimensions of its own measures."""


FAHRENHEIT = 1.8
"""Degrees Fahrenheit to one of Celsius."""
FREEZING = 32.0
"""Of water, on Fahrenheit's scale."""


class Unit(Struct, frozen=True):
    """A unit: the factor that takes a number in it to SI, and what it measures."""

    name: str
    factor: float
    signature: str
    """The dimensions in base units, as text; equal for units that measure the same thing."""
    dimensionless: bool = False


class UnknownUnit(ValueError):
    """The unit is not in the list of definitions."""


@cache
def registry() -> pint.UnitRegistry[Any]:
    """Make the unit registry from our own definitions alone."""
    import pint

    units: pint.UnitRegistry[Any] = pint.UnitRegistry(None)
    units.load_definitions(_DEFINITIONS.strip().splitlines())
    return units


@cache
def unit(name: str) -> Unit:
    """Find a unit, by its plain name, however it is spelled; raises UnknownUnit or AmbiguousUnit."""
    return _known(spelled(name))


def _known(name: str) -> Unit:
    kept = _everyday().get(name)
    return Unit(name, kept[0], kept[1], kept[1] == "dimensionless") if kept else worked_out(name)


@cache
def _everyday() -> dict[str, tuple[float, str]]:
    kept: dict[str, tuple[float, str]] = json.loads(EVERYDAY.read_text("utf-8"))
    return kept


def is_plain(name: str) -> bool:
    """Tell whether a name is the plain one of a unit in everyday use."""
    return name in _everyday()


def worked_out(name: str) -> Unit:
    """Work a unit out by pint from its plain name; raises UnknownUnit."""
    expression = _SPELLINGS.get(name) or _POWER.sub(_plain_power, name)
    try:
        base = registry().parse_units(expression).dimensionality
        factor = registry().Quantity(1.0, expression).to_base_units().magnitude
    except Exception as error:  # pint raises many kinds for text that is no unit
        raise UnknownUnit(name) from error
    return Unit(name, float(factor), _in_order(dict(base)), not base)


def _in_order(base: Mapping[str, Any]) -> str:
    """Write base dimensions in one order, whatever order a unit brought them in."""
    powers = [f"{what} ** {power:g}" if power != 1 else what for what, power in sorted(base.items())]
    return " * ".join(powers) or "dimensionless"


def _plain_power(match: re.Match[str]) -> str:
    return f"{match[1]}**{match[2]}"


@cache
def signature(dimension: str) -> str:
    """Give the base dimensions of one of our named dimensions."""
    return _known(_DIMENSIONS[dimension]).signature


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
    """List the names of units that may be written, and how else they are spelled."""
    return sorted({*plain_units(), *SPELLINGS})


def plain_units() -> list[str]:
    """List the names by which units are known, but for what is made of several."""
    return sorted(name for name in _registered() | set(_SPELLINGS) if spelled(name) == name)


def units_measuring(dimension: str) -> tuple[str, ...]:
    """List the units of a dimension in everyday use, but for those that measure it by chance."""
    alike = (name for name in [*plain_units(), *_COMPOUND] if _known(name).signature == signature(dimension))
    return tuple(dict.fromkeys(name for name in alike if name not in _BY_CHANCE.get(dimension, ())))


def everyday_units() -> str:
    """Write what pint makes of every plain name as the text of everyday_units.json."""
    found = [worked_out(name) for name in {*plain_units(), *_COMPOUND, *_DIMENSIONS.values()}]
    lines = [json.dumps(unit.name, ensure_ascii=False) + ": " + json.dumps([unit.factor, unit.signature])
             for unit in sorted(found, key=lambda unit: unit.name)]  # fmt: skip
    return "{\n" + ",\n".join(lines) + "\n}\n"


def _registered() -> set[str]:
    return {part.strip() for line in _DEFINITIONS.strip().splitlines() for part in line.split("=")
            if part.strip().isidentifier()}  # fmt: skip


if __name__ == "__main__":
    EVERYDAY.write_text(everyday_units(), "utf-8")
