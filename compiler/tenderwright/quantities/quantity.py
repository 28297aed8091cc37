"""A quantity as a person wrote it, and its reading into SI."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field, replace
from decimal import Decimal
from functools import lru_cache

from tenderwright.notices.notice import Place
from tenderwright.notices.suggest import did_you_mean
from tenderwright.quantities.units import (
    AmbiguousUnit,
    Unit,
    UnknownUnit,
    dimension_of,
    known_units,
    signature,
    unit,
    units_measuring,
)

NOWHERE = Place("")


@dataclass(frozen=True)
class Quantity:
    """A magnitude with its unit, what it measures, and its value in SI (angle rad, temperature degC, salinity g/kg)."""

    si: float
    unit: str
    dimension: str
    text: str
    """As written."""
    at: Place = field(default=NOWHERE, compare=False)
    within: float | None = None
    """Half the width of the band in which it surely lies, in SI, where `± ...` is written after it."""

    @property
    def magnitude(self) -> float:
        """Give the number in the unit as written."""
        return self.si / _factor(self.unit, self.dimension)

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
_NUMBER = r"[+-]?(?:[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?)"
_SIMPLE = re.compile(rf"({_NUMBER})\s*([^0-9\s+\-.,_*/].*)")
_FRACTION = re.compile(r"([+-]?)(?:([0-9]+)\s+)?([0-9]+)/([0-9]+)\s*(\S.*)")
_FEET = re.compile(r"(-?)([0-9]+)\s*(?:ft|')\s*([0-9]+(?:\.[0-9]+)?|(?:[0-9]+\s+)?[0-9]+/[0-9]+)\s*(?:in|\")")
_PLATE = re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*lb plate")
_BAND = re.compile(r"(.*?)\s*(?:±|\+/-)\s*(.*)")
_SHARE = re.compile(rf"({_NUMBER})\s*(?:%|percent)")
_ZERO = re.compile(r"[0-9]/0+(?![0-9.])")
_COMMA = re.compile(r"[+-]?[0-9]+,[0-9]+\s*\S*")

PLATE_POUNDS_PER_INCH = 40.8
"""Weight of a square foot of mild steel plate one inch thick, lb (490 lb/ft3 rounded in the trade to 489.6)."""

_SPECIAL = {
    "fraction": ("%", "percent", "of one"),
    "angle": ("deg", "degree", "°", "rad", "radian"),
    "temperature": ("degC", "°C"),
    "salinity": ("g/kg",),
}
_EXAMPLES = {
    "length": "12.4 m", "area": "120 m2", "volume": "18.5 m3", "mass": "38 t", "density": "1.025 t/m3",
    "fraction": "30 %", "angle": "0.5 deg", "temperature": "9 degC", "salinity": "28 g/kg", "time": "24 h",
    "line_load": "32 t/m", "area_density": "40 kg/m2", "force": "900 kN", "each": "12 each",
    "pressure": "0.15 bar", "speed": "12 m/s", "rate_of_loss": "0.1 mm/yr", "person_hour": "35 person_hour",
}  # fmt: skip


def _factor(name: str, dimension: str) -> float:
    if dimension in ("temperature", "salinity"):
        return 1.0
    return 1.0 if name == "of one" else unit(name).factor


def _find_unit(name: str, dimension: str, text: str) -> Unit:
    try:
        return unit(name)
    except AmbiguousUnit as error:
        raise QuantityError(
            "ambiguous-unit",
            f"`{name}` in `{text}` has several meanings",
            (f"write one of {', '.join(f'`{choice}`' for choice in error.choices)}",),
        ) from error
    except UnknownUnit as error:
        raise QuantityError(
            "bad-quantity",
            f"unknown unit `{name}` in `{text}`",
            did_you_mean(name, known_units()) or _example(dimension),
        ) from error


def _example(dimension: str) -> tuple[str, ...]:
    return (f"write it as in `{_EXAMPLES[dimension]}`",) if dimension in _EXAMPLES else ()


def _number_and_unit(text: str, dimension: str) -> tuple[float, str]:
    """Split a quantity into its number and its unit; feet and inches come back in feet."""
    if _ZERO.search(text):
        raise QuantityError("bad-quantity", f"`{text}` divides by zero", _example(dimension))
    if match := _FEET.fullmatch(text):
        inches = match[3].replace(" ", "+")
        value = float(match[2]) + sum(_ratio(part) for part in inches.split("+")) / 12
        return (-value if match[1] else value), "ft"
    if match := _FRACTION.fullmatch(text):
        value = int(match[2] or 0) + int(match[3]) / int(match[4])
        return (-value if match[1] == "-" else value), match[5].strip()
    if match := _PLATE.fullmatch(text):
        sixteenths = round(float(match[1]) / PLATE_POUNDS_PER_INCH * 16)
        if sixteenths == 0:
            raise QuantityError("bad-quantity", f"`{text}` is thinner than any plate", _example(dimension))
        return sixteenths / 16, "in"
    if _COMMA.match(text):
        raise QuantityError(
            "bad-quantity",
            f"`{text}` has a comma in its number",
            ("write a point for decimals and no thousands sign",),
        )
    if _PLAIN.fullmatch(text):
        raise QuantityError("bad-quantity", f"`{text}` has no unit", _example(dimension))
    if match := _SIMPLE.fullmatch(text):
        return float(match[1]), match[2].strip()
    raise QuantityError("bad-quantity", f"cannot read `{text}` as a quantity", _example(dimension))


def _ratio(text: str) -> float:
    top, _, bottom = text.partition("/")
    return float(top) / float(bottom or 1)


def _special(number: float, name: str, dimension: str, text: str) -> float | None:
    """Read the dimensions that a unit's own dimensions cannot tell apart."""
    if dimension not in _SPECIAL:
        return None
    if name not in _SPECIAL[dimension]:
        try:
            unit(name)
        except (UnknownUnit, AmbiguousUnit):
            message = f"unknown unit `{name}` in `{text}`"
            raise QuantityError("bad-quantity", message, _example(dimension)) from None
        raise QuantityError("wrong-dimension", f"expected {_a(dimension)}, got `{text}`", _example(dimension))
    return {
        "fraction": number if name == "of one" else number / 100,
        "angle": number * (1.0 if dimension != "angle" or name in ("rad", "radian") else math.pi / 180),
    }.get(dimension, number)


def _a(dimension: str) -> str:
    word = dimension.replace("_", " ")
    return {"each": "a count"}.get(word, f"{'an' if word[0] in 'aeiou' else 'a'} {word}")


@lru_cache(maxsize=65536)
def _parse(text: str, dimension: str) -> Quantity:
    stripped = text.strip()
    if match := _BAND.fullmatch(stripped):
        return _with_band(stripped, match[1], match[2], dimension)
    number, name = _number_and_unit(stripped, dimension)
    if not abs(number) < 1e15:
        raise QuantityError("bad-quantity", f"`{text}` is beyond any ship", _example(dimension))
    special = _special(number, name, dimension, stripped)
    if special is not None:
        return Quantity(special, name, dimension, stripped)
    found = _find_unit(name, dimension, stripped)
    measured = dimension_of(found)
    if dimension == "any":
        return Quantity(number * found.factor, name, measured, stripped)
    if found.signature != signature(dimension) or (found.dimensionless and name in ("deg", "rad", "%")):
        raise QuantityError(
            "wrong-dimension",
            f"expected {_a(dimension)}, got {_a(measured)}, `{stripped}`",
            _example(dimension),
        )
    return Quantity(number * found.factor, name, dimension, stripped)


def _with_band(text: str, middle: str, half: str, dimension: str) -> Quantity:
    """Read `120 t ± 2 t`, or `120 t ± 2 %` where it is not itself a share."""
    read = _parse(middle, dimension)
    share = _SHARE.fullmatch(half) if dimension != "fraction" else None
    within = abs(read.si) * float(share[1]) / 100 if share else _parse(half, read.dimension).si
    if not within > 0:
        message = f"what stands after ± in `{text}` must be more than nothing"
        raise QuantityError("bad-quantity", message, ("write it as in `120 t ± 2 t` or `120 t ± 2 %`",))
    return replace(read, text=text, within=within)


def units_of(dimension: str) -> tuple[str, ...]:
    """List the units in which a quantity of a dimension may be written."""
    return _SPECIAL.get(dimension) or units_measuring(dimension)


def parse_quantity(text: str, dimension: str, at: Place = NOWHERE) -> Quantity:
    """Read a quantity such as `12.4 m`, `40 ft 8 in`, `3/8 in` or `10.2 lb plate`; raises QuantityError."""
    read = _parse(text, dimension)
    return read if at is NOWHERE else Quantity(read.si, read.unit, read.dimension, read.text, at, read.within)
