from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.model.day import Day

EVENTS = {"award": None, "arrival": date(2027, 5, 3), "docking": date(2027, 5, 5)}


@pytest.mark.parametrize(
    ("text", "on"),
    [
        ("docking", date(2027, 5, 5)),
        ("docking + 3 d", date(2027, 5, 8)),
        ("arrival - 14 d", date(2027, 4, 19)),
        ("2027-04-12", date(2027, 4, 12)),
        ("award + 1 d", None),
        ("undocking", None),
    ],
)
def test_days_fall_on_dates(text: str, on: date | None) -> None:
    day = Day.read(text)
    assert day.on(EVENTS) == on
    assert str(day) == text


@pytest.mark.parametrize(
    "text", ["2027-02-30", "docking+3 d", "docking + 3", "launch + 1 d", "docking + -3 d", "", "docking "]
)
def test_what_is_no_day_is_refused(text: str) -> None:
    with pytest.raises(ValueError):  # noqa: PT011 - any refusal will do
        Day.read(text)


@given(st.sampled_from(["arrival", "docking"]), st.integers(-999, 999))
def test_days_are_counted_from_the_event(event: str, days: int) -> None:
    text = f"{event} {'-' if days < 0 else '+'} {abs(days)} d"
    on = Day.read(text).on(EVENTS)
    start = EVENTS[event]
    assert on is not None
    assert start is not None
    assert on - start == timedelta(days=days)
