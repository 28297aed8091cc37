"""The spellings of the papers of ships and yards, and that whatever is printed is read back.

Checked against: international yard and pound agreement of 1959; NIST Handbook 44, Appendix C; SI Brochure, 9th ed.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.registry import methods
from tenderwright.quantities import display
from tenderwright.quantities.bounds import MOST, unit_table
from tenderwright.quantities.purposes import PURPOSES
from tenderwright.quantities.quantity import QuantityError, parse_quantity, units_of
from tenderwright.quantities.spellings import AMBIGUOUS, SPELLINGS, spelled
from tenderwright.quantities.units import unit

INCH, FOOT, POUND, GALLON = 0.0254, 0.3048, 0.45359237, 231 * 0.0254**3
TON, G = 2240 * POUND, 9.80665


@pytest.mark.parametrize(
    ("text", "dimension", "si"),
    [
        ("24' 6\"", "length", 24.5 * FOOT),
        ("24'-6\"", "length", 24.5 * FOOT),
        ("24'6\"", "length", 24.5 * FOOT),
        ("24’-6”", "length", 24.5 * FOOT),
        ("24′ 6″", "length", 24.5 * FOOT),
        ("24' 6''", "length", 24.5 * FOOT),
        ("24'", "length", 24 * FOOT),
        ("12 ft 6 in.", "length", 12.5 * FOOT),
        ("12 ft. 6 in", "length", 12.5 * FOOT),
        ("12 FT 6 IN", "length", 12.5 * FOOT),
        ("12 feet 6 inches", "length", 12.5 * FOOT),
        ("12ft-6in", "length", 12.5 * FOOT),
        ("12 ft, 6 ins.", "length", 12.5 * FOOT),
        ("12' 6 1/2\"", "length", (12 * 12 + 6.5) * INCH),
        ("12'-6 1/2\"", "length", (12 * 12 + 6.5) * INCH),
        ("12' 6-1/2\"", "length", (12 * 12 + 6.5) * INCH),
        ("12' 6½\"", "length", (12 * 12 + 6.5) * INCH),
        ("-12' 6 1/2\"", "length", -(12 * 12 + 6.5) * INCH),
        ("−12'-6 1/2\"", "length", -(12 * 12 + 6.5) * INCH),
        ("12'-.5\"", "length", 144.5 * INCH),
        ("0'-6\"", "length", 6 * INCH),
        ("12-6 ft-in", "length", 12.5 * FOOT),
        ("12-6 1/2 ft-in", "length", (144 + 6.5) * INCH),
        ("−12-0 1/8 ft-in", "length", -(144 + 0.125) * INCH),
        ("0-1/2 ft-in", "length", 0.5 * INCH),
        ("12-6-3 ft-in-8", "length", (144 + 6.375) * INCH),
        ("0-11-7 ft-in-eighths", "length", 11.875 * INCH),
        ("5.5 ft-in", "length", 5.5 * FOOT),
        ('6"', "length", 6 * INCH),
        ("6.5”", "length", 6.5 * INCH),
        ('3 1/2"', "length", 3.5 * INCH),
        ('-3 1/2"', "length", -3.5 * INCH),
        ('3-1/2"', "length", 3.5 * INCH),
        ("3½ in", "length", 3.5 * INCH),
        ('⅜"', "length", 0.375 * INCH),
        ("1/2-inch", "length", 0.5 * INCH),
        ("15 mils", "length", 0.015 * INCH),
        ("15 thou", "length", 0.015 * INCH),
        ("250 microns", "length", 250e-6),
        ("4 fathoms", "length", 24 * FOOT),
        ("100 lin ft", "length", 100 * FOOT),
        ("100 lin. ft.", "length", 100 * FOOT),
        ("100 linear feet", "length", 100 * FOOT),
        ("100 LF", "length", 100 * FOOT),
        ("10.2# plate", "length", INCH / 4),
        ("20# plate", "length", INCH / 2),
        ("20# pl.", "length", INCH / 2),
        ("20 #", "length", INCH / 2),
        ("20-lb plate", "length", INCH / 2),
        ("20 lb. plate", "length", INCH / 2),
        ("12 sq ft", "area", 12 * FOOT**2),
        ("12 sq. ft.", "area", 12 * FOOT**2),
        ("12 sq.ft", "area", 12 * FOOT**2),
        ("12 SQFT", "area", 12 * FOOT**2),
        ("12 square feet", "area", 12 * FOOT**2),
        ("12 sqm", "area", 12.0),
        ("12 sq m", "area", 12.0),
        ("12 ft²", "area", 12 * FOOT**2),
        ("12 in^2", "area", 12 * INCH**2),
        ("12 cu ft", "volume", 12 * FOOT**3),
        ("12 cu. ft.", "volume", 12 * FOOT**3),
        ("12 cubic feet", "volume", 12 * FOOT**3),
        ("12 cbm", "volume", 12.0),
        ("12 cu m", "volume", 12.0),
        ("5 US gal", "volume", 5 * GALLON),
        ("5 US gals", "volume", 5 * GALLON),
        ("5 U.S. gallons", "volume", 5 * GALLON),
        ("5 imp gal", "volume", 5 * 0.00454609),
        ("5 Imp. gallons", "volume", 5 * 0.00454609),
        ("5 imperial gallons", "volume", 5 * 0.00454609),
        ("5 liters", "volume", 0.005),
        ("2000 long ton", "mass", 2000 * TON),
        ("2000 long tons", "mass", 2000 * TON),
        ("2000 L.T.", "mass", 2000 * TON),
        ("2000 LT", "mass", 2000 * TON),
        ("20 short tons", "mass", 20 * 2000 * POUND),
        ("20 S.T.", "mass", 20 * 2000 * POUND),
        ("20 metric tons", "mass", 20000.0),
        ("40 lbs", "mass", 40 * POUND),
        ("40 lb.", "mass", 40 * POUND),
        ("40 LBS.", "mass", 40 * POUND),
        ("3 long_cwt", "mass", 3 * 112 * POUND),
        ("16 oz", "mass", POUND),
        ("60 psi", "pressure", 60 * POUND * G / INCH**2),
        ("60 ksi", "pressure", 60e3 * POUND * G / INCH**2),
        ("60 lbf/in2", "pressure", 60 * POUND * G / INCH**2),
        ("60 lbf per sq. in.", "pressure", 60 * POUND * G / INCH**2),
        ("5 kips", "force", 5000 * POUND * G),
        ("8 hr", "time", 8 * 3600.0),
        ("8 hrs", "time", 8 * 3600.0),
        ("8 hrs.", "time", 8 * 3600.0),
        ("8 min", "time", 480.0),
        ("8 mins", "time", 480.0),
        ("50 degF", "temperature", 10.0),
        ("50 °F", "temperature", 10.0),
        ("50 deg F", "temperature", 10.0),
        ("-40 °F", "temperature", -40.0),
        ("10°C", "temperature", 10.0),
        ("9 degF", "temperature_difference", 5.0),
        ("5 degC", "temperature_difference", 5.0),
        ("30 mph", "speed", 30 * 5280 * FOOT / 3600),
        ("3 kts", "speed", 3 * 1852 / 3600),
        ("5 ug/cm2", "area_density", 5e-9 / 1e-4),
        ("5 µg/cm²", "area_density", 5e-9 / 1e-4),
        ("5 µg per sq cm", "area_density", 5e-9 / 1e-4),
        ("30 psf", "area_density", 30 * POUND / FOOT**2),
        ("64 lb/cu ft", "density", 64 * POUND / FOOT**3),
        ("14 long ton/in", "line_load", 14 * TON / INCH),
        ("14 long tons per inch", "line_load", 14 * TON / INCH),
        ("14 L.T./in.", "line_load", 14 * TON / INCH),
        ("300 ft·long ton/in", "mass", 300 * TON * 12),
        ("300 ft-long tons", "moment", 300 * FOOT * TON),
        ("300 foot-pounds", "moment", 300 * FOOT * POUND),
        ("5 mpy", "rate_of_loss", 5 * INCH / 1000 / 31557600),
        ("-800 mV", "potential", -0.8),
        ("12 man-hours", "person_hour", 12.0),
        ("12 off", "each", 12.0),
        ("12 nos.", "each", 12.0),
        ("35 ppt", "salinity", 35.0),
        ("5 per cent", "fraction", 0.05),
        ("5 degrees", "angle", 5 * 3.141592653589793 / 180),
        ("300 sq ft/US gal", "spreading_rate", 300 * FOOT**2 / GALLON),
    ],
)
def test_spellings_of_the_papers(text: str, dimension: str, si: float) -> None:
    read = parse_quantity(text, dimension)
    assert read.si == pytest.approx(si, rel=1e-9)
    assert read.text == text
    assert read.magnitude == pytest.approx(read.number(si), rel=1e-9)


PRINTED = sorted(
    {*display._SHOWN}
    | {symbol.unit for method in methods().values() for symbol in method.outputs if symbol.unit}
    | {name for one in unit_table() for name in one.units if name != "of one"}
)


@pytest.mark.parametrize("name", PRINTED)
def test_every_unit_that_is_printed_is_read_back(name: str) -> None:
    if name in ("degC", "degF"):
        assert spelled(display.shown_unit(name)) == name
    else:
        assert unit(display.shown_unit(name)) == unit(name)


@pytest.mark.parametrize("dimension", MOST)
def test_every_unit_of_a_dimension_is_read_back_as_it_is_shown(dimension: str) -> None:
    for name in units_of(dimension):
        plain, shown = (parse_quantity(f"−12.5 {one}", dimension) for one in (name, display.shown_unit(name)))
        assert (shown.si, shown.unit, shown.dimension) == (plain.si, plain.unit, plain.dimension)
        assert dimension == "temperature_difference" or shown.magnitude == pytest.approx(-12.5)


@pytest.mark.parametrize("one", unit_table(), ids=lambda one: one.what)
def test_every_other_spelling_in_the_reference_measures_the_same(one) -> None:
    for spelling in one.also:
        read = parse_quantity(f"1 {spelling}", one.what.replace(" ", "_"))
        assert read.unit in one.units


@given(
    st.sampled_from([one for one in SPELLINGS if one.islower() and one.isascii() and one not in AMBIGUOUS]),
    st.sampled_from([str, str.upper, str.capitalize]),
    st.sampled_from(["", "."]),
)
def test_a_spelling_in_capitals_or_with_a_full_stop_is_the_same_unit(spelling, letters, stop) -> None:
    assert spelled(letters(spelling) + stop) == spelled(spelling)


@given(
    st.booleans(),
    st.integers(0, 500),
    st.integers(0, 11),
    st.integers(0, 31),
    st.sampled_from(["'", "’", "′", " ft", " ft.", "ft", " feet"]),
    st.sampled_from([" ", "-", " - ", ""]),
    st.sampled_from(['"', "”", "″", " in", " in.", "in", " inches"]),
    st.sampled_from([" ", "-"]),
)
def test_feet_and_inches_however_written_read_back(minus, feet, inches, part, foot, between, inch, link) -> None:
    fraction = f"{link}{part}/32" if part else ""
    text = f"{'-' if minus else ''}{feet}{foot}{between}{inches}{fraction}{inch}"
    exact = (feet * 12 + inches + Fraction(part, 32)) * (-1 if minus else 1)
    assert parse_quantity(text, "length").si == pytest.approx(float(exact) * INCH, rel=1e-12)


@given(st.integers(1, 999), st.lists(st.integers(0, 999), min_size=2, max_size=4))
def test_commas_that_can_only_set_off_thousands(first: int, rest: list[int]) -> None:
    grouped = ",".join([str(first), *(f"{one:03d}" for one in rest)])
    assert parse_quantity(f"{grouped} lb", "mass").si == pytest.approx(int(grouped.replace(",", "")) * POUND)


def test_a_band_about_a_temperature_is_a_difference() -> None:
    read = parse_quantity("50 °F ± 9 °F", "temperature")
    assert (read.si, read.within) == (pytest.approx(10.0), pytest.approx(5.0))


@pytest.mark.parametrize(
    ("text", "dimension"),
    [("5 MT", "mass"), ("5 lt", "any"), ("5 #", "mass"), ("12-6", "length"), ("12' 6", "length"), ("5 m**m", "area")],
)
def test_what_may_mean_several_things_or_nothing_is_refused(text: str, dimension: str) -> None:
    with pytest.raises(QuantityError):
        parse_quantity(text, dimension)


@given(st.text("abcdefgmnostu_*/ .²'", min_size=2, max_size=7), st.sampled_from(sorted(MOST)))
def test_a_hint_names_a_unit_of_what_is_asked(name: str, dimension: str) -> None:
    try:
        parse_quantity(f"1 {name}", dimension)
    except QuantityError as error:
        for hint in error.hints:
            if hint.startswith("did you mean"):
                assert parse_quantity(f"1 {hint.split('`')[1]}", dimension)


@pytest.mark.parametrize("units", ["metric", "us"])
@given(figure=st.floats(1e-3, 1e5), purpose=st.sampled_from(sorted({*PURPOSES} - {"count"})), minus=st.booleans())
def test_every_figure_that_is_shown_is_read_back_and_shown_the_same(
    units: str, figure: float, purpose: str, minus: bool
) -> None:
    of = PURPOSES[purpose]
    si = in_units_of(figure * (-1 if minus else 1), of.us.unit if units == "us" else of.metric.unit, of.dimension)
    with display.telling_in(units):
        shown = display.show(si, purpose)
        assert display.show(parse_quantity(shown, of.dimension).si, purpose) == shown
        cell = f"{display.in_column(si, purpose)} {display.unit_of(purpose)}"
        assert display.show(parse_quantity(cell, of.dimension).si, purpose) == shown


def in_units_of(figure: float, name: str, dimension: str) -> float:
    return parse_quantity(f"{figure:.9f} {name}", dimension).si


@pytest.mark.parametrize(
    ("text", "dimension", "si", "within"),
    [
        ("745 ± 7 t", "mass", 745e3, 7e3),
        ("12.5 ± 0.5 ft", "length", 12.5 * FOOT, 0.5 * FOOT),
        ("50 ± 9 °F", "temperature", 10.0, 5.0),
        ("30 ± 5 %", "fraction", 0.3, 0.05),
        ("30 ± 5 %", "any", 0.3, 0.05),
        ("−0.4 ± 0.1 m", "length", -0.4, 0.1),
    ],
)
def test_a_band_as_it_is_printed_has_its_unit_once(text: str, dimension: str, si: float, within: float) -> None:
    read = parse_quantity(text, dimension)
    assert (read.si, read.within) == (pytest.approx(si), pytest.approx(within))


@pytest.mark.parametrize("text", ["745 ± 1 %", "745 ± 7", "± 7 t"])
def test_a_band_without_the_unit_of_its_figure_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_quantity(text, "mass")
