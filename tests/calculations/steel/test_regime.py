from __future__ import annotations

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steel.regime import METHOD


def test_old_metal_has_a_limit_of_its_own_and_is_tested_and_analysed() -> None:
    for material in ("wrought iron", "early steel"):
        found = METHOD.run(material=material)
        assert found["allowable"] == 0.20
        assert "no source" in found["source"]
        assert found["laminated"]
        assert found["analysed"]


def test_mild_steel_has_none_of_its_own() -> None:
    assert METHOD.run(material="mild steel") == {"source": "", "laminated": False, "analysed": False}


def test_the_naval_architect_may_set_another() -> None:
    found = METHOD.run(material="wrought iron", allowable=0.25, source="her letter of 2026")
    assert (found["allowable"], found["source"]) == (0.25, "her letter of 2026")
    with pytest.raises(OutOfRange, match="material"):
        METHOD.run(material="cast iron")
    with pytest.raises(OutOfRange, match="allowable"):
        METHOD.run(material="wrought iron", allowable=1.2)
