from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.readings import Readings, year_of


def readings(measured: list[float], x: float = 1.0) -> Readings:
    count = len(measured)
    codes = np.zeros(count, np.int64)
    return Readings(
        codes, codes, codes, codes, np.full(count, x), np.full(count, 0.01), np.array(measured), np.full(count, 2025.0)
    )


def test_some_of_the_readings() -> None:
    some = readings([0.009, 0.008, 0.007]).only(np.array([True, False, True]))
    assert some.measured.tolist() == [0.009, 0.007]
    assert len(some) == 2


@pytest.mark.parametrize("value", [0.0, -0.001, 9.2, float("nan")])
def test_refuses_a_thickness_in_doubt(value: float) -> None:
    with pytest.raises(OutOfRange, match="reading 2"):
        readings([0.009, value])


def test_refuses_a_reading_with_no_place_and_arrays_that_do_not_match() -> None:
    with pytest.raises(OutOfRange, match="place"):
        readings([0.009], x=float("nan"))
    codes = np.zeros(2, np.int64)
    one = np.array([0.01])
    with pytest.raises(OutOfRange, match="one element per reading"):
        Readings(codes, codes, codes, codes, one, one, one, one)


def test_days_are_years_and_decimals() -> None:
    assert year_of("1970-01-01") == 1970.0
    assert year_of("2025-10-06") == pytest.approx(2025.76, abs=0.005)
