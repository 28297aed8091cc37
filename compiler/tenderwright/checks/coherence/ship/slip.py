"""What slip of the pen would explain a figure: another unit, the point moved, two digits swapped, the sign."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity

_UNITS = {
    "length": (("m", 0.0), ("ft", 0.0), ("mm", 5.0), ("cm", 2.0), ("um", 10.0)),
    "mass": (("t", 0.0), ("kg", 5.0)),
    "area": (("m2", 0.0), ("ft2", 5.0)),
    "volume": (("m3", 0.0), ("L", 5.0)),
    "density": (("t/m3", 0.0), ("kg/m3", 100.0)),
    "pressure": (("MPa", 0.0), ("kPa", 5.0)),
    "angle": (("deg", 0.0),),
    "time": (("yr", 0.0), ("d", 0.0), ("h", 0.0)),
    "current_density": (("mA/m2", 5.0),),
}
"""In which a figure may have been meant, and the least that anybody writes in it."""
_NUMBER = re.compile(r"([+-]?)([0-9]+(?:\.[0-9]+)?)\s*(\S.*)")


def slip_of(stated: Quantity, low: float, high: float, *, exact: bool = False) -> tuple[str, ...]:
    """Give as a hint what would lie within a range, where one slip explains a figure; `exact` tries its digits too."""
    match = _NUMBER.fullmatch(stated.text)
    if match is None:
        return ()
    found: dict[str, str] = {}
    for text, look in _candidates(match, stated.dimension, exact=exact):
        if look in found:
            continue
        try:
            meant = parse_quantity(text, stated.dimension).si
        except QuantityError:
            continue
        if low <= meant <= high:
            found[look] = f"`{text}`"
    if not found:
        return ()
    return (f"{' or '.join(found.values())} would fit: look at {' and '.join(found)}",)


def _candidates(match: re.Match[str], dimension: str, *, exact: bool) -> Iterator[tuple[str, str]]:
    sign, number, unit = match.groups()
    if exact:
        for swapped in _swapped(number):
            yield f"{sign}{swapped} {unit}", "its digits"
    if sign != "+":
        yield f"{'' if sign else '-'}{number} {unit}", "its sign"
    for factor in (0.1, 10.0, 0.01, 100.0):
        yield f"{sign}{float(number) * factor:.6g} {unit}", "the point"
    for other, least in _UNITS.get(dimension, ()):
        if other != unit and float(number) >= least:
            yield f"{sign}{number} {other}", "its unit"


def _swapped(number: str) -> Iterator[str]:
    """Give a number with each two neighbouring digits swapped, over the point too."""
    places = [at for at, letter in enumerate(number) if letter != "."]
    for first, second in pairwise(places):
        letters = list(number)
        letters[first], letters[second] = letters[second], letters[first]
        if letters[first] != letters[second]:
            yield "".join(letters)
