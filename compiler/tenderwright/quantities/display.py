"""Show figures as their readers read them: a figure's purpose picks its unit and digits in the system asked for."""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import ROUND_HALF_EVEN, Decimal
from math import floor, isfinite, log10

from tenderwright.quantities.customs import system, telling_in
from tenderwright.quantities.purposes import ABBREVIATIONS, PURPOSES, Form, Purpose, purpose_of
from tenderwright.quantities.quantity import Quantity
from tenderwright.quantities.units import FAHRENHEIT, FREEZING, base_expression, unit

_SCALES = {"temperature": 1.0, "salinity": 1.0}

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
    "charge": "Ah",
    "time": "h",
    "potential": "V",
}
"""By dimension, the metric unit that figures are shown in where nothing else says which."""

_SHOWN = {
    "m2": "m²", "m3": "m³", "ft2": "ft²", "ft3": "ft³", "um": "µm", "deg": "°", "US_gal": "US gal",
    "imp_gal": "imp gal", "long_ton": "long ton", "short_ton": "short ton", "kg/m2": "kg/m²", "t/m3": "t/m³",
    "kg/m3": "kg/m³", "mg/m2": "mg/m²", "each": "no.", "t*m": "t·m", "t*m/cm": "t·m/cm", "degC": "°C",
    "person_hour": "person-h", "m4": "m⁴", "m2/L": "m²/L", "mA/m2": "mA/m²", "long_ton/ft": "long ton/ft",
    "lb/ft2": "lb/ft²", "ft*long_ton": "ft·long ton", "long_ton/in": "long ton/in", "ft*long_ton/in": "ft·long ton/in",
    "lb/ft3": "lb/ft³", "in2": "in²", "ft4": "ft⁴", "ug/cm2": "µg/cm²", "degF": "°F", "ft2/US_gal": "ft²/US gal",
    "long_ton/ft2": "long ton/ft²", "person_hour/t": "person-h/t", "person_hour/long_ton": "person-h/long ton",
    "t/m2": "t/m²", "mA/ft2": "mA/ft²", "m3/h": "m³/h", "US_gal/min": "US gal/min", "cm2": "cm²", "mm2": "mm²",
}  # fmt: skip


def factor_of(name: str, dimension: str = "") -> float:
    """Give what one of a unit is in SI (angle rad, temperature degC, salinity g/kg)."""
    if name == "degF":
        return 1.0 / FAHRENHEIT
    if dimension in _SCALES or not name:
        return 1.0
    return unit(name).factor


def in_unit(si: float, name: str, dimension: str = "") -> float:
    """Give an SI figure in a unit."""
    if name == "degF" and dimension == "temperature":
        return si * FAHRENHEIT + FREEZING
    return si / factor_of(name, dimension)


def shown_unit(name: str) -> str:
    """Give a unit as it is printed, a product of units with a point between them."""
    return _SHOWN.get(name) or "·".join(_SHOWN.get(part, part) for part in name.split("*"))


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


_SMALLER = 3
"""Decimals beyond its own to which a figure is written that would round to nothing; what is less is nothing."""


def fixed(number: float, places: int) -> str:
    """Write a number with a fixed count of decimals, and with more where that would make nothing of something."""
    text = decimals(number, places)
    nothing = float(text.replace("−", "-")) == 0 and abs(number) >= 0.5 * 10.0 ** -(places + _SMALLER)
    return significant(number, 1) if nothing else text


def eighths(feet: float) -> str:
    """Write a length in feet, inches and eighths of an inch, such as `6 ft 3 1/8 in`, `3 1/8 in` or `20 ft`."""
    whole, inches = _in_eighths(feet)
    sign = "−" if feet < 0 and (whole or inches) else ""
    return sign + (" ".join((f"{whole} ft" if whole else "", f"{inches} in" if inches else "")).strip() or "0 in")


def _in_eighths(feet: float) -> tuple[int, str]:
    count = round(abs(feet) * 96)
    whole, left = divmod(count, 96)
    inches, part = divmod(left, 8)
    fraction = {0: "", 4: "1/2"}.get(part) or (f"{part // 2}/4" if part % 2 == 0 else f"{part}/8") if part else ""
    return whole, " ".join(one for one in (str(inches) if inches else "", fraction) if one)


_BARE = Purpose("", Form("", 2), Form("", 2))
"""Of a number that measures nothing."""


def show(si: float, purpose: str, *, digits: int = 0, more: int = 0) -> str:
    """Write an SI figure with its unit, such as `757.7 t`, `745.7 long ton` or `757.7 t (745.7 long ton)`.

    `more` asks for so many decimals more than its purpose has, or fewer; `digits` for significant digits instead.
    """
    return _in_system(purpose, lambda form, of: _with_unit(si, form, of, digits, more))


def plainly(si: float, purpose: str) -> str:
    """Write an SI figure with its unit as shortly as it can be, such as `3 m` or `0.05 m`, for what somebody gave."""
    return _in_system(purpose, lambda form, of: _plainly(si, form, of))


def in_column(si: float, purpose: str, *, more: int = 0) -> str:
    """Write an SI figure without its unit, for a cell under the head of a column."""
    return _in_system(purpose, lambda form, of: _number(si, form, of, 0, more))


def unit_of(purpose: str) -> str:
    """Name the unit in which figures of a purpose stand in a column."""
    return _in_system(purpose, lambda form, of: "ft-in" if form.eighths else shown_unit(form.unit))


def head(title: str, purpose: str) -> str:
    """Write the head of a column with the unit of its figures, such as `Draft aft, m`."""
    return f"{title}, {unit_of(purpose)}"


def axis(title: str, purpose: str) -> str:
    """Write the title of an axis with its unit, which is one unit where both systems are asked for."""
    return f"{title}, {shown_unit(_of_axis(purpose).unit)}"


def axis_unit(purpose: str) -> float:
    """Give what one of the unit of an axis is in SI."""
    return factor_of(_of_axis(purpose).unit, PURPOSES[purpose].dimension)


def _of_axis(purpose: str) -> Form:
    return PURPOSES[purpose].us if system() == "us" else PURPOSES[purpose].metric


def abbreviation(purpose: str) -> str:
    """Give the letters by which naval architects know a figure, which say its units, such as TPC or TPI."""
    metric, us = ABBREVIATIONS[purpose]
    return {"metric": metric, "us": us}.get(system(), f"{metric} ({us})")


def _in_system(purpose: str, written: Callable[[Form, Purpose], str]) -> str:
    """Write something in the system asked for: once, or twice where it differs."""
    of = PURPOSES[purpose] if purpose else _BARE
    asked = system()
    if asked != "both":
        return written(of.us if asked == "us" else of.metric, of)
    metric, us = written(of.metric, of), written(of.us, of)
    return metric if metric == us else f"{metric} ({us})"


def _with_unit(si: float, form: Form, of: Purpose, digits: int, more: int) -> str:
    if form.eighths and not digits:
        return eighths(in_unit(si, form.unit))
    return _joined(_number(si, form, of, digits, more), form.unit)


def _joined(figure: str, name: str) -> str:
    """Put a unit behind a figure: none behind a count, degrees close to it."""
    return {"each": figure, "deg": f"{figure}°"}.get(name) or f"{figure} {shown_unit(name)}".strip()


def _plainly(si: float, form: Form, of: Purpose) -> str:
    figure = in_unit(si, form.unit, of.dimension)
    text = f"{tidy(Decimal(repr(float(figure))), 6).normalize():f}" if isfinite(figure) else f"{figure}"
    return _joined(text.replace("-", "−"), form.unit)


def _number(si: float, form: Form, of: Purpose, digits: int, more: int) -> str:
    figure = in_unit(si, form.unit, of.dimension)
    if digits and form.unit != "each":
        return significant(figure, digits)
    if form.eighths:
        whole, inches = _in_eighths(figure)
        return ("−" if figure < 0 and (whole or inches) else "") + f"{whole}-{inches or 0}"
    return fixed(figure, max(0, form.places + more))


_CUSTOMARY = re.compile(
    r"(?<![A-Za-z])(ft|foot|feet|in|inch|inches|yd|yard|mil|lbs?|lbf|long_ton|short_ton|(US|imp)_gal|psi|kn|knots|nmi|degF)(?![A-Za-z])|^['\"]"
)


def is_customary(name: str) -> bool:
    """Tell whether a unit is a customary one, by any part of it."""
    return _CUSTOMARY.search(name) is not None


def written_as(quantity: Quantity, *, beside: bool = False) -> str:
    """Show a quantity as it is written, or in the system asked for where it is written in the other.

    What is written in customary units stays so in a metric package: a rivet of 7/8 in is one. It is turned into the
    other system to as many digits as it is written with; `beside` then adds it as written.
    """
    purpose = purpose_of(quantity.dimension, quantity.unit)
    form = PURPOSES[purpose] if purpose else None
    as_written = _set(quantity)
    if form is None or system() == "metric" or form.metric.unit == form.us.unit:
        return as_written
    customary = is_customary(quantity.unit)
    if system() == "us" and customary:
        return as_written
    with telling_in("metric" if customary else "us"):
        turned = show(quantity.si, purpose, digits=_digits(quantity.text))
    if system() == "both":
        return f"{turned} ({as_written})" if customary else f"{as_written} ({turned})"
    return f"{turned} ({as_written})" if beside else turned


def _digits(text: str) -> int:
    """Count the significant digits of a number as written: three at least, four of feet and inches or a fraction."""
    numbers = re.findall(r"(?<![A-Za-z0-9.])[0-9]+(?:\.[0-9]+)?", text)
    return max(3, len(numbers[0].replace(".", "").lstrip("0"))) if len(numbers) == 1 else 4


def _set(quantity: Quantity) -> str:
    """Give a quantity as written, with its unit set as in print where it is a plain number with a unit."""
    number, _, rest = quantity.text.partition(" ")
    if rest and rest == quantity.unit and number.replace(".", "").replace("-", "").isdigit():
        return f"{number.replace('-', '−')} {shown_unit(quantity.unit)}"
    return quantity.text


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


def plus_minus(si: float, uncertainty: float, purpose: str) -> str:
    """Write an SI figure with twice its standard uncertainty, to the digits that this bears, such as `745 ± 7 t`.

    The ± is written to one significant digit, two where the first is a one; the figure to the same place.
    """
    return _in_system(purpose, lambda form, of: _plus_minus(si, uncertainty, form, of))


def _plus_minus(si: float, uncertainty: float, form: Form, of: Purpose) -> str:
    half = 2 * uncertainty / factor_of(form.unit, of.dimension)
    if not half > 0:
        return _with_unit(si, form, of, 4, 0)
    places = _borne(half)
    figure = in_unit(si, form.unit, of.dimension)
    return _joined(f"{_to_place(figure, places)} ± {_to_place(half, places)}", form.unit)


def no_finer(si: float, uncertainty: float, purpose: str) -> str:
    """Write an SI figure to the digits of one that is so uncertain: `757 t` beside `745 ± 7 t`."""
    return _in_system(purpose, lambda form, of: _no_finer(si, uncertainty, form, of))


def _no_finer(si: float, uncertainty: float, form: Form, of: Purpose) -> str:
    half = 2 * uncertainty / factor_of(form.unit, of.dimension)
    if not half > 0:
        return _with_unit(si, form, of, 0, 0)
    return _joined(_to_place(in_unit(si, form.unit, of.dimension), _borne(half)), form.unit)


def _borne(half: float) -> int:
    """Give the decimal place to which a figure is known that may be out by so much."""
    digits = 1 if f"{half:.1e}"[0] == "1" else 0
    return digits - Decimal(f"{half:.{digits}e}").adjusted()


def _to_place(number: float, places: int) -> str:
    """Write a number to a decimal place, or to tens and hundreds where it is less than nothing."""
    return decimals(round(number, places), max(0, places))
