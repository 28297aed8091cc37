from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.forecast import CALLS, METHOD, Forecast, forecast

YEAR = 365.25 * 86400.0


def one(
    thickness: float, rate: float, upper: float | None = None, docking: float = 1.0, interval: float = 10.0
) -> Forecast:
    """Plate of 10 mm as built with 20 % allowed: renewed below 8.0, substantial below 8.5 mm."""
    yearly = np.array([rate]) / 1e3
    above = yearly if upper is None else np.array([upper]) / 1e3
    return forecast(np.array([thickness]) / 1e3, np.array([0.010]), 0.20, yearly, above, docking, interval)


@pytest.mark.parametrize(
    ("thickness", "rate", "upper", "call"),
    [
        (9.9, 0.02, 0.03, "sound"),
        (9.0, 0.06, 0.06, "watch"),
        (9.0, 0.04, 0.12, "watch"),
        (8.6, 0.06, 0.07, "renew now, ahead of its limit"),
        (8.05, 0.06, 0.07, "renew now"),
        (7.9, 0.0, 0.0, "renew now"),
        (8.0, 0.0, 0.0, "watch"),
        (9.9, float("nan"), float("nan"), "watch"),
    ],
)
def test_calls(thickness: float, rate: float, upper: float, call: str) -> None:
    assert CALLS[one(thickness, rate, upper).call[0]] == call


def test_life_is_what_is_left_over_the_rate_and_none_without_loss() -> None:
    # NAVFAC P-1010's rate of 0.051 in a year: from 0.500 in down to 0.398 in takes two years (derived).
    found = forecast(
        np.array([0.0127]),
        np.array([0.704 * 0.0254]),
        1.0 - 0.398 / 0.704,
        np.array([0.051 * 0.0254]),
        np.array([0.0]),
        0.0,
        1.0,
    )
    assert found.life[0] == pytest.approx(2.0)
    assert found.at_next[0] / 0.0254 == pytest.approx(0.449)
    assert np.isnan(one(9.0, 0.0).life[0])
    assert np.isnan(one(9.0, -0.1).life[0])
    assert one(7.0, 0.1).life[0] == 0.0


def test_growth_is_never_forecast() -> None:
    assert one(9.0, -0.1).at_next[0] == pytest.approx(9.0e-3)


@given(st.floats(6, 11), st.floats(-0.1, 0.3), st.floats(0, 0.3), st.floats(0, 20), st.floats(0, 5))
def test_waiting_longer_or_losing_faster_never_betters_the_call(
    thickness: float, rate: float, more: float, interval: float, later: float
) -> None:
    first = one(thickness, rate, rate, 1.0, interval)
    assert one(thickness, rate + more, rate + more, 1.0, interval).call[0] >= first.call[0]
    assert one(thickness, rate, rate, 1.0, interval + later).call[0] >= first.call[0]
    assert one(thickness, rate, rate, 1.0 + later, interval).call[0] >= first.call[0]
    assert first.least_at_next[0] <= first.at_next[0] + 1e-15


def test_refuses_a_docking_before_the_survey() -> None:
    with pytest.raises(OutOfRange, match="time to the docking"):
        one(9.0, 0.1, docking=-1.0)


def test_method_gives_its_outputs() -> None:
    given_ = {"as_built": 0.010, "thickness": 0.009, "allowable": 0.20, "to_docking": YEAR, "interval": 10 * YEAR}
    outputs = METHOD.run(**given_, rate=0.05e-3 / YEAR)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["life"] / YEAR == pytest.approx(20.0)
    still = METHOD.run(**given_, rate=0.0)
    assert (still["life"], still["note"]) == (None, "no measurable loss")
