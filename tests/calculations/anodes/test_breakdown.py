from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.breakdown import CATEGORIES, coating_breakdown
from tenderwright.calculations.method import OutOfRange


@pytest.mark.parametrize(("years", "mean", "final"), [(2, 0.032, 0.044), (5, 0.050, 0.080), (10, 0.080, 0.140)])
def test_category_three(years: float, mean: float, final: float) -> None:
    # DNV-RP-B401 (from memory), category III, 0 to 30 m; computed.
    found = coating_breakdown(*CATEGORIES["III"], years)
    assert [found.initial, found.mean, found.final] == pytest.approx([0.02, mean, final])


def test_a_coating_that_is_gone_before_the_end() -> None:
    # DNV-RP-B401 (from memory): category I over 15 years gives a mean of 0.73 by the clamped form.
    found = coating_breakdown(0.1, 0.1, 15.0)
    assert found.mean == pytest.approx(0.73)
    assert found.final == 1.0


@given(st.floats(0, 1), st.floats(0, 1), st.floats(0.1, 40))
def test_mean_is_that_of_the_clamped_line(a: float, b: float, years: float) -> None:
    # An independent integral of min(1, a + b t).
    times = np.linspace(0.0, years, 20_001)
    found = coating_breakdown(a, b, years)
    values = np.minimum(1.0, a + b * times)
    assert found.mean == pytest.approx(float(np.trapezoid(values, times)) / years, abs=1e-4)
    assert found.initial <= found.mean + 1e-12 <= found.final + 2e-12 <= 1.0 + 2e-12


@pytest.mark.parametrize(("a", "b", "years"), [(1.2, 0.1, 5), (0.1, -0.1, 5), (0.1, 0.1, -1)])
def test_refuses_what_is_no_coating(a: float, b: float, years: float) -> None:
    with pytest.raises(OutOfRange):
        coating_breakdown(a, b, years)
