from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.quantities.display import decimals, in_unit, plus_minus, show, show_in, si_unit, significant, tidy
from tenderwright.quantities.units import base_expression, unit


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
    assert show(757680.0, "t") == "757.7 t"
    assert show(459.0, "m2") == "459.0 m²"
    assert show(0.3, "%") == "30.00 %"
    assert show(9.0, "degC", "temperature", 2) == "9.0 °C"
    assert show(28.0, "g/kg", "salinity", 2) == "28 g/kg"
    assert show(12.0, "each", digits=2) == "12 no."
    assert show(1.5, "", digits=2) == "1.5"


@pytest.mark.parametrize(
    ("system", "text"),
    [("metric", "51.80 m"), ("us", "169.9 ft"), ("both", "51.80 m (169.9 ft)")],
)
def test_the_package_says_in_which_units_figures_are_shown(system: str, text: str) -> None:
    assert show_in(51.8, "m", "length", system) == text


def test_what_has_no_customary_unit_is_metric_for_all() -> None:
    assert show_in(0.001, "mm/yr", "rate_of_loss", "both") == show(0.001, "mm/yr", "rate_of_loss")


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
    ("si", "uncertainty", "unit", "written"),
    [
        (745118.9, 3621.0, "t", "745 ± 7 t"),
        (0.6303, 0.0284, "m", "0.63 ± 0.06 m"),
        (3.456, 0.0095, "m", "3.456 ± 0.019 m"),
        (745118.9, 60000.0, "t", "750 ± 120 t"),
        (3.45678, 0.00049, "m", "3.457 ± 0.001 m"),
        (-0.0001, 0.0284, "m", "0.00 ± 0.06 m"),
        (3.4, 0.0, "m", "3.400 m"),
    ],
)
def test_a_figure_is_written_to_the_digits_that_its_uncertainty_bears(si, uncertainty, unit, written):
    """Twice the standard uncertainty to one digit, two after a one (JCGM 100:2008, 7.2.6, gives at most two)."""
    assert plus_minus(si, uncertainty, unit) == written
