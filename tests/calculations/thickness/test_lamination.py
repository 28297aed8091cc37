from __future__ import annotations

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.lamination import METHOD


def test_the_share_of_readings_and_what_it_says() -> None:
    assert METHOD.run(readings=117, laminated=3) == {"share": 0.025, "state": "laminated in places"}
    assert METHOD.run(readings=40, laminated=0) == {"share": 0.0, "state": "none found"}
    assert METHOD.run(readings=0, laminated=0) == {"state": "not tested"}
    with pytest.raises(OutOfRange):
        METHOD.run(readings=-1, laminated=0)
