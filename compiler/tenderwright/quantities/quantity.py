"""A quantity as a person wrote it, and its reading into SI."""

from __future__ import annotations

import math
import re
from decimal import Decimal
from functools import lru_cache

from msgspec.structs import replace

from tenderwright.notices.notice import Place, Placed
from tenderwright.notices.suggest import did_you_mean
from tenderwright.quantities.spellings import LETTERS, AmbiguousUnit, also_written, spelled
from tenderwright.quantities.units import (
    FAHRENHEIT,
    FREEZING,
    Unit,
    UnknownUnit,
    dimension_of,
    is_plain,
    known_units,
    signature,
    unit,
    units_measuring,
)

NOWHERE = Place("")


class Quantity(Placed, frozen=True, eq=False):
    """A magnitude with its unit, what it measures, and its value in SI (angle rad, temperature degC, salinity g/kg)."""

    si: float
    unit: str
    dimension: str
    text: str
    """As written."""
    at: Place = NOWHERE
    within: float | None = None
    """Half the width of the band in which it surely lies, in SI, where `± ...` is written after it."""

    @property
    def magnitude(self) -> float:
        """Give the number in the unit as written."""
        return self.number(self.si)

    def number(self, si: float) -> float:
        """Give an SI figure of the same kind in the unit in which this was written."""
        if self.dimension == "temperature":
            return si * FAHRENHEIT + FREEZING if self.unit == "degF" else si
        if self.dimension == "salinity" or self.unit == "of one":
            return si
        return si / unit(self.unit).factor

    @property
    def decimal(self) -> Decimal:
        """Give the number in the unit as written, exactly as written where it is a plain decimal."""
        match = _SIMPLE.fullmatch(self.text)
        if match and _PLAIN.fullmatch(match[1]) and math.isclose(float(match[1]), self.magnitude):
            return Decimal(match[1])
        return Decimal(repr(round(self.magnitude, 9)))

    def __str__(self) -> str:
        """Give the quantity as written."""
        return self.text


class QuantityError(ValueError):
    """A quantity that cannot be read: carries the notice code, the sentence and hints."""

    def __init__(self, code: str, message: str, hints: tuple[str, ...] = ()) -> None:
        super().__init__(message)
        self.code, self.message, self.hints = code, message, hints


_PLAIN = re.compile(r"[+-]?[0-9]+(?:\.[0-9]+)?")
_NUMBER = r"[+-]?(?:(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?)"
_SIMPLE = re.compile(rf"({_NUMBER})\s*([^0-9\s+\-.,_*/].*)")
_WHOLE_AND_PART = r"(?:([0-9]+)(?:\s+|\s?-\s?))?([0-9]+)/([0-9]+)"
_SHARE = re.compile(rf"({_NUMBER})\s*(?:%|percent)")

# Of what few quantities have; made into patterns only when one is met.
_FRACTION = rf"([+-]?)\s*{_WHOLE_AND_PART}\s*-?\s*([^0-9\s].*)"
_FEET = (
    r"(?i)([+-]?)\s*([0-9]+)\s*-?\s*(?:feet|foot|ft\.?|')(?:\s*-\s*|\s*,\s*|\s*)"
    rf"(?:([0-9]+(?:\.[0-9]+)?|\.[0-9]+)|{_WHOLE_AND_PART})\s*-?\s*(?:inches|inch|ins?\.?|\"|'')"
)
_HYPHENED = rf"([+-]?)([0-9]+)-(?:([0-9]+(?:\.[0-9]+)?)|{_WHOLE_AND_PART})\s*ft-in"
"""As a column of feet and inches has it, `12-6 1/2 ft-in`."""
_EIGHTHS = r"([+-]?)([0-9]+)-([0-9]+)-([0-7])\s*ft-in-(?:8|8ths|eighths)"
"""As a table of offsets has it, `12-6-3 ft-in-8`."""
_PLATE = r"([0-9]+(?:\.[0-9]+)?)\s*-?\s*(?:(?:lbs?\.?|pounds?)\s*-?\s*(?:plate|pl\.?)|#(\s*(?:plate|pl\.?))?)"
_BAND = r"(.*?)\s*(?:±|\+/-)\s*(.*)"
_ZERO = r"[0-9]/0+(?![0-9.])"
_COMMA = r"([+-]?)([0-9]+),([0-9]+)((?:,[0-9]+)*(?:\.[0-9]+)?)\s*(\S*.*)"
_SPACED = r"([+-]?[0-9]{1,3}(?: [0-9]{3})+(?:\.[0-9]+)?) (\D.*)"
"""A number whose thousands are set off by a space."""
_GROUPED = r"[+-]?[0-9]{1,3}(?:(?:,[0-9]{3}){2,}(?:\.[0-9]+)?|,[0-9]{3}\.[0-9]+)(?![0-9,])"
"""Whose commas can only set off thousands."""

PLATE_POUNDS_PER_INCH = 40.8
"""Weight of a square foot of mild steel plate one inch thick, lb (490 lb/ft3 rounded in the trade to 489.6)."""

_SPECIAL = {
    "fraction": {"%": 0.01, "percent": 0.01, "of one": 1.0},
    "angle": {"deg": math.pi / 180, "rad": 1.0, "radian": 1.0},
    "temperature": {"degC": 1.0, "degF": 1 / FAHRENHEIT},
    "salinity": {"g/kg": 1.0},
    "temperature_difference": {"K": 1.0, "kelvin": 1.0, "degC": 1.0, "degF": 1 / FAHRENHEIT},
}
"""The units of what a unit's own dimensions cannot tell apart."""
_EXAMPLES = {
    "length": "12.4 m", "area": "120 m2", "volume": "18.5 m3", "mass": "38 t", "density": "1.025 t/m3",
    "fraction": "30 %", "angle": "0.5 deg", "temperature": "9 degC", "salinity": "28 g/kg", "time": "24 h",
    "line_load": "32 t/m", "area_density": "40 kg/m2", "force": "900 kN", "each": "12 each",
    "pressure": "0.15 bar", "speed": "12 m/s", "rate_of_loss": "0.1 mm/yr", "person_hour": "35 person_hour",
}  # fmt: skip


def _find_unit(name: str, dimension: str, text: str) -> Unit:
    try:
        return unit(name)
    except AmbiguousUnit as error:
        if dimension != "any" and unit(error.choices[0]).signature != signature(dimension):
            raise _wrong_dimension(unit(error.choices[0]), 0.0, dimension, text) from error
        raise QuantityError(
            "ambiguous-unit",
            f"`{name}` in `{text}` has several meanings",
            (f"write one of {', '.join(f'`{choice}`' for choice in error.choices)}",),
        ) from error
    except UnknownUnit as error:
        message = f"unknown unit `{name}` in `{text}`"
        raise QuantityError("bad-quantity", message, unit_hint(name, dimension)) from error


def unit_hint(name: str, dimension: str) -> tuple[str, ...]:
    """Give as a hint the unit that was meant, or those in which a dimension may be written."""
    if dimension == "any":
        return did_you_mean(name, known_units(), _CLOSE) or (
            "write it as in `120 m2` or `3 t`; things are counted in `each`, as in `12 each`",
        )
    if dimension in _SPECIAL:
        return _example(dimension)
    units = units_of(dimension)
    close = did_you_mean(name, [*units, *(one for known in units for one in also_written(known))], _CLOSE)
    listed = ", ".join(f"`{one}`" for one in units)
    return close or (
        f"write it as in `{_EXAMPLES.get(dimension, f'1 {units[0]}')}`; {_a(dimension)} may be in {listed}",
    )


_CLOSE = 0.8
"""How like the unit that is proposed must be, so that it is a slip of the pen and never another size."""


def _wrong_dimension(found: Unit, number: float, dimension: str, text: str) -> QuantityError:
    measured = dimension_of(found)
    got = "something else" if "[" in measured else _a(measured)
    message = f"expected {_a(dimension)}, got {got}, `{text}`"
    return QuantityError("wrong-dimension", message, _as_weight(found, number, dimension) or _example(dimension))


def _as_weight(found: Unit, number: float, dimension: str) -> tuple[str, ...]:
    """Give as a hint what a mass weighs, or what mass a force lifts, where one was written for the other."""
    as_force, as_mass = (
        {"force": ("mass", "kN"), "pressure": ("area_density", "kPa")},
        {"line_load": ("stiffness", "t/m")},
    )
    of, name = (as_force | as_mass).get(dimension, ("", ""))
    if not of or not number or found.signature != signature(of):
        return ()
    si = number * found.factor * (unit("kgf").factor if dimension in as_force else 1 / unit("kgf").factor)
    return (f"by standard gravity that is `{si / unit(name).factor:.6g} {name}`",)


def _example(dimension: str) -> tuple[str, ...]:
    if dimension == "any":
        return ("write a number, a space and a unit, as in `120 m2`, `3 t` or `12 each`",)
    return (f"write it as in `{_EXAMPLES[dimension]}`",) if dimension in _EXAMPLES else ()


def _number_and_unit(text: str, dimension: str) -> tuple[float, str]:
    """Split a quantity into its number and its unit; feet and inches come back in feet."""
    if (match := _SIMPLE.fullmatch(text)) and is_plain(match[2]):
        return float(match[1]), match[2]
    if re.search(_ZERO, text):
        raise QuantityError("bad-quantity", f"`{text}` divides by zero", _example(dimension))
    if re.match(_GROUPED, text):
        text = text.replace(",", "")
    if match := re.fullmatch(_FEET, text) or re.fullmatch(_HYPHENED, text):
        return _feet(*match.groups()), "ft"
    if match := re.fullmatch(_EIGHTHS, text):
        return _feet(match[1], match[2], match[3]) + _feet(match[1], "0", None, None, match[4], "8"), "ft"
    if match := re.fullmatch(_FRACTION, text):
        value = int(match[2] or 0) + int(match[3]) / int(match[4])
        return (-value if match[1] == "-" else value), match[5].strip()
    if (match := re.fullmatch(_PLATE, text)) and ("#" not in text or match[2] or dimension == "length"):
        sixteenths = round(float(match[1]) / PLATE_POUNDS_PER_INCH * 16)
        if sixteenths == 0:
            raise QuantityError("bad-quantity", f"`{text}` is thinner than any plate", _example(dimension))
        return sixteenths / 16, "in"
    if match := re.fullmatch(_COMMA, text):
        raise QuantityError("bad-quantity", f"`{text}` has a comma in its number", _without_comma(match))
    if _PLAIN.fullmatch(text):
        raise QuantityError("bad-quantity", f"`{text}` has no unit", _example(dimension))
    if match := _SIMPLE.fullmatch(text):
        return float(match[1]), match[2].strip()
    if match := re.fullmatch(_SPACED, text):
        joined = f"`{match[1].replace(' ', '')} {match[2]}`"
        raise QuantityError("bad-quantity", f"`{text}` has a space inside its number", (f"write {joined}",))
    raise QuantityError("bad-quantity", f"cannot read `{text}` as a quantity", _example(dimension))


def _without_comma(match: re.Match[str]) -> tuple[str, ...]:
    sign, before, after, more, name = match.groups()
    if len(before) > 3 or len(after) != 3 or more or before == "0":
        return ("write a point for decimals and no thousands sign",)
    thousands, decimal = (f"`{f'{sign}{before}{between}{after} {name}'.strip()}`" for between in ("", "."))
    return (f"write {thousands} if the comma sets off thousands, {decimal} if it is a decimal point",)


def _feet(
    sign: str,
    feet: str,
    inches: str | None,
    whole: str | None = None,
    top: str | None = None,
    bottom: str | None = None,
) -> float:
    """Give feet with inches that are a decimal, or a whole number and a fraction."""
    value = int(feet) + (float(inches or whole or 0) + int(top or 0) / int(bottom or 1)) / 12
    return -value if sign == "-" else value


def _special(number: float, written: str, dimension: str, text: str) -> tuple[float, str] | None:
    """Read the dimensions that a unit's own dimensions cannot tell apart; give SI and the unit's plain name."""
    if dimension not in _SPECIAL:
        return None
    try:
        name = spelled(written)
        if name not in _SPECIAL[dimension]:
            unit(name)
    except (UnknownUnit, AmbiguousUnit):
        raise QuantityError("bad-quantity", f"unknown unit `{written}` in `{text}`", _example(dimension)) from None
    if name not in _SPECIAL[dimension]:
        raise QuantityError("wrong-dimension", f"expected {_a(dimension)}, got `{text}`", _example(dimension))
    start = FREEZING if name == "degF" and dimension == "temperature" else 0
    return (number - start) * _SPECIAL[dimension][name], "K" if dimension == "temperature_difference" else name


def _a(dimension: str) -> str:
    word = dimension.replace("_", " ")
    return {"each": "a count"}.get(word, f"{'an' if word[0] in 'aeiou' else 'a'} {word}")


@lru_cache(maxsize=65536)
def _parse(text: str, dimension: str) -> Quantity:
    stripped = text.strip()
    plain = stripped.translate(LETTERS).strip()
    if ("±" in plain or "+/-" in plain) and (match := re.fullmatch(_BAND, plain)):
        return _with_band(stripped, match[1], match[2], dimension)
    number, name = _number_and_unit(plain, dimension)
    if not abs(number) < 1e15:
        raise QuantityError("bad-quantity", f"`{text}` is beyond any ship", _example(dimension))
    special = _special(number, name, dimension, stripped)
    if special is not None:
        return Quantity(*special, dimension, stripped)
    found = _find_unit(name, dimension, stripped)
    if dimension == "any":
        return Quantity(number * found.factor, found.name, dimension_of(found), stripped)
    if found.signature != signature(dimension) or (found.dimensionless and found.name in ("deg", "rad", "%")):
        raise _wrong_dimension(found, number, dimension, stripped)
    return Quantity(number * found.factor, found.name, dimension, stripped)


def _with_band(text: str, middle: str, half: str, dimension: str) -> Quantity:
    """Read `120 t ± 2 t`, `120 ± 2 t`, or `120 t ± 2 %` where it is not itself a share."""
    after = _SIMPLE.fullmatch(half)
    if after and _PLAIN.fullmatch(middle) and not (_SHARE.fullmatch(half) and dimension not in ("fraction", "any")):
        middle = f"{middle} {after[2]}"
    read = _parse(middle, dimension)
    share = _SHARE.fullmatch(half) if read.dimension != "fraction" else None
    of = {"temperature": "temperature_difference"}.get(read.dimension, read.dimension)
    within = abs(read.si) * float(share[1]) / 100 if share else _parse(half, of).si
    if not within > 0:
        message = f"what stands after ± in `{text}` must be more than nothing"
        raise QuantityError("bad-quantity", message, ("write it as in `120 t ± 2 t` or `120 t ± 2 %`",))
    return replace(read, text=text, within=within)


def units_of(dimension: str) -> tuple[str, ...]:
    """List the units in which a quantity of a dimension may be written."""
    return tuple(_SPECIAL.get(dimension, ())) or units_measuring(dimension)


def parse_quantity(text: str, dimension: str, at: Place = NOWHERE) -> Quantity:
    """Read a quantity such as `12.4 m`, `40 ft 8 in`, `3/8 in` or `10.2 lb plate`; raises QuantityError."""
    read = _parse(text, dimension)
    return read if at is NOWHERE else Quantity(read.si, read.unit, read.dimension, read.text, at, read.within)
