from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.climate.overcoating import METHOD, WindowPoint, overcoating_window
from tenderwright.calculations.method import OutOfRange

HOUR, DAY = 3600.0, 86400.0
SHEET = [WindowPoint(20.0, 4 * HOUR, 7 * DAY), WindowPoint(10.0, 16 * HOUR, 28 * DAY)]


def test_columns_themselves_and_halfway_between() -> None:
    # Derived: halfway in temperature is the geometric mean in time.
    assert overcoating_window(SHEET, 10.0).least / HOUR == pytest.approx(16.0)
    middle = overcoating_window(SHEET, 15.0)
    assert middle.least / HOUR == pytest.approx(8.0)
    assert middle.greatest is not None
    assert middle.greatest / DAY == pytest.approx(14.0)


@pytest.mark.parametrize(
    ("hours", "verdict"),
    [(3.9, "too soon"), (4.0, "within the window"), (168.0, "within the window"), (169.0, "too late: abrade first")],
)
def test_verdicts(hours: float, verdict: str) -> None:
    assert overcoating_window(SHEET, 20.0).verdict(hours * HOUR) == verdict


def test_no_greatest_time_is_never_too_late() -> None:
    found = overcoating_window([WindowPoint(20.0, HOUR)], 20.0)
    assert found.greatest is None
    assert found.verdict(1e9) == "within the window"


@given(st.floats(10, 20), st.floats(10, 20))
def test_colder_steel_waits_longer(one: float, other: float) -> None:
    cold, warm = sorted((one, other))
    assert overcoating_window(SHEET, cold).least >= overcoating_window(SHEET, warm).least - 1e-6


def test_refuses_to_guess() -> None:
    with pytest.raises(OutOfRange, match="gives nothing"):
        overcoating_window(SHEET, 5.0)
    with pytest.raises(OutOfRange, match="each for its own"):
        overcoating_window([SHEET[0], SHEET[0]], 20.0)
    with pytest.raises(OutOfRange, match="some temperatures"):
        overcoating_window([SHEET[0], WindowPoint(5.0, HOUR)], 10.0)
    with pytest.raises(OutOfRange, match="more than the least"):
        WindowPoint(20.0, 5 * HOUR, 4 * HOUR)


def test_method_gives_its_outputs() -> None:
    points = [{"temperature": 10.0, "least": 16 * HOUR}, {"temperature": 20.0, "least": 4 * HOUR}]
    outputs = METHOD.run(points=points, temperature=15.0, time=6 * HOUR)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["verdict"] == "too soon"
    assert METHOD.run(points=points, temperature=15.0)["verdict"] is None
