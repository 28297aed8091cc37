"""The two methods of resistance against published figures, and against each other."""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tow.resistance_navy import (
    KNOT,
    LONG_TON,
    POUND_FORCE,
    SQUARE_FOOT,
    hull_resistance,
    propeller_resistance,
    tow_resistance,
)
from tenderwright.calculations.tow.resistance_ufc import blade_area, tow_drag, wetted

TB = "TB 55-1900-232-10, App. G"


@pytest.mark.parametrize(
    ("speed", "per_ton", "pounds"),
    [(6, 0.75, 103_125), (5, 0.48, 66_000), (4, 0.3098, 42_600), (3, 0.1498, 20_600)],
)
def test_hull_of_the_manuals_example(speed: int, per_ton: float, pounds: float) -> None:
    """TB App. G, note 2: 110,000 long tons; at 6 knots its text says 0.70, but the figure printed is that of 0.75."""
    found = hull_resistance(110_000 * LONG_TON, per_ton) / POUND_FORCE
    assert found == pytest.approx(pounds, rel=2e-3)
    if speed == 6:
        assert found == pytest.approx(103_125, abs=0.5)
        assert hull_resistance(110_000 * LONG_TON, 0.70) / POUND_FORCE == pytest.approx(96_250, abs=0.5)


def test_like_ships_are_compared_by_speed_and_length() -> None:
    """TB App. G, note 2: 15 knots and 850 ft are 0.51, and a listed ship of 595 ft at 14 knots 0.57."""
    assert (round(15 / sqrt(850), 2), round(14 / sqrt(595), 2)) == (0.51, 0.57)


def test_propellers_of_a_ship_that_is_not_listed() -> None:
    """TB App. G, note 3: 150 ft2 by a ratio of 4.4 are 660 ft2; 88,791 lb at 6 knots by the formula (derived)."""
    area = 150 * 4.4
    assert area == pytest.approx(660)
    assert propeller_resistance(area * SQUARE_FOOT, 6 * KNOT) / POUND_FORCE == pytest.approx(88_791, abs=0.5)


def navy(speed: float, wind: float, sea: float, blades: float = 60.0) -> dict[str, float]:
    found = tow_resistance(
        speed * KNOT,
        wind * KNOT,
        1200 * LONG_TON,
        1500 * SQUARE_FOOT,
        propeller_area=blades * SQUARE_FOOT,
        hull_curve=[{"speed": 4 * KNOT, "per_ton": 0.5}, {"speed": 6 * KNOT, "per_ton": 0.7}],
        sea=sea * POUND_FORCE,
    )
    return {name: force / POUND_FORCE for name, force in found.items()}


def test_probable_weather() -> None:
    """By the formulas of TB App. G (derived): 1200 long tons at 5 knots, R_H/D 0.60, wind of 15 knots."""
    found = navy(5, 15, 1000)
    assert found["hull"] == pytest.approx(900)
    assert found["propeller"] == pytest.approx(5605.5, abs=0.05)
    assert found["wind"] == pytest.approx(2125.2, abs=0.05)
    assert found["total"] == pytest.approx(9630.7, abs=0.05)
    assert found["pull"] == pytest.approx(10_593.8, abs=0.05)
    assert found["propeller"] / found["total"] == pytest.approx(0.58, abs=0.005)


def test_worst_weather() -> None:
    """The same in a wind of 25 knots and R_S 4000 lb (derived)."""
    found = navy(5, 25, 4000)
    assert found["wind"] == pytest.approx(4781.7, abs=0.05)
    assert found["total"] == pytest.approx(15_287.2, abs=0.05)
    assert found["pull"] == pytest.approx(16_815.9, abs=0.05)


def test_hove_to_governs() -> None:
    """Stopped in a wind of 40 knots with R_S 10,000 lb (derived): more than any tow at 5 knots."""
    found = navy(0, 40, 10_000)
    assert (found["hull"], found["propeller"]) == (0, 0)
    assert found["wind"] == pytest.approx(8500.8, abs=0.05)
    assert found["pull"] == pytest.approx(20_350.9, abs=0.05)
    assert found["pull"] > navy(5, 25, 4000)["pull"]


def test_what_the_curve_does_not_give_is_not_known() -> None:
    found = tow_resistance(7 * KNOT, 0, 1e6, 10, hull_curve=[{"speed": 6 * KNOT, "per_ton": 0.7}], sea=0)
    assert found["hull"] is found["total"] is found["pull"] is None
    assert tow_resistance(0, 10, 1e6, 10)["total"] is None


def test_published_example_of_a_destroyer() -> None:
    """UFC 4-159-03, 4-5.2: of a destroyer in a current of 1.544 m/s the propellers are about two thirds."""
    blades = blade_area(161.2, 16.76, 100)
    assert wetted(161.2, 6.4, 7.93e6, 1025) == pytest.approx(2962.7, abs=0.1)
    assert blades == pytest.approx(32.24, abs=0.01)
    found = tow_drag(1.544, 0, 161.2, 16.76, 6.4, 7.93e6, blades=blades, sea=0)
    kilonewtons = [found[name] / 1000 for name in ("form", "friction", "propeller", "total")]
    assert kilonewtons == pytest.approx([13.105, 6.796, 39.390, 59.291], abs=0.003)
    assert found["propeller"] / found["total"] == pytest.approx(2 / 3, abs=0.01)


def test_a_ship_of_sixty_metres_by_both() -> None:
    """UFC 4-159-03, 4-5.2 (derived), against the propeller term of TB App. G for the same area: a third more."""
    blades = blade_area(60, 10, 240)
    found = tow_drag(5 * KNOT, 0, 60, 10, 4, 1.2e6, blades=blades, sea=0)
    kilonewtons = [found[name] / 1000 for name in ("form", "friction", "propeller", "total")]
    assert kilonewtons == pytest.approx([13.563, 4.769, 10.116, 28.448], abs=0.003)
    assert found["total"] / 9806.65 == pytest.approx(2.901, abs=0.001)
    assert wetted(60, 4, 1.2e6, 1025) == pytest.approx(700.68, abs=0.01)
    assert blades == pytest.approx(2.9833, abs=1e-4)
    assert propeller_resistance(blades, 5 * KNOT) / found["propeller"] == pytest.approx(1.32, abs=0.005)


speeds, winds = st.floats(0, 7), st.floats(0, 40)


@given(speeds, winds, st.floats(0, 1e5), st.floats(0, 20))
def test_no_term_is_more_than_the_whole(speed: float, wind: float, sea: float, blades: float) -> None:
    curve = [{"speed": 0.0, "per_ton": 0.0}, {"speed": 8.0, "per_ton": 2.0}]
    by_navy = tow_resistance(speed, wind, 1e6, 60, propeller_area=blades, hull_curve=curve, sea=sea)
    by_ufc = tow_drag(speed, wind, 50, 9, 3, 7e5, 60, blades=blades, sea=sea)
    for found in (by_navy, by_ufc):
        terms = [term for name, term in found.items() if name not in ("total", "pull")]
        assert all(0 <= term <= found["total"] + 1e-6 for term in terms)
        assert found["total"] == pytest.approx(sum(terms))


@given(speeds, winds)
def test_wind_grows_with_its_square_and_no_propeller_has_no_drag(speed: float, wind: float) -> None:
    once, twice = (tow_resistance(0, one, 1e6, 60) for one in (wind, 2 * wind))
    assert twice["wind"] == pytest.approx(4 * once["wind"])
    assert tow_resistance(speed, wind, 1e6, 60)["propeller"] == 0
    assert tow_drag(speed, wind, 50, 9, 3, 7e5)["propeller"] == 0


@pytest.mark.parametrize("speed", [-0.1, 16 * KNOT])
def test_beyond_the_speeds_of_a_tow(speed: float) -> None:
    with pytest.raises(OutOfRange, match="15 knots"):
        tow_resistance(speed, 0, 1e6, 10)
    with pytest.raises(OutOfRange, match="15 knots"):
        tow_drag(speed, 0, 50, 9, 3, 7e5)
