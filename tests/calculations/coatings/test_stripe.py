from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.stripe import METHOD, stripe_volume
from tenderwright.calculations.coatings.volume import paint_volume
from tenderwright.calculations.method import OutOfRange


def test_stripe_is_a_narrow_area() -> None:
    # Derived: 340 m by 80 mm is 27.2 m²; two coats of 100 µm at 71 % with 10 % lost: 2 * 4.257 L.
    litres = 1000 * stripe_volume(340.0, 0.08, 0.71, 100e-6, 0.1, coats=2)
    assert litres == pytest.approx(2 * 27.2 * 100 / (10 * 71 * 0.9), rel=1e-12)


@given(st.floats(0, 1e4), st.floats(0, 1), st.integers(0, 4))
def test_stripe_coats_add(length: float, width: float, coats: int) -> None:
    one = paint_volume(length * width, 0.6, 1e-4, 0.1)
    assert stripe_volume(length, width, 0.6, 1e-4, 0.1, coats) == pytest.approx(coats * one)


@pytest.mark.parametrize(("length", "width", "coats"), [(-1.0, 0.1, 1), (1.0, -0.1, 1), (1.0, 0.1, -1)])
def test_refuses_what_is_below_nothing(length: float, width: float, coats: int) -> None:
    with pytest.raises(OutOfRange, match="less than nothing"):
        stripe_volume(length, width, 0.5, 1e-4, 0.1, coats)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(length=10.0, width=0.1, volume_solids=0.5, dry_film=1e-4, loss=0.0)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["area"] == pytest.approx(1.0)
