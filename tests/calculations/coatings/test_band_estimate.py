from __future__ import annotations

import pytest

from tenderwright.calculations.coatings.band_estimate import METHOD, band_estimate
from tenderwright.calculations.coatings.hull_area_formulas import boottop_area, topside_area
from tenderwright.calculations.hydrostatics.denny import denny_surface
from tenderwright.calculations.method import OutOfRange

SHIP = {
    "beam": 9.2,
    "length_between_perpendiculars": 46.0,
    "length_overall": 51.0,
    "depth": 4.6,
    "draft": 3.1,
    "displacement": 656000.0,
    "density": 1025.0,
}


def test_from_the_keel_it_is_the_wetted_surface_with_a_band_up_or_down_to_its_edge() -> None:
    # Derived: 1.7 L T + V/T at 640 m3, less a band of 0.2 m of 2h (Lpp + B/2).
    wetted = 1.7 * 46 * 3.1 + 640 / 3.1
    assert denny_surface(46.0, 3.1, 640.0)["wetted_surface"] == pytest.approx(wetted)
    assert band_estimate(**SHIP, upper=2.9)["area"] == pytest.approx(wetted - 2 * 0.2 * 50.6)


def test_between_heights_and_to_the_deck_it_is_the_makers_formula() -> None:
    assert band_estimate(**SHIP, lower=2.9, upper=3.6)["area"] == pytest.approx(boottop_area(46.0, 9.2, 0.7))
    assert band_estimate(**SHIP, lower=3.6)["area"] == pytest.approx(topside_area(51.0, 9.2, 1.0))
    assert band_estimate(**SHIP)["area"] == pytest.approx(topside_area(51.0, 9.2, 4.6))


@pytest.mark.parametrize(
    ("lacking", "band"),
    [
        ("displacement", {"upper": 2.9}),
        ("density", {"upper": 2.9}),
        ("draft", {"upper": 2.9}),
        ("length_between_perpendiculars", {"lower": 2.9, "upper": 3.6}),
        ("length_overall", {"lower": 3.6}),
        ("depth", {}),
    ],
)
def test_says_which_figure_a_band_needs(lacking: str, band: dict[str, float]) -> None:
    known = {name: figure for name, figure in SHIP.items() if name != lacking}
    with pytest.raises(OutOfRange, match=lacking.replace("_", " ")):
        METHOD.run(**known, **band)


def test_refuses_edges_that_are_the_wrong_way_round() -> None:
    with pytest.raises(OutOfRange, match="boot-top"):
        band_estimate(**SHIP, lower=3.6, upper=2.9)
    with pytest.raises(OutOfRange, match="topsides"):
        band_estimate(**SHIP, lower=4.7)
