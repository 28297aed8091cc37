from __future__ import annotations

import re
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.quantities.customs import telling_in
from tenderwright.quantities.display import (
    abbreviation,
    decimals,
    eighths,
    factor_of,
    head,
    in_column,
    in_unit,
    is_customary,
    plus_minus,
    show,
    si_unit,
    significant,
    tidy,
    unit_of,
    written_as,
)
from tenderwright.quantities.purposes import PURPOSES
from tenderwright.quantities.quantity import parse_quantity
from tenderwright.quantities.units import base_expression, signature, unit


@pytest.mark.parametrize(
    ("number", "digits", "text"),
    [
        (0.0, 4, "0"),
        (-0.0, 4, "0"),
        (757.68, 4, "757.7"),
        (12345.6, 4, "12346"),  # whole digits are kept
        (9.99996, 4, "10.00"),  # rounding up does not gain a digit
        (0.000123456, 3, "0.000123"),
        (-2.5, 2, "−2.5"),
        (1e-7, 2, "0.00000010"),
        (1.0, 1, "1"),
    ],
)
def test_significant_digits(number: float, digits: int, text: str) -> None:
    assert significant(number, digits) == text


@pytest.mark.parametrize(
    ("number", "places", "text"),
    [(-0.004, 2, "0.00"), (-0.0, 0, "0"), (-0.006, 2, "−0.01"), (1.005, 1, "1.0"), (-12.0, 0, "−12")],
)
def test_a_rounded_zero_has_no_minus(number: float, places: int, text: str) -> None:
    assert decimals(number, places) == text


@given(st.floats(-1e9, 1e9), st.integers(1, 8))
def test_significant_text_is_within_half_of_its_last_digit(number: float, digits: int) -> None:
    text = significant(number, digits)
    assert "e" not in text
    assert "-" not in text
    read = float(text.replace("−", "-"))
    assert read == pytest.approx(number, rel=0.5 * 10 ** (1 - digits) + 1e-12, abs=1e-300)
    assert not (text.startswith("−") and read == 0)


@given(st.floats(0.001, 1e6), st.sampled_from(["m", "ft", "mm", "t", "long_ton", "m2", "US_gal", "kg/m2"]))
def test_a_figure_in_a_unit_times_the_unit_is_the_figure(si: float, name: str) -> None:
    assert in_unit(si, name) * unit(name).factor == pytest.approx(si, rel=1e-12)


@pytest.mark.parametrize(
    ("number", "digits", "text"),
    [
        ("459.4", 3, "459"),
        ("0.012345", 3, "0.0123"),
        ("12345", 3, "12345"),
        ("0", 3, "0"),
        ("2.5", 1, "2"),
        ("3.5", 1, "4"),
    ],
)
def test_tidy_rounds_halves_to_even_and_keeps_whole_digits(number: str, digits: int, text: str) -> None:
    assert f"{tidy(Decimal(number), digits):f}" == text


def test_figures_with_their_units() -> None:
    assert show(757680.0, "weight") == "757.7 t"
    assert show(757680.0, "weight", digits=3) == "758 t"
    assert show(757680.0, "weight", more=1) == "757.68 t"
    assert show(0.3, "share") == "30 %"
    assert show(9.0, "temperature", digits=2) == "9.0 °C"
    assert show(12.0, "count") == "12"
    assert show(1.5, "", digits=2) == "1.5"


@pytest.mark.parametrize(
    ("si", "purpose", "metric", "us"),
    [
        (12.4, "distance", "12.40 m", "40 ft 8 1/4 in"),
        (0.4, "height", "0.40 m", "1 ft 3 3/4 in"),
        (-6.096, "height", "−6.10 m", "−20 ft"),
        (4.321, "draft", "4.32 m", "14.18 ft"),
        (0.009525, "thickness", "9.5 mm", "0.375 in"),
        (125e-6, "film", "125 µm", "4.9 mil"),
        (70e-6, "salts", "70 mg/m²", "7.0 µg/cm²"),  # ISO 8502-9: 1 µg/cm² is 10 mg/m²
        (2.0e6, "block load", "2.00 MPa", "290 psi"),
        (32000.0, "line load", "32.0 t/m", "9.60 long ton/ft"),
        (18.5, "capacity", "18.50 m³", "4887 US gal"),
        (745e3, "weight", "745.0 t", "733.2 long ton"),
        (12.0, "part", "12 kg", "26 lb"),
        (501.0, "area", "501.0 m²", "5393 ft²"),
        (5000.0, "surface spreading", "5.0 m²/L", "204 ft²/US gal"),
        (9.0, "temperature", "9.0 °C", "48 °F"),
        (3.0, "temperature difference", "3.0 K", "5.4 °F"),
        (10.0, "wind speed", "10 m/s", "19 kn"),
        (1e-4 / 31557600, "rate of loss", "0.100 mm/yr", "3.94 mil/yr"),
        (1025.0, "density", "1.025 t/m³", "63.99 lb/ft³"),  # sea water is reckoned at 64 lb a cubic foot
        (5e5, "immersion", "5.00 t/cm", "12.50 long ton/in"),
        (9e5, "change of trim", "9.00 t·m/cm", "73.8 ft·long ton/in"),
        (0.01, "angle", "0.57°", "0.57°"),
    ],
)
def test_the_purpose_picks_unit_and_digits_in_each_system(si: float, purpose: str, metric: str, us: str) -> None:
    assert show(si, purpose) == metric
    with telling_in("us"):
        assert show(si, purpose) == us
    with telling_in("both"):
        assert show(si, purpose) == (metric if metric == us else f"{metric} ({us})")
    assert show(si, purpose) == metric


@pytest.mark.parametrize("purpose", PURPOSES)
@given(share=st.floats(1e-3, 1e3))
def test_what_is_not_nothing_is_never_shown_as_nothing(purpose: str, share: float) -> None:
    of = PURPOSES[purpose]
    if of.us.eighths or of.dimension == "temperature":
        return
    si = share * max(factor_of(form.unit, of.dimension) for form in (of.metric, of.us))
    for units in ("metric", "us"):
        with telling_in(units):
            assert re.search("[1-9]", show(si, purpose).split(" ")[0])
            assert re.search("[1-9]", in_column(si, purpose))


def test_what_is_less_than_any_figure_bears_is_nothing() -> None:
    assert show(1e-12, "trim") == "0.00 m"
    assert show(0.003, "trim") == "0.003 m"


AT_SEA = ("nmi", "kn")
"""Distances and speeds at sea are told in nautical miles and knots in both systems."""


@pytest.mark.parametrize("purpose", PURPOSES)
def test_each_unit_measures_what_the_purpose_says(purpose: str) -> None:
    of = PURPOSES[purpose]
    for form in (of.metric, of.us):
        if of.dimension not in ("temperature", "temperature_difference", "salinity", "fraction", "angle"):
            assert unit(form.unit).signature == signature(of.dimension)
    assert is_customary(of.us.unit) or of.us.unit in (of.metric.unit, "ug/cm2")
    assert not is_customary(of.metric.unit) or of.metric.unit in AT_SEA


def test_columns_say_the_unit_of_their_figures() -> None:
    assert (head("Draft aft", "draft"), in_column(4.321, "draft")) == ("Draft aft, m", "4.32")
    assert (abbreviation("immersion"), unit_of("film")) == ("TPC", "µm")
    with telling_in("us"):
        assert (head("Height", "height"), in_column(1.2, "height")) == ("Height, ft-in", "3-11 1/4")
        assert abbreviation("immersion") == "TPI"
    with telling_in("both"):
        assert (head("Draft aft", "draft"), in_column(4.321, "draft")) == ("Draft aft, m (ft)", "4.32 (14.18)")


@given(st.floats(-1000, 1000))
def test_feet_and_inches_are_within_a_sixteenth_of_an_inch(feet: float) -> None:
    shown = eighths(feet).replace("−", "-")
    assert parse_quantity(shown, "length").si / 0.3048 == pytest.approx(feet, abs=1 / 192 + 1e-9)


@pytest.mark.parametrize(
    ("text", "dimension", "metric", "us", "both", "beside"),
    [
        ("12.4 m", "length", "12.4 m", "40.7 ft", "12.4 m (40.7 ft)", "40.7 ft (12.4 m)"),
        ("1/2 in", "length", "1/2 in", "1/2 in", "12.70 mm (1/2 in)", "1/2 in"),
        ("40 ft 8 in", "length", "40 ft 8 in", "40 ft 8 in", "12.40 m (40 ft 8 in)", "40 ft 8 in"),
        ("70 mg/m2", "area_density", "70 mg/m²", "7.00 µg/cm²", "70 mg/m² (7.00 µg/cm²)", "7.00 µg/cm² (70 mg/m²)"),
        ("24 h", "time", "24 h", "24 h", "24 h", "24 h"),
        ("-5 degC", "temperature", "−5 °C", "23.0 °F", "−5 °C (23.0 °F)", "23.0 °F (−5 °C)"),
    ],
)
def test_what_is_written_is_shown_in_the_system_asked_for(text, dimension, metric, us, both, beside):
    quantity = parse_quantity(text, dimension)
    assert written_as(quantity) == metric
    for units, shown in (("us", us), ("both", both)):
        with telling_in(units):
            assert written_as(quantity) == shown
    with telling_in("us"):
        assert written_as(quantity, beside=True) == beside


@pytest.mark.parametrize(
    ("dimension", "si"),
    [
        ("length", "m"),
        ("area", "m2"),
        ("density", "kg/m3"),
        ("angle", "rad"),
        ("fraction", "1"),
        ("temperature", "degC"),
    ],
)
def test_si_units(dimension: str, si: str) -> None:
    assert si_unit(dimension) == si


def test_a_name_that_is_no_dimension_has_no_units() -> None:
    assert base_expression("beauty") == ""
    assert si_unit("beauty") == ""


@pytest.mark.parametrize(
    ("si", "uncertainty", "purpose", "written"),
    [
        (745118.9, 3621.0, "weight", "745 ± 7 t"),
        (0.6303, 0.0284, "draft", "0.63 ± 0.06 m"),
        (3.456, 0.0095, "draft", "3.456 ± 0.019 m"),
        (745118.9, 60000.0, "weight", "750 ± 120 t"),
        (3.45678, 0.00049, "draft", "3.457 ± 0.001 m"),
        (-0.0001, 0.0284, "draft", "0.00 ± 0.06 m"),
        (3.4, 0.0, "draft", "3.400 m"),
    ],
)
def test_a_figure_is_written_to_the_digits_that_its_uncertainty_bears(si, uncertainty, purpose, written):
    """Twice the standard uncertainty to one digit, two after a one (JCGM 100:2008, 7.2.6, gives at most two)."""
    assert plus_minus(si, uncertainty, purpose) == written


def test_what_it_may_be_out_by_is_in_the_unit_of_the_figure() -> None:
    with telling_in("us"):
        assert plus_minus(745118.9, 3621.0, "weight") == "733 ± 7 long ton"
        assert plus_minus(9.0, 0.5, "temperature") == "48.2 ± 1.8 °F"
    with telling_in("both"):
        assert plus_minus(745118.9, 3621.0, "weight") == "745 ± 7 t (733 ± 7 long ton)"
