from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cost.man_hours import METHOD, price_from_hours, product_of_factors
from tenderwright.calculations.method import OutOfRange

SUMS = st.floats(0.0, 1e4)


def test_hours_of_a_published_tariff_priced() -> None:
    # Butler, Guide to Ship Repair Estimates, 2000: plate of 0.240 t at 10 mm, flat 57.6 h, keel 80.64 h (factor 1.4).
    assert price_from_hours(57.6, 70.0, factors=(1.4,)) == pytest.approx(80.64 * 70.0)


def test_by_hand() -> None:
    # Derived: (38 x 72 + 310) x 1.12 x 1.1.
    assert price_from_hours(38.0, 72.0, 310.0, (1.12, 1.1)) == pytest.approx(3752.672)


@given(SUMS, SUMS, SUMS, st.lists(st.floats(0.1, 3.0), max_size=4))
def test_the_price_is_linear_in_labour_and_materials(
    hours: float, rate: float, materials: float, factors: list[float]
) -> None:
    whole = price_from_hours(hours, rate, materials, factors)
    apart = price_from_hours(hours, rate, 0.0, factors) + price_from_hours(0.0, rate, materials, factors)
    assert whole == pytest.approx(apart)
    assert whole == pytest.approx(price_from_hours(hours, rate, materials) * product_of_factors(factors))
    assert price_from_hours(hours, rate, materials, factors[::-1]) == pytest.approx(whole)


def test_what_is_less_than_nothing_is_refused() -> None:
    with pytest.raises(OutOfRange, match="man-hours"):
        price_from_hours(-1.0, 70.0)
    with pytest.raises(OutOfRange, match="rate of labour"):
        price_from_hours(1.0, float("nan"))
    with pytest.raises(OutOfRange, match="materials"):
        price_from_hours(1.0, 70.0, -5.0)
    with pytest.raises(OutOfRange, match="factor"):
        price_from_hours(1.0, 70.0, factors=(0.0,))


def test_factors_without_bounds_are_refused() -> None:
    with pytest.raises(OutOfRange, match="beyond all bounds"):
        price_from_hours(1.0, 1.0, factors=[1e200, 1e200])


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(hours=38.0, rate=72.0, materials=310.0, factors=[1.12, 1.1])
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs == pytest.approx({"labour": 2736.0, "factor": 1.232, "price": 3752.672})
    assert METHOD.run(hours=10.0, rate=70.0) == pytest.approx({"labour": 700.0, "factor": 1.0, "price": 700.0})
