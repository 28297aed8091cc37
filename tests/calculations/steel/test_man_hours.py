from __future__ import annotations

import math
from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steel.man_hours import (
    METHOD,
    hours_per_tonne,
    renewal_hours,
    tariff_mass,
)


def test_published_mass_of_an_angle() -> None:
    # Butler, Guide to Ship Repair Estimates, 2000: 1 m of angle 150 by 175 by 10 mm is 26.0 kg at density 8.
    assert tariff_mass(1.0, 0.150 + 0.175, 0.010) == pytest.approx(26.0)


def test_plate_flat_and_in_the_keel() -> None:
    # Butler's 240 man-hours per tonne at 10 mm and 1.4 for the keel: 0.240 t, 57.6 and 80.64 (derived).
    mass = tariff_mass(2.0, 1.5, 0.010)
    assert mass == pytest.approx(240.0)
    assert renewal_hours(mass, hours_per_tonne(0.010)) == pytest.approx(57.6)
    assert renewal_hours(mass, hours_per_tonne(0.010), [1.4]) == pytest.approx(80.64)


@pytest.mark.parametrize(
    ("millimetres", "hours"),
    [(4, 250), (6, 250), (8, 245), (10, 240), (12.5, 230), (16, 220), (18, 210), (20, 200)],
)
def test_lines_between_figures_are_near_the_published_rows(millimetres: float, hours: float) -> None:
    # Butler, man-hours per tonne of flat plate; 6, 10 and 20 mm are held, the rest lie within 2 %.
    assert hours_per_tonne(millimetres / 1000) == pytest.approx(hours, rel=0.02)


@pytest.mark.parametrize(("millimetres", "hours"), [(6, 250), (10, 240), (20, 200)])
def test_published_rows_that_are_held(millimetres: float, hours: float) -> None:
    assert hours_per_tonne(millimetres / 1000) == pytest.approx(hours, abs=1e-9)


def test_fairing_costs_less_than_renewal() -> None:
    # Butler: fair in place 50 %, remove, fair and refit 80 % of renewal.
    assert renewal_hours(1000.0, 240.0, treatment="fair in place") == pytest.approx(120.0)
    assert renewal_hours(1000.0, 240.0, treatment="remove, fair and refit") == pytest.approx(192.0)


def test_order_of_factors_does_not_matter() -> None:
    hours = [renewal_hours(1000.0, 240.0, order) for order in permutations([1.4, 1.2, 1.1])]
    assert hours == pytest.approx([240 * 1.4 * 1.2 * 1.1] * 6)


@given(st.floats(0.0005, 0.02), st.floats(0.0005, 0.02))
def test_thicker_plate_never_takes_more_hours_per_tonne(one: float, other: float) -> None:
    thin, thick = sorted((one, other))
    assert hours_per_tonne(thick) <= hours_per_tonne(thin)


@pytest.mark.parametrize("thickness", [0.0, -0.01, 0.0201, float("nan")])
def test_refuses_a_thickness_beyond_the_figures(thickness: float) -> None:
    with pytest.raises(OutOfRange, match="20 mm"):
        hours_per_tonne(thickness)


@pytest.mark.parametrize(
    ("mass", "rate", "factors", "words"),
    [(-1.0, 240.0, [], "mass"), (1.0, 0.0, [], "rate"), (1.0, 240.0, [1.2, 0.0], "factor")],
)
def test_refuses_what_is_no_work(mass: float, rate: float, factors: list[float], words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        renewal_hours(mass, rate, factors)


def test_refuses_a_piece_below_nothing() -> None:
    with pytest.raises(OutOfRange, match="piece"):
        tariff_mass(-1.0, -1.0, 0.01)


def test_method_multiplies_all_that_is_given() -> None:
    outputs = METHOD.run(
        length=2.0,
        breadth=1.5,
        thickness=0.010,
        place="bilge",
        curvature="single",
        high_tensile=True,
        treatment="fair in place",
        other_factors=[1.1],
    )
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["factor"] == pytest.approx(math.prod([1.25, 1.2, 1.1, 1.1, 0.5]))
    assert outputs["man_hours"] == pytest.approx(57.6 * outputs["factor"])


def test_own_rate_comes_before_the_source_and_its_range() -> None:
    outputs = METHOD.run(length=1.0, breadth=1.0, thickness=0.025, rate=300.0)
    assert outputs["man_hours"] == pytest.approx(0.2 * 300)
