from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.climate.dew_point import dew_point
from tenderwright.calculations.climate.paint_window import METHOD, paint_window
from tenderwright.calculations.method import OutOfRange


def test_three_kelvins_over_the_dew_point() -> None:
    # ISO 8502-4 practice: air 20 degC, 80 %: steel at 19.0 has 2.56 K and may not, at 19.5 3.06 K and may.
    cold, warm = paint_window(20.0, 0.80, 19.0), paint_window(20.0, 0.80, 19.5)
    assert (cold.open, warm.open) == (False, True)
    assert [cold.margin, warm.margin] == pytest.approx([2.56, 3.06], abs=0.005)
    assert "2.6 K" in cold.reasons[0]


def test_five_degrees_fahrenheit_are_less_than_three_kelvins() -> None:
    # UFC 3-190-06: 5 degF, which is 2.78 K.
    steel = dew_point(20.0, 0.80) + 2.9
    assert paint_window(20.0, 0.80, steel, "5 degF").open
    assert not paint_window(20.0, 0.80, steel, "3 K").open
    assert paint_window(20.0, 0.80, 19.0, "5 degF").least == pytest.approx(2.78, abs=0.005)


def test_humidity_at_its_limit_is_within_it() -> None:
    # IMO MSC.215(82), from memory: 85 %.
    assert paint_window(20.0, 0.85, 25.0).open
    assert not paint_window(20.0, 0.86, 25.0).open
    assert paint_window(20.0, 0.86, 25.0, humidity_limit=0.90).open


@given(st.floats(0, 35), st.floats(0.2, 1.0), st.floats(0, 40), st.floats(0, 10))
def test_warmer_steel_never_shuts_the_window(air: float, humidity: float, steel: float, more: float) -> None:
    assert paint_window(air, humidity, steel + more).open >= paint_window(air, humidity, steel).open


def test_refuses_a_limit_that_is_no_fraction() -> None:
    with pytest.raises(OutOfRange, match="limit"):
        paint_window(20.0, 0.8, 20.0, humidity_limit=85.0)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(air=20.0, humidity=0.9, steel=19.0)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert len(outputs["reasons"]) == 2
