"""The values of an array in order, each once."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from tenderwright.calculations.distinct import distinct


@given(arrays(np.float64, st.integers(0, 30), elements=st.sampled_from([-1.5, 0.0, 0.1, 2.0, 3.0])))
def test_they_are_those_of_numpy(values: np.ndarray[tuple[int], np.dtype[np.float64]]) -> None:
    assert distinct(values).tolist() == np.unique(values).tolist()
