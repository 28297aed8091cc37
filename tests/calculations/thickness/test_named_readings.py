from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.plain import plain
from tenderwright.calculations.thickness.named_plates import NamedPlates, plates_from_input
from tenderwright.calculations.thickness.named_readings import NamedReadings, readings_from_input
from tenderwright.calculations.thickness.plates import PlateGrid
from tenderwright.calculations.thickness.readings import Readings, day_of, year_of

STRAKES = ("A", "B", "C")
ROW = {"survey": 1, "date": "2007-09-15", "as_built": 0.0095, "measured": 0.009}
ROWS = st.lists(
    st.fixed_dictionaries(
        {
            "survey": st.integers(1, 5),
            "date": st.dates().map(str),
            "as_built": st.floats(1e-3, 0.4),
            "measured": st.floats(1e-3, 0.4),
            "strake": st.sampled_from(STRAKES),
            "side": st.sampled_from(["port", "starboard"]),
            "at": st.floats(-5.0, 100.0),
        }
    ),
    min_size=1,
    max_size=20,
)


@given(ROWS)
def test_readings_come_back_to_the_last_bit(rows: list[dict[str, object]]) -> None:
    made = readings_from_input(rows, STRAKES)
    assert plain(made) == rows
    again = readings_from_input(plain(made), STRAKES).readings
    assert all(
        (getattr(again, name) == getattr(made.readings, name)).all()
        for name in ("strake", "side", "survey", "x", "as_built", "measured", "year")
    )


@given(st.dates())
def test_a_day_comes_back(day: object) -> None:
    assert day_of(year_of(str(day))) == str(day)


def test_readings_of_one_thing_need_no_place() -> None:
    made = readings_from_input([ROW, {**ROW, "survey": 2}])
    assert plain(made) == [ROW, {**ROW, "survey": 2}]
    assert made.readings.survey.tolist() == [0, 1]


def test_what_is_made_is_taken_as_it_is() -> None:
    made = readings_from_input([ROW])
    assert readings_from_input(made) is made


def test_some_are_taken_by_flags_or_by_number() -> None:
    rows = [ROW, {**ROW, "survey": 2}]
    made = readings_from_input(rows)
    assert plain(made.only(np.array([False, True]))) == rows[1:]
    assert plain(made.only(np.array([True, True]))) == rows
    assert plain(made.only(np.array([1, 0]))) == rows[::-1]


def test_a_strake_that_is_none_is_refused() -> None:
    with pytest.raises(OutOfRange, match="`Q` is not one of the strakes"):
        readings_from_input([{**ROW, "strake": "Q", "side": "port", "at": 1.0}], STRAKES)


def test_plates_come_back() -> None:
    made = NamedPlates(("A", "B"), PlateGrid((np.array([0.0, 6.1, 12.3]), np.array([1.0, 2.0]))))
    again = plates_from_input(plain(made))
    assert plain(again) == plain(made)
    assert again.grid.count == made.grid.count == 6
    assert plates_from_input(made) is made


def test_named_readings_hold_arrays_of_one_length() -> None:
    none = np.zeros(0)
    whole = np.zeros(0, np.int64)
    assert NamedReadings(Readings(whole, whole, whole, whole, none, none, none, none)).as_input() == []
