from __future__ import annotations

import pytest

from tenderwright.calculations.anodes.fitted import METHOD, anodes_fitted
from tenderwright.calculations.method import OutOfRange


def test_count_and_mass() -> None:
    assert METHOD.run(masses=[10.0, 10.0, 6.5]) == {"count": 3.0, "mass": pytest.approx(26.5)}


def test_refuses_an_anode_of_less_than_nothing() -> None:
    with pytest.raises(OutOfRange, match="mass of an anode"):
        anodes_fitted([10.0, -1.0])
