from __future__ import annotations

import math
from typing import Any

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.zone_rate import METHOD, zone_rate

YEAR = 365.25 * 86400.0
ZONE = "wind and water"
AHEAD: dict[str, Any] = {
    "frames": [0.0, 0.6, 1.2, 1.8],
    "docking": "2027-10-06",
    "interval": 5 * YEAR,
}


def reading(at: float, measured: float, survey: int) -> dict[str, Any]:
    date = ("2007-10-06", "2025-10-06")[survey - 1]
    return {
        "survey": survey, "date": date, "strake": "F", "side": "port", "at": at, "as_built": 0.010,
        "measured": measured,
    }  # fmt: skip


def carried_on(*readings: dict[str, Any]) -> dict[str, Any]:
    """Give readings of one strake of two plates carried on, with a zone that nobody gauged."""
    zones = [{"zone": zone, "strakes": [strake], "allowable": 0.25} for zone, strake in ((ZONE, "F"), ("other", "G"))]
    plates = [{"strake": strake, "ends": [0.0, 1.8, 12.0]} for strake in ("F", "G")]
    return {"survey": {"readings": list(readings), "plates": plates, "zones": zones}, **AHEAD}


def test_the_rate_is_the_mean_over_spaces_gauged_twice_and_its_uncertainty_joins_gauge_and_spread() -> None:
    """Spaces that lost 0.36 and 0.72 mm in 18 years: 0.02 and 0.04 mm a year; the third was gauged once."""
    rows = [reading(0.3, 0.0098, 1), reading(0.9, 0.0098, 1)]
    rows += [reading(0.3, 0.00944, 2), reading(0.9, 0.00908, 2), reading(1.5, 0.0080, 2)]
    found = zone_rate(carried_on(*rows), ZONE)
    assert (found.bays, found.readings) == (2, 3)
    assert found.rate == pytest.approx(0.03e-3, rel=1e-3)
    assert found.uncertainty == pytest.approx(math.hypot(0.1e-3 * math.sqrt(2) / 18, 0.01e-3), rel=1e-3)
    mean = (0.056 + 0.092 + 0.2) / 3
    assert METHOD.run(forecast=carried_on(*rows), zone=ZONE)["at_next"] == pytest.approx(
        mean + 0.03e-3 * 7 / 0.010, rel=1e-3
    )


def test_without_a_space_gauged_twice_there_is_a_loss_and_no_rate() -> None:
    found = METHOD.run(forecast=carried_on(reading(0.3, 0.009, 1), reading(0.9, 0.008, 2)), zone=ZONE)
    assert found == pytest.approx({"mean_loss": 0.2, "greatest_loss": 0.2})


@pytest.mark.parametrize(
    ("zone", "at", "why"),
    [("other", 0.3, "no reading of the zone"), (ZONE, 9.0, "beyond the frames"), ("none", 0.3, "no zone")],
)
def test_a_zone_without_readings_or_a_reading_beyond_the_frames_is_refused(zone: str, at: float, why: str) -> None:
    with pytest.raises(OutOfRange, match=why):
        zone_rate(carried_on(reading(at, 0.009, 2)), zone)
