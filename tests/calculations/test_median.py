"""The middle one of some figures, held against numpy's own."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.median import median


@given(st.lists(st.floats(-1e9, 1e9), min_size=1, max_size=30))
def test_as_numpy_to_the_last_bit(figures: list[float]) -> None:
    """It is what `np.median` gives."""
    assert median(np.array(figures)) == float(np.median(np.array(figures)))
