from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.hull_area_formulas import (
    METHOD,
    UNDERWATER_COEFFICIENTS,
    boottop_area,
    topside_area,
    underwater_area,
    weather_deck_area,
)
from tenderwright.calculations.method import OutOfRange


def test_underwater_area_beside_a_published_wetted_surface() -> None:
    # Holtrop and Mennen 1982 (from memory): Lpp taken as L 205, B 32, T 10 m have 7381.45 m², so P = 0.692,
    # just under the 0.70 to 0.75 of a liner.
    whole = underwater_area(205.0, 32.0, 10.0, 1.0)
    assert 7381.45 / whole == pytest.approx(0.692, abs=5e-4)
    assert underwater_area(205.0, 32.0, 10.0, 0.70) == pytest.approx(7381.45, rel=0.012)
    assert underwater_area(205.0, 32.0, 10.0, UNDERWATER_COEFFICIENTS["dry cargo liner"]) > 7381.45


def test_bands_and_decks() -> None:
    # Worked by hand from the formulas (derived).
    assert boottop_area(46.0, 9.2, 0.6) == pytest.approx(2 * 0.6 * (46 + 4.6))
    assert topside_area(51.0, 9.2, 1.2) == pytest.approx(2 * 1.2 * (51 + 4.6))
    assert weather_deck_area(51.0, 9.2, 0.845) == pytest.approx(51 * 9.2 * 0.845)


@given(st.floats(20, 200), st.floats(3, 15), st.floats(0, 10), st.floats(0.1, 3))
def test_areas_scale_with_the_square_of_length(length: float, beam: float, draught: float, scale: float) -> None:
    one = underwater_area(length, beam, draught, 0.7)
    assert underwater_area(scale * length, scale * beam, scale * draught, 0.7) == pytest.approx(scale**2 * one)


@pytest.mark.parametrize(
    ("length", "beam", "draught", "coefficient", "words"),
    [
        (0.0, 9.0, 3.0, 0.7, "length"),
        (40.0, 0.0, 3.0, 0.7, "beam"),
        (40.0, 9.0, -3.0, 0.7, "draught"),
        (9.0, 40.0, 3.0, 0.7, "more than the length"),
        (40.0, 9.0, 3.0, 0.0, "coefficient"),
        (40.0, 9.0, 3.0, 72.0, "coefficient"),
    ],
)
def test_refuses_what_is_no_hull(length: float, beam: float, draught: float, coefficient: float, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        underwater_area(length, beam, draught, coefficient)


def test_method_gives_its_outputs() -> None:
    dimensions = {"lpp": 46.0, "loa": 51.0, "beam": 9.2, "draught": 3.4, "depth": 4.6}
    outputs = METHOD.run(**dimensions, underwater_coefficient=0.72, boottop_height=0.6)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["underwater_less_boottop"] == pytest.approx(outputs["underwater"] - outputs["boottop"])
    assert outputs["weather_deck"] is None
    with pytest.raises(OutOfRange, match="depth"):
        METHOD.run(**(dimensions | {"depth": 3.0}), underwater_coefficient=0.72)
