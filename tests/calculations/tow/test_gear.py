"""Gear, battery, water by a hole, downflooding and roll against published or derived figures."""

from __future__ import annotations

from math import degrees, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tow.battery import battery_asked
from tenderwright.calculations.tow.downflooding import downflooding
from tenderwright.calculations.tow.flooding import flooding, inflow
from tenderwright.calculations.tow.gear import gear_asked, leg_pull
from tenderwright.calculations.tow.resistance_navy import POUND_FORCE
from tenderwright.calculations.tow.roll_period import roll_period


def test_factors_of_the_manual() -> None:
    """TB 55-1900-232-10, Table 5-4: on a winch brake 5, 6, 6 and 5; figures derived."""
    found = gear_asked(16_816 * POUND_FORCE, "brake")
    pounds = {row["part"]: row["strength"] / POUND_FORCE for row in found["parts"]}
    assert pounds["wire hawser"] == pytest.approx(84_080)
    assert pounds["chain"] == pytest.approx(100_896)
    assert found["fittings"] / POUND_FORCE == pytest.approx(84_080)
    assert [row["factor"] for row in gear_asked(1.0, "hook")["parts"]] == [7, 8, 8, 7]
    assert found["apex"] is found["leg_pull"] is None


@pytest.mark.parametrize(("apex", "share"), [(30, 0.5176), (60, 0.5774), (90, 0.7071), (120, 1.0)])
def test_pull_on_a_leg(apex: float, share: float) -> None:
    """Statics of two equal legs (derived)."""
    assert leg_pull(1.0, radians(apex)) == pytest.approx(share, abs=5e-5)


def test_legs_as_long_as_their_spread_stand_at_sixty_degrees() -> None:
    """TB 55-1900-232-10: each leg as long as the spread or longer; that this gives 60 degrees is geometry."""
    assert degrees(gear_asked(1.0, "hook", 6.0, 6.0)["apex"]) == pytest.approx(60)
    with pytest.raises(OutOfRange, match="half the spread"):
        gear_asked(1.0, "hook", 6.0, 3.0)


def test_battery() -> None:
    """Two lamps of 25 W and two of 15 W over 13 h, six alarms of 5 W, 24 V, three days: 330 Ah (derived)."""
    hour = 3600.0
    loads = [
        {"count": 2, "power": 25.0, "hours": 13 * hour},
        {"count": 2, "power": 15.0, "hours": 13 * hour},
        {"count": 6, "power": 5.0, "hours": 24 * hour},
    ]
    assert battery_asked(loads, 24.0, 3 * 86400.0)["charge"] / hour == pytest.approx(330)


@pytest.mark.parametrize(
    ("bore", "head", "an_hour", "without_loss"), [(50, 3, 32.5, 54.2), (100, 3, 130.1, 216.9), (25, 2, 6.64, 11.1)]
)
def test_water_by_a_hole(bore: float, head: float, an_hour: float, without_loss: float) -> None:
    """Torricelli with 0.6, and with 1 as the damage-control form has it: 3600 gpm for a square foot (derived)."""
    assert inflow(bore / 1000, head) * 3600 == pytest.approx(an_hour, rel=2e-3)
    assert inflow(bore / 1000, head, 1.0) * 3600 == pytest.approx(without_loss, rel=3e-3)


def test_pumps_that_keep_up_leave_no_time_to_fill() -> None:
    assert flooding(0.05, 3.0, 60.0, pump=40 / 3600)["time"] is None
    found = flooding(0.1, 3.0, 60.0, 0.95, 40 / 3600)["time"]
    assert found is not None
    assert found / 3600 == pytest.approx(0.95 * 60 / (130.1 - 40), rel=2e-3)


@given(st.floats(0.01, 0.5), st.floats(0.1, 5), st.floats(1, 500), st.floats(0, 0.05))
def test_a_pump_never_makes_it_fill_faster(bore: float, head: float, volume: float, pump: float) -> None:
    alone, pumped = flooding(bore, head, volume)["time"], flooding(bore, head, volume, pump=pump)["time"]
    assert alone is not None
    assert pumped is None or pumped >= alone


def test_heel_that_brings_an_opening_to_the_water() -> None:
    at = {"x": 24.0, "y": -2.0}
    found = downflooding(
        [{"name": "door", "z": 5.0, **at}, {"name": "vent", "z": 6.0, "x": 24.0, "y": 4.0}], 48, 3, 0.4
    )
    assert (found["lowest"], found["freeboard"]) == ("door", pytest.approx(2.0))
    assert (found["first"], degrees(found["angle"])) == ("vent", pytest.approx(36.87, abs=0.01))
    with pytest.raises(OutOfRange, match="under water"):
        downflooding([{"name": "port", "z": 2.9, **at}], 48, 3, 0)


@given(st.floats(0, 48), st.floats(-2, 2))
def test_trim_by_the_stern_brings_down_what_is_aft(x: float, trim: float) -> None:
    opening = [{"name": "vent", "x": x, "y": 1.0, "z": 8.0}]
    level, trimmed = (downflooding(opening, 48, 3, one)["freeboard"] for one in (0, trim))
    assert trimmed - level == pytest.approx(-trim * (0.5 - x / 48))


def test_period_of_roll() -> None:
    """IMO, Intact Stability Code (from memory): 10 m broad, 4 m deep, 60 m long, GM 0.6 m."""
    found = roll_period(10, 4, 60, 0.6)
    assert (found["coefficient"], found["period"]) == (pytest.approx(0.4047, abs=5e-5), pytest.approx(10.449, abs=5e-4))
