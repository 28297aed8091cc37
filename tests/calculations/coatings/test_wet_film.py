from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.wet_film import (
    METHOD,
    thinned_volume_solids,
    thinner_volume,
    wet_film,
)
from tenderwright.calculations.method import OutOfRange


def test_wet_film_of_an_unthinned_paint() -> None:
    # MIL-HDBK-1110, 2.1.5: DFT = WFT VS; 125 µm at 71 % is 176 µm wet.
    assert wet_film(125e-6, 0.71) == pytest.approx(176e-6, abs=0.5e-6)


def test_wet_film_of_a_thinned_paint() -> None:
    # Derived: DFT 100 µm, VS 50 %, 10 % thinner gives 220 µm; 200 µm unthinned.
    assert wet_film(100e-6, 0.5, 0.10) == pytest.approx(220e-6)
    assert wet_film(100e-6, 0.5) == pytest.approx(200e-6)


@given(st.floats(1e-6, 1e-3), st.floats(0.05, 1.0), st.floats(0.0, 1.0))
def test_wet_film_dries_to_the_dry_film(film: float, solids: float, thinning: float) -> None:
    wet = wet_film(film, solids, thinning)
    assert wet * thinned_volume_solids(solids, thinning) == pytest.approx(film, rel=1e-9)
    assert wet >= film


def test_thinner_is_by_volume_of_paint() -> None:
    assert thinner_volume(0.150, 0.05) == pytest.approx(0.0075)


@pytest.mark.parametrize(("paint", "thinning"), [(-1.0, 0.1), (1.0, -0.1)])
def test_refuses_thinner_below_nothing(paint: float, thinning: float) -> None:
    with pytest.raises(OutOfRange, match="less than nothing"):
        thinner_volume(paint, thinning)


def test_refuses_a_film_of_nothing() -> None:
    with pytest.raises(OutOfRange, match="dry film"):
        wet_film(0.0, 0.5)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(dry_film=1e-4, volume_solids=0.5)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
