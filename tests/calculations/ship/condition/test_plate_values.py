from __future__ import annotations

import pytest

from .ship import shot, survey, surveyed


def test_the_forecast_of_a_called_plate_is_kept_with_its_working() -> None:
    """8.5 mm in 2007 and 6.8 mm in 2025: 0.094 mm a year; the limit of 9.5 mm less 25 % is 7.1 mm."""
    early = survey(shot("C", 60.5, "port", 9.5, 8.5, "2007-10-06"), name="old")
    _, record, _ = surveyed(early, survey(shot("C", 60.5, "port", 9.5, 6.8)))
    value = record.values["plate.c7-port.at-docking"]
    assert value.si == pytest.approx(6.8e-3 - 1.7e-3 / 18 * 1.577, abs=2e-6)
    assert record.values["plate.c7-port.renewal-thickness"].si == pytest.approx(7.125e-3)
    assert record.values["plate.c7-port.call"].si == "renew now"
    assert record.values["plate.c7-port.rate"].si * 365.25 * 86400 == pytest.approx(1.7e-3 / 18, rel=1e-4)
    assert value.working.inputs["neighbours"].si["places"] == 1
    assert value.unit == "mm"
    assert next(record.chain("plate.c7-port.at-docking")) is value
