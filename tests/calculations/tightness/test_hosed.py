from __future__ import annotations

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tightness.hosed import METHOD, hosed


def test_joints_named_and_joints_likely_to_be_added() -> None:
    assert hosed(84.0, 21.0)["hose"] == 105.0
    assert METHOD.run(renewed=84.0) == {"hose": 84.0}


def test_refuses_a_length_below_nothing() -> None:
    with pytest.raises(OutOfRange, match="inserts named"):
        hosed(-1.0)
    with pytest.raises(OutOfRange, match="likely to be added"):
        hosed(1.0, float("nan"))
