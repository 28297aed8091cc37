"""The days that the work left needs: by hand on a chain, and laws."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.planning.in_dock.remaining import days_needed
from tenderwright.planning.schedule import Schedule
from tests.pricing.in_dock.conftest import Docked


@pytest.fixture(scope="session")
def schedule(docked: Docked) -> Schedule:
    """Give the programme: dock 1; clean 2 beside wash 1; then rivet 3, coat 4, undock 1 (140 and 210 go before 320)."""
    assert docked[1].schedule is not None
    return docked[1].schedule


@pytest.mark.parametrize(
    ("done", "out", "days"),
    [
        ({}, set(), 2 + 3 + 4 + 1),
        ({"140": 1.0}, set(), 1 + 3 + 4 + 1),
        ({"140": 0.5, "210": 0.25}, set(), 1 + 3 + 4 + 1),
        ({"140": 1.0, "210": 1.0, "320": 1 / 3}, set(), 2 + 4 + 1),
        ({"320": 1 / 3}, set(), 2 + 4 + 1),  # what comes before the rivets is done, though nobody says so
        ({"140": 0.0, "320": 1 / 3}, set(), 2 + 2 + 4 + 1),  # unless it is told
        ({}, {"320"}, 2 + 4 + 1),
        ({}, {"420", "320", "140", "210"}, 1),
    ],
)
def test_by_hand(schedule: Schedule, done: dict[str, float], out: set[str], days: float) -> None:
    assert days_needed(schedule, done, out, docked=True) == pytest.approx(days)


def test_before_she_is_docked_all_the_days_on_blocks_are_left(schedule: Schedule) -> None:
    """The two days until the dock is free and the day of docking are not on blocks."""
    assert days_needed(schedule, {}, docked=False) == pytest.approx(10)


shares = st.dictionaries(st.sampled_from(["140", "210", "320", "420"]), st.floats(0, 1), max_size=4)


@given(shares, st.sampled_from(["140", "210", "320", "420"]), st.floats(0, 1))
def test_more_done_never_takes_longer(docked: Docked, done: dict[str, float], item: str, more: float) -> None:
    schedule = docked[1].schedule
    assert schedule is not None
    told = {**dict.fromkeys(("140", "210", "320", "420"), 0.0), **done}
    further = {**told, item: max(told[item], more)}
    before = days_needed(schedule, told, docked=True)
    assert days_needed(schedule, further, docked=True) <= before + 1e-9
    assert 1.0 - 1e-9 <= before <= 10.0 + 1e-9
