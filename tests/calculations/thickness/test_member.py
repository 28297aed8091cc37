from __future__ import annotations

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.member import METHOD, gauge_member

YEAR = 365.25 * 86400.0
EARLY = {"survey": 1, "date": "2007-10-08", "as_built": 0.0079, "measured": 0.0068}
LATE = [
    {"survey": 2, "date": "2025-10-08", "as_built": 0.0079, "measured": 0.0050},
    {"survey": 2, "date": "2025-10-08", "as_built": 0.0079, "measured": 0.0065},
]


def test_the_latest_survey_tells_its_state_and_all_its_rate() -> None:
    found = METHOD.run(readings=[EARLY, *LATE], allowable=0.25)
    assert found["least"] == 0.005
    assert found["mean_diminution"] == pytest.approx((2.9 + 1.4) / 2 / 7.9)
    assert found["greatest_diminution"] == pytest.approx(2.9 / 7.9)
    assert found["state"] == "renew"
    assert found["renewal_thickness"] == pytest.approx(0.75 * 0.0079)
    assert found["rate"] * YEAR == pytest.approx(1.05e-3 / 18, rel=1e-3)


def test_a_member_gauged_once_has_no_rate_and_one_never_gauged_is_refused() -> None:
    assert "rate" not in METHOD.run(readings=LATE, allowable=0.5)
    with pytest.raises(OutOfRange, match="at least one reading"):
        gauge_member([], 0.25)
