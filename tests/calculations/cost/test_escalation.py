from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cost.escalation import METHOD, escalated_price
from tenderwright.calculations.method import OutOfRange

INDICES = st.floats(1.0, 1000.0)


def test_constructed_example() -> None:
    # Constructed: 250 000 x 287.4/251.9.
    assert escalated_price(250_000.0, 251.9, 287.4) == pytest.approx(285_232.24, abs=0.005)


@given(st.floats(-1e6, 1e6), INDICES, INDICES, INDICES)
def test_by_way_of_another_month_makes_no_difference(price: float, first: float, second: float, third: float) -> None:
    by_way = escalated_price(escalated_price(price, first, second), second, third)
    assert by_way == pytest.approx(escalated_price(price, first, third))


@pytest.mark.parametrize(("base", "index"), [(0.0, 1.0), (1.0, 0.0), (-1.0, 1.0), (1.0, float("nan"))])
def test_an_index_of_nothing_is_refused(base: float, index: float) -> None:
    with pytest.raises(OutOfRange, match="index"):
        escalated_price(100.0, base, index)


def test_a_price_that_is_no_number_is_refused() -> None:
    with pytest.raises(OutOfRange, match="price"):
        escalated_price(float("nan"), 1.0, 1.0)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(**METHOD.example)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["price"] == pytest.approx(250_000.0 * outputs["ratio"])
