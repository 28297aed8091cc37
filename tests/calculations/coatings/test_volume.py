from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.volume import METHOD, paint_volume
from tenderwright.calculations.method import OutOfRange


def test_litres_by_the_trade_form() -> None:
    # L = A DFT / (10 VS (1 - LF)), derived from MIL-HDBK-1110, 2.1.5: 620 * 125 / (10 * 71 * 0.7) = 155.94 L.
    assert 1000 * paint_volume(620.0, 0.71, 125e-6, 0.3) == pytest.approx(620 * 125 / (10 * 71 * 0.7), rel=1e-12)


def test_gallons_by_the_us_form() -> None:
    # MIL-HDBK-1110, 2.1.5: at 4 mil of a 100 % paint a US gallon covers 400 ft² (with 1600 for 1604).
    gallons = paint_volume(4000 * 0.3048**2, 1.0, 4 * 25.4e-6, 0.0) / 0.003785411784
    assert gallons == pytest.approx(10.0, rel=0.003)


def test_nothing_to_coat_takes_no_paint() -> None:
    assert paint_volume(0.0, 0.5, 1e-4, 0.2) == 0.0


def test_refuses_an_area_below_nothing() -> None:
    with pytest.raises(OutOfRange, match="area"):
        paint_volume(-1.0, 0.5, 1e-4, 0.2)


@given(st.floats(0, 1e4), st.floats(0, 1e4), st.floats(0.1, 1.0), st.floats(1e-6, 1e-3), st.floats(0, 0.9))
def test_areas_add(one: float, other: float, solids: float, film: float, loss: float) -> None:
    both = paint_volume(one + other, solids, film, loss)
    apart = paint_volume(one, solids, film, loss) + paint_volume(other, solids, film, loss)
    assert both == pytest.approx(apart, rel=1e-9)


@given(st.floats(0.1, 1.0), st.floats(1e-6, 1e-3), st.floats(0, 0.9))
def test_solids_left_on_the_surface_are_the_film(solids: float, film: float, loss: float) -> None:
    paint = paint_volume(100.0, solids, film, loss)
    assert paint * (1 - loss) * solids == pytest.approx(100.0 * film, rel=1e-9)


def test_method_gives_its_outputs() -> None:
    assert set(METHOD.run(area=1.0, volume_solids=0.5, dry_film=1e-4, loss=0.0)) == {"paint"}
