"""Show figures: in a unit, to the digits that their precision supports, metric or US customary or both."""

from __future__ import annotations

from decimal import ROUND_HALF_EVEN, Decimal
from math import floor, log10

from tenderwright.quantities.units import base_expression, unit

_SCALES = {"temperature": 1.0, "salinity": 1.0}

US_UNITS = {
    "length": ("ft", 1),
    "area": ("ft2", 0),
    "volume": ("US_gal", 0),
    "mass": ("long_ton", 1),
    "line_load": ("long_ton/ft", 2),
    "area_density": ("lb/ft2", 2),
}
"""By dimension, the US customary unit shown beside or instead of the metric one, and its decimals."""

METRIC_UNITS = {
    "length": "m",
    "area": "m2",
    "volume": "m3",
    "mass": "t",
    "line_load": "t/m",
    "area_density": "kg/m2",
    "moment": "t*m",
    "force": "kN",
    "pressure": "MPa",
    "angle": "deg",
    "fraction": "%",
    "each": "each",
}
"""By dimension, the metric unit that figures are shown in where nothing else says which."""

_SHOWN = {
    "m2": "m²", "m3": "m³", "ft2": "ft²", "ft3": "ft³", "um": "µm", "deg": "°", "US_gal": "US gal",
    "imp_gal": "imp gal", "long_ton": "long ton", "short_ton": "short ton", "kg/m2": "kg/m²", "t/m3": "t/m³",
    "kg/m3": "kg/m³", "mg/m2": "mg/m²", "each": "no.", "t*m": "t·m", "t*m/cm": "t·m/cm", "degC": "°C",
    "person_hour": "person-h", "m4": "m⁴", "m2/L": "m²/L", "mA/m2": "mA/m²", "long_ton/ft": "long ton/ft",
    "lb/ft2": "lb/ft²",
}  # fmt: skip


def factor_of(name: str, dimension: str = "") -> float:
    """Give what one of a unit is in SI (angle rad, temperature degC, salinity g/kg)."""
    if dimension in _SCALES or not name:
        return 1.0
    return unit(name).factor


def in_unit(si: float, name: str, dimension: str = "") -> float:
    """Give an SI figure in a unit."""
    return si / factor_of(name, dimension)


def shown_unit(name: str) -> str:
    """Give a unit as it is printed."""
    return _SHOWN.get(name, name)


def tidy(number: Decimal, digits: int) -> Decimal:
    """Round to a number of significant digits, without an exponent."""
    if number == 0:
        return Decimal(0)
    places = digits - 1 - number.adjusted()
    rounded = number.quantize(Decimal(1).scaleb(-max(places, 0)), ROUND_HALF_EVEN)
    return rounded


def decimals(number: float, places: int) -> str:
    """Write a number with a fixed count of decimals; a rounded zero has no minus."""
    text = f"{number:.{places}f}"
    return text.removeprefix("-") if float(text) == 0 else text.replace("-", "−")


def significant(number: float, digits: int = 4) -> str:
    """Write a number to a count of significant digits, without an exponent."""
    if number == 0:
        return "0"
    rounded = float(f"{abs(number):.{digits - 1}e}")
    return decimals(number, max(0, digits - 1 - floor(log10(rounded))))


def show(si: float, name: str, dimension: str = "", digits: int = 4) -> str:
    """Write an SI figure in a unit, to significant digits, such as `757.7 t`."""
    return f"{significant(in_unit(si, name, dimension), digits)} {shown_unit(name)}".strip()


def show_in(si: float, name: str, dimension: str, system: str, digits: int = 4) -> str:
    """Write a figure as the package asks: metric, US customary, or both."""
    metric = show(si, name, dimension, digits)
    if system == "metric" or dimension not in US_UNITS:
        return metric
    us_name, places = US_UNITS[dimension]
    us = f"{decimals(in_unit(si, us_name, dimension), places)} {shown_unit(us_name)}"
    return us if system == "us" else f"{metric} ({us})"


_SI = {
    "angle": "rad",
    "fraction": "1",
    "temperature": "degC",
    "salinity": "g/kg",
    "position": "m",
    "any": "SI",
}


def si_unit(dimension: str) -> str:
    """Name the SI unit of a dimension; empty where it has none."""
    if dimension in _SI:
        return _SI[dimension]
    return (
        base_expression(dimension)
        .replace("metre", "m")
        .replace("kilogram", "kg")
        .replace("second", "s")
        .replace("ampere", "A")
        .replace("**", "")
    )


def plus_minus(si: float, uncertainty: float, name: str, dimension: str = "") -> str:
    """Write an SI figure with twice its standard uncertainty, to the digits that this bears, such as `745 ± 7 t`.

    The ± is written to one significant digit, two where the first is a one; the figure to the same place.
    """
    figure, half = in_unit(si, name, dimension), 2 * in_unit(uncertainty, name, dimension)
    unit_shown = shown_unit(name)
    if not half > 0:
        return show(si, name, dimension)
    digits = 1 if f"{half:.1e}"[0] == "1" else 0
    places = digits - Decimal(f"{half:.{digits}e}").adjusted()
    return f"{_to_place(figure, places)} ± {_to_place(half, places)} {unit_shown}"


def _to_place(number: float, places: int) -> str:
    """Write a number to a decimal place, or to tens and hundreds where it is less than nothing."""
    return decimals(round(number, places), max(0, places))
