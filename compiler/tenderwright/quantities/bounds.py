"""Beyond which no ship goes: bounds of a quantity by what it measures, where a field sets none of its own."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, NamedTuple

from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity, units_of
from tenderwright.quantities.spellings import also_written

MOST: dict[str, str] = {
    "length": "500 m",
    "area": "100000 m2",
    "volume": "500000 m3",
    "mass": "500000 t",
    "density": "25 t/m3",
    "pressure": "1000000 MPa",
    "force": "1000000 kN",
    "time": "100 yr",
    "speed": "100 m/s",
    "line_load": "10000 t/m",
    "area_density": "1000 kg/m2",
    "spreading_rate": "1000 m2/L",
    "each": "1000000 each",
    "person_hour": "1000000 person_hour",
    "current": "10000 A",
    "current_density": "100 A/m2",
    "moment": "100000000 t*m",
    "second_moment": "10000 m4",
    "rate_of_loss": "100 mm/yr",
    "energy": "10000000 kWh",
    "stiffness": "1000000 MN/m",
    "potential": "1000 V",
    "resistance": "1000000 ohm",
    "temperature_difference": "200 K",
    "work_rate": "100000 person_hour/t",
    "power": "100000 kW",
    "charge": "1000000 Ah",
    "flow": "1000000 m3/h",
    "fraction": "100 %",
    "angle": "180 deg",
    "temperature": "100 degC",
    "salinity": "350 g/kg",
}
"""The most of each; one that may be negative goes as far the other way."""
LEAST = {"temperature": "-90 degC"}
"""The least of what is not counted from nothing."""


FIRST_FRAME, LAST_FRAME = -200, 2000


def bounds(dimension: str, schema: Mapping[str, Any]) -> tuple[str, str]:
    """Give the least and the most that a quantity may be, as text; the least is empty where it is nothing."""
    least, most = schema.get("within") or ("", "")
    most = most or MOST[dimension]
    if not least:
        least = LEAST.get(dimension) or (f"-{most}" if schema.get("signed") else "")
    return least, most


@cache
def _si(text: str, dimension: str) -> float:
    return parse_quantity(text, dimension).si


def out_of_bounds(read: Quantity, schema: Mapping[str, Any]) -> QuantityError | None:
    """Say what is wrong with how much a quantity is, or None where nothing is."""
    if read.dimension not in MOST:
        return None
    least, most = bounds(read.dimension, schema)
    if not least and read.si < 0:
        return QuantityError("bad-quantity", f"`{read.text}` is negative, and this cannot be")
    if read.si > _si(most, read.dimension):
        return QuantityError("out-of-bounds", f"`{read.text}` is more than {most}", _cure(least, most))
    if least and read.si < _si(least, read.dimension):
        return QuantityError("out-of-bounds", f"`{read.text}` is less than {least}", _cure(least, most))
    return None


def position_out_of_bounds(text: str, read: tuple[int | str, float]) -> QuantityError | None:
    """Say what is wrong with how far a position is, or None where nothing is."""
    anchor, distance = read
    frame = anchor if isinstance(anchor, int) else 0
    if not FIRST_FRAME <= frame <= LAST_FRAME:
        return QuantityError("out-of-bounds", f"`{text}` is not a frame from {FIRST_FRAME} to {LAST_FRAME}")
    if abs(distance) > _si(MOST["length"], "length"):
        return QuantityError("out-of-bounds", f"`{text}` is further than {MOST['length']}")
    return None


def _cure(least: str, most: str) -> tuple[str, ...]:
    return (f"write what it is, from {least or 'nothing'} to {most}; is the unit the right one?",)


class Measure(NamedTuple):
    """Something that is measured: its units, how else they are spelled, and the most of it."""

    what: str
    units: tuple[str, ...]
    also: tuple[str, ...]
    most: str


def unit_table() -> tuple[Measure, ...]:
    """Give for each thing that is measured its units as they may be written, and the most of it."""
    return tuple(
        Measure(dimension.replace("_", " "), units, tuple(one for name in units for one in also_written(name)), most)
        for dimension, most in MOST.items()
        for units in [units_of(dimension)]
    )
