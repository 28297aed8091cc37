from __future__ import annotations

import pytest

from tenderwright.quantities.bounds import LEAST, MOST, bounds, out_of_bounds, position_out_of_bounds
from tenderwright.quantities.position import check_position
from tenderwright.quantities.quantity import parse_quantity
from tenderwright.quantities.units import _DIMENSIONS


def wrong(text: str, dimension: str, **schema: object) -> str:
    error = out_of_bounds(parse_quantity(text, dimension), schema)
    return error.message if error else ""


def test_every_dimension_is_bounded() -> None:
    assert set(MOST) == set(_DIMENSIONS) | {"fraction", "angle", "temperature", "salinity"}
    for dimension, most in MOST.items():
        assert parse_quantity(most, dimension).si > 0
        assert wrong(most, dimension) == ""
    for dimension, least in LEAST.items():
        assert wrong(least, dimension) == ""


@pytest.mark.parametrize(
    ("text", "dimension", "schema", "message"),
    [
        ("650 %", "fraction", {}, "`650 %` is more than 100 %"),
        ("100 %", "fraction", {}, ""),
        ("10 t/m3", "density", {"within": ["950 kg/m3", "1100 kg/m3"]}, "`10 t/m3` is more than 1100 kg/m3"),
        ("0.9 t/m3", "density", {"within": ["950 kg/m3", "1100 kg/m3"]}, "`0.9 t/m3` is less than 950 kg/m3"),
        ("2000 ft", "length", {}, "`2000 ft` is more than 500 m"),
        ("-1 m", "length", {}, "`-1 m` is negative, and this cannot be"),
        ("-1 m", "length", {"signed": True}, ""),
        ("-501 m", "length", {"signed": True}, "`-501 m` is less than -500 m"),
        ("240 nmi", "length", {"within": ["", "40000 km"]}, ""),
        ("-95 degC", "temperature", {}, "`-95 degC` is less than -90 degC"),
        ("1000001 each", "any", {}, "`1000001 each` is more than 1000000 each"),
    ],
)
def test_what_no_ship_has_is_told(text: str, dimension: str, schema: dict[str, object], message: str) -> None:
    assert wrong(text, dimension, **schema) == message


def test_bounds_of_a_field_stand_before_those_of_its_kind() -> None:
    assert bounds("length", {}) == ("", "500 m")
    assert bounds("length", {"within": ["10 mm", ""]}) == ("10 mm", "500 m")
    assert bounds("angle", {"signed": True}) == ("-180 deg", "180 deg")


@pytest.mark.parametrize(
    ("text", "fits"),
    [("Fr 31 + 200 mm", True), ("Fr 2001", False), ("Fr -201", False), ("18 m", True), ("-501 m", False)],
)
def test_a_position_is_on_a_ship(text: str, fits: bool) -> None:
    assert (position_out_of_bounds(text, check_position(text)) is None) == fits
