from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cost.escalation import escalated_price
from tenderwright.calculations.cost.weighted_escalation import METHOD, weighted_ratio
from tenderwright.calculations.method import OutOfRange

TERMS = st.lists(st.tuples(st.floats(0.1, 10.0), st.floats(1.0, 500.0), st.floats(1.0, 500.0)), min_size=1, max_size=5)


def test_by_hand() -> None:
    # Derived: 0.15 + 0.55 x 1.15 + 0.3 x 1.2.
    assert weighted_ratio(0.15, [(0.55, 120.0, 138.0), (0.3, 210.0, 252.0)]) == pytest.approx(1.1425)


def test_one_term_alone_is_the_plain_escalation() -> None:
    assert 250_000 * weighted_ratio(0.0, [(1.0, 251.9, 287.4)]) == pytest.approx(
        escalated_price(250_000.0, 251.9, 287.4)
    )


@given(st.floats(0.0, 1.0), TERMS)
def test_a_weighted_rise_lies_among_those_of_its_terms(fixed: float, terms: list[tuple[float, float, float]]) -> None:
    whole = sum(weight for weight, _, _ in terms)
    shared = [((1.0 - fixed) * weight / whole, base, index) for weight, base, index in terms]
    rises = [1.0, *(index / base for _, base, index in terms)]
    assert min(rises) * (1 - 1e-9) <= weighted_ratio(fixed, shared) <= max(rises) * (1 + 1e-9)


def test_weights_that_miss_the_whole_are_refused() -> None:
    with pytest.raises(OutOfRange, match=r"add up to 1, got 0\.9"):
        weighted_ratio(0.1, [(0.8, 100.0, 110.0)])
    with pytest.raises(OutOfRange, match="less than nothing"):
        weighted_ratio(-0.1, [(1.1, 100.0, 110.0)])
    with pytest.raises(OutOfRange, match="index"):
        weighted_ratio(0.1, [(0.9, 0.0, 110.0)])


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(**METHOD.example)
    assert outputs == pytest.approx({"ratio": 1.1425, "price": 114_250.0})
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    with pytest.raises(OutOfRange, match="price"):
        METHOD.run(price=float("inf"), fixed=1.0, terms=[])
