"""Quantities as people write them.

Checked against: international yard and pound agreement of 1959 (inch 0.0254 m, pound 0.45359237 kg); NIST Handbook 44,
Appendix C (US gallon 231 cubic inches, long and short ton); TB 55-1900-201-45/1,
Appendix E-11 (7.7 lb plate is 3/16 in).
"""

from __future__ import annotations

import math
from decimal import Decimal

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tenderwright.notices import Place
from tenderwright.quantities.position import check_position
from tenderwright.quantities.quantity import QuantityError, parse_quantity
from tenderwright.quantities.units import plain_units, unit

INCH, FOOT, POUND = 0.0254, 0.3048, 0.45359237


@pytest.mark.parametrize(
    ("text", "dimension", "si"),
    [
        ("12.4 m", "length", 12.4),
        ("12.4m", "length", 12.4),
        (" 12.4\u00a0m ", "length", 12.4),
        ("+12 mm", "length", 0.012),
        ("-3.5 m", "length", -3.5),
        ("1e3 mm", "length", 1.0),
        ("125 um", "length", 125e-6),
        ("125 µm", "length", 125e-6),
        ("5 mil", "length", 5 * INCH / 1000),
        ("40 ft 8 in", "length", 40 * FOOT + 8 * INCH),
        ("40' 8\"", "length", 40 * FOOT + 8 * INCH),
        ("40ft 8in", "length", 40 * FOOT + 8 * INCH),
        ("-3 ft 6 in", "length", -3.5 * FOOT),
        ("3 ft 6.5 in", "length", 3 * FOOT + 6.5 * INCH),
        ("3 ft 6 1/2 in", "length", 3 * FOOT + 6.5 * INCH),
        ("3 ft 1/2 in", "length", 3 * FOOT + 0.5 * INCH),
        ("3/8 in", "length", 0.375 * INCH),
        ("1 3/8 in", "length", 1.375 * INCH),
        ("-1 3/8 in", "length", -1.375 * INCH),
        ("20.4 lb plate", "length", INCH / 2),
        ("120 m2", "area", 120.0),
        ("120 m²", "area", 120.0),
        ("120 m^2", "area", 120.0),
        ("10 ft2", "area", 10 * FOOT**2),
        ("18.5 m3", "volume", 18.5),
        ("20 L", "volume", 0.02),
        ("1 US_gal", "volume", 231 * INCH**3),
        ("1 imp_gal", "volume", 0.00454609),
        ("38 t", "mass", 38000.0),
        ("1 long_ton", "mass", 2240 * POUND),
        ("1 short_ton", "mass", 2000 * POUND),
        ("1.025 t/m3", "density", 1025.0),
        ("32 t/m", "line_load", 32000.0),
        ("40 kg/m2", "area_density", 40.0),
        ("35 t/m2", "area_density", 35000.0),
        ("50 mg/m2", "area_density", 50e-6),
        ("6.5 m2/L", "spreading_rate", 6500.0),
        ("0.15 bar", "pressure", 15000.0),
        ("900 kN", "force", 900e3),
        ("35 h", "time", 126000.0),
        ("2 weeks", "time", 14 * 86400.0),
        ("2.5 mm/yr", "rate_of_loss", 0.0025 / 31557600),
        ("12 m/s", "speed", 12.0),
        ("2 knots", "speed", 2 * 1852 / 3600),
        ("30 %", "fraction", 0.3),
        ("30%", "fraction", 0.3),
        ("0.5 deg", "angle", math.radians(0.5)),
        ("0.5°", "angle", math.radians(0.5)),
        ("-9 degC", "temperature", -9.0),
        ("9 °C", "temperature", 9.0),
        ("28 g/kg", "salinity", 28.0),
        ("12 each", "each", 12.0),
        ("3 visit", "each", 3.0),
        ("35 person-hours", "person_hour", 35.0),
        ("4 kWh", "energy", 4 * 3.6e6),
        ("12 t*m", "moment", 12000.0),
        ("110 mA/m2", "current_density", 0.11),
        (".375 in", "length", 0.375 * INCH),
        ("−3.5 m", "length", -3.5),
        ("1,234,567 lb", "mass", 1234567 * POUND),
        ("1,234.5 lb", "mass", 1234.5 * POUND),
    ],
)
def test_forms_that_people_write(text: str, dimension: str, si: float) -> None:
    read = parse_quantity(text, dimension)
    assert read.si == pytest.approx(si, rel=1e-12)
    assert read.dimension == dimension
    assert read.text == text.strip()


@pytest.mark.parametrize(
    ("name", "sixteenths"),
    [
        ("5.1", 2),
        ("7.65", 3),
        ("7.7", 3),  # TB 55-1900-201-45/1, Appendix E-11
        ("10.2", 4),
        ("12.75", 5),
        ("15.3", 6),
        ("17.85", 7),
        ("20.4", 8),
        ("25.5", 10),
        ("30.6", 12),
        ("40.8", 16),
    ],
)
def test_plate_named_by_its_weight(name: str, sixteenths: int) -> None:
    assert parse_quantity(f"{name} lb plate", "length").si == pytest.approx(sixteenths * INCH / 16, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "dimension", "code", "words", "hint"),
    [
        ("12", "length", "bad-quantity", "has no unit", "write it as in `12.4 m`"),
        ("0.3", "fraction", "bad-quantity", "has no unit", "write it as in `30 %`"),
        ("", "length", "bad-quantity", "cannot read", "write it as in `12.4 m`"),
        ("m", "length", "bad-quantity", "cannot read", "write it as in `12.4 m`"),
        ("5. m", "length", "bad-quantity", "cannot read", "write it as in `12.4 m`"),
        ("1_000 m", "length", "bad-quantity", "cannot read", "write it as in `12.4 m`"),
        ("1 200 m", "length", "bad-quantity", "has a space inside its number", "write `1200 m`"),
        ("٣ m", "length", "bad-quantity", "cannot read", "write it as in `12.4 m`"),
        ("5,5 m", "length", "bad-quantity", "comma", "write a point"),
        ("1,200 m2", "area", "bad-quantity", "comma", "write `1200 m2` if the comma sets off thousands, `1.200 m2` if"),
        ("1,2345 m2", "area", "bad-quantity", "comma", "write a point"),
        ("1,234,56 lb", "mass", "bad-quantity", "comma", "write a point"),
        ("0,125 in", "length", "bad-quantity", "comma", "write a point"),
        ("3/0 in", "length", "bad-quantity", "divides by zero", "write it as in `12.4 m`"),
        ("3 ft 1/0 in", "length", "bad-quantity", "divides by zero", "write it as in `12.4 m`"),
        ("0.1 lb plate", "length", "bad-quantity", "thinner than any plate", "write it as in `12.4 m`"),
        ("1e400 m", "length", "bad-quantity", "beyond any ship", "write it as in `12.4 m`"),
        ("1e308 km", "length", "bad-quantity", "beyond any ship", "write it as in `12.4 m`"),
        ("12 metr", "length", "bad-quantity", "unknown unit `metr`", "did you mean `metre`?"),
        (
            "12 Nm",
            "moment",
            "bad-quantity",
            "unknown unit `Nm`",
            "write it as in `1 t*m`; a moment may be in",
        ),  # a textile unit elsewhere
        ("9 R", "temperature", "bad-quantity", "unknown unit `R`", "write it as in `9 degC`"),
        ("12 kg", "length", "wrong-dimension", "expected a length, got a mass", "write it as in `12.4 m`"),
        ("12 m", "area", "wrong-dimension", "expected an area, got a length", "write it as in `120 m2`"),
        ("20.4 lb plate", "mass", "wrong-dimension", "expected a mass, got a length", "write it as in `38 t`"),
        ("30 m", "fraction", "wrong-dimension", "expected a fraction", "write it as in `30 %`"),
        ("5 °", "length", "wrong-dimension", "expected a length, got an angle", "write it as in `12.4 m`"),
        ("5 %", "each", "wrong-dimension", "expected a count, got a fraction", "write it as in `12 each`"),
        ("5 ton", "mass", "ambiguous-unit", "several meanings", "write one of `t`, `long_ton`, `short_ton`"),
        ("5 tons", "any", "ambiguous-unit", "several meanings", "write one of `t`, `long_ton`, `short_ton`"),
        ("5 ton/m", "line_load", "ambiguous-unit", "several meanings", "write one of `t/m`, `long_ton/m`"),
        ("5 tons/in", "line_load", "ambiguous-unit", "several meanings", "write one of `long_ton/in`, `short_ton/in`"),
        ("5 ft-tons", "moment", "ambiguous-unit", "meanings", "write one of `ft*long_ton`, `ft*short_ton`"),
        ("5 sq ft/gal", "spreading_rate", "ambiguous-unit", "meanings", "write one of `ft2/US_gal`, `ft2/imp_gal`"),
        ("5 cwt", "mass", "ambiguous-unit", "several meanings", "write one of `long_cwt`, `short_cwt`"),
        ("5 tons", "length", "wrong-dimension", "expected a length, got a mass", "write it as in `12.4 m`"),
        ("12 t", "force", "wrong-dimension", "expected a force, got a mass", "by standard gravity that is `117.68 kN`"),
        ("35 t/m2", "pressure", "wrong-dimension", "got an area density", "by standard gravity that is `343.233 kPa`"),
        ("300 kN/m", "line_load", "wrong-dimension", "got a stiffness", "by standard gravity that is `30.5915 t/m`"),
        ("5 milimetres", "length", "bad-quantity", "unknown unit", "did you mean `millimetres`?"),
        ("5 kilotons", "mass", "bad-quantity", "unknown unit", "write it as in `38 t`; a mass may be in"),
        ("5 sqn", "volume", "bad-quantity", "unknown unit `sqn`", "write it as in `18.5 m3`; a volume may be in"),
        ("5 gal", "volume", "ambiguous-unit", "several meanings", "write one of `US_gal`, `imp_gal`"),
        ("5 miles", "length", "ambiguous-unit", "several meanings", "write one of `nmi`, `statute_mile`"),
    ],
)
def test_what_cannot_be_read_says_why_and_how_to_mend_it(
    text: str, dimension: str, code: str, words: str, hint: str
) -> None:
    with pytest.raises(QuantityError) as caught:
        parse_quantity(text, dimension)
    assert caught.value.code == code
    assert words in caught.value.message
    assert text in caught.value.message
    assert caught.value.hints[0].startswith(hint)


def test_any_dimension_is_told_by_its_unit() -> None:
    measured = {text: parse_quantity(text, "any").dimension for text in ("24 each", "5 m2", "3 h", "2 t", "30 %")}
    assert measured == {"24 each": "each", "5 m2": "area", "3 h": "time", "2 t": "mass", "30 %": "fraction"}


def test_a_quantity_knows_its_place_and_equal_ones_are_equal() -> None:
    first, second = (parse_quantity("5 m", "length", Place("f", line)) for line in (1, 2))
    assert first.at.line == 1
    assert second.at.line == 2
    assert first == second


PLAIN = [name for name in plain_units() if not unit(name).dimensionless]
numbers = st.decimals(min_value=0, max_value=10**6, places=3)


@given(numbers, st.sampled_from(PLAIN))
def test_a_plain_number_reads_back_exactly_as_written(number: Decimal, name: str) -> None:
    read = parse_quantity(f"{number} {name}", "any")
    assert read.decimal == number
    assert f"{read.decimal} {read.unit}" == read.text
    assert read.magnitude == pytest.approx(float(number), rel=1e-12)


@given(numbers, numbers, st.sampled_from(PLAIN))
def test_si_is_linear_in_the_number(one: Decimal, two: Decimal, name: str) -> None:
    def si(number: Decimal) -> float:
        return parse_quantity(f"{number} {name}", "any").si

    assert si(one + two) == pytest.approx(si(one) + si(two), rel=1e-12)
    assert si(-one) == -si(one)


@given(st.integers(0, 500), st.integers(0, 11), st.sampled_from([2, 4, 8, 16]), st.integers(1, 15))
def test_feet_inches_and_fractions_add_up(feet: int, inches: int, parts: int, part: int) -> None:
    assume(part < parts)
    read = parse_quantity(f"{feet} ft {inches} {part}/{parts} in", "length").si
    assert read == pytest.approx(feet * FOOT + (inches + part / parts) * INCH, rel=1e-12)
    assert parse_quantity(f"{inches} {part}/{parts} in", "length").si == pytest.approx((inches + part / parts) * INCH)


@given(st.text() | st.text(alphabet="0123456789 +-./,'\"ftinmlbplate%"), st.sampled_from(["length", "any", "fraction"]))
def test_any_text_is_read_as_a_finite_figure_or_refused(text: str, dimension: str) -> None:
    try:
        read = parse_quantity(text, dimension)
    except QuantityError:
        return
    assert math.isfinite(read.si)
    assert read.decimal.is_finite()


@pytest.mark.parametrize(
    ("text", "dimension", "si", "within"),
    [
        ("628 t ± 6 t", "mass", 628e3, 6e3),
        ("628 t +/- 1 %", "mass", 628e3, 6280.0),
        ("3.68 m ± 50 mm", "length", 3.68, 0.05),
        ("12 ft 6 in ± 1/2 in", "length", 12.5 * 0.3048, 0.0127),
        ("0 m±20 mm", "length", 0.0, 0.02),
        ("30 % ± 5 %", "fraction", 0.3, 0.05),
        ("9 degC ± 1 degC", "temperature", 9.0, 1.0),
    ],
)
def test_what_follows_the_sign_is_half_the_width_of_its_band(text, dimension, si, within):
    read = parse_quantity(text, dimension)
    assert (read.si, read.within) == (pytest.approx(si), pytest.approx(within))
    assert read.text == text


@pytest.mark.parametrize("text", ["628 t ± 0 t", "628 t ± 6 m", "628 t ± 6", "628 t ±", "± 6 t", "628 t ± -6 t"])
def test_a_band_that_is_none(text):
    with pytest.raises(QuantityError):
        parse_quantity(text, "mass")


def test_a_position_has_no_band():
    with pytest.raises(QuantityError, match="position"):
        check_position("Fr 31 + 200 mm ± 10 mm")
    with pytest.raises(QuantityError, match="position"):
        check_position("18.4 m ± 0.1 m")
