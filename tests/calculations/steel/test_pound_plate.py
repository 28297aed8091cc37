from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steel.pound_plate import METHOD, pound_plate, read_pound_plate

INCH = 0.0254


@pytest.mark.parametrize(
    ("name", "sixteenths"),
    [
        ("7.7 lb plate", 3),  # TB 55-1900-201-45/1, Appendix E-11: 3/16 in
        ("10 lb plate", 4),  # TM 55-1915-200: 10 lb plate is 1/4 in
        ("5.1 lb", 2),  # Pressure Vessel Design Manual, Table 2-18, and those below
        ("10.2-lb plate", 4),
        ("15.3#", 6),
        ("20.4 lbs", 8),
        ("30.6 pound plate", 12),
        ("40.8LB", 16),
    ],
)
def test_published_names(name: str, sixteenths: int) -> None:
    plate = read_pound_plate(name)
    assert plate.sixteenths == sixteenths
    assert not plate.doubtful


def test_exact_weight_beside_the_rounded_name() -> None:
    # TB 55-1900-201-45/1, Appendix E-11: 3/16 in weighs 7.65 lb and is called 7.7 lb.
    assert read_pound_plate("7.7 lb plate").exact == pytest.approx(7.7 / 40.8 * INCH)
    assert read_pound_plate("7.65 lb plate").exact == pytest.approx(3 / 16 * INCH)
    assert read_pound_plate("7.7 lb plate").nominal == read_pound_plate("7.65 lb plate").nominal


def test_twenty_pound_plate() -> None:
    # Derived: 20 lb is 0.4902 in, 12.45 mm; within 2 % of the half inch.
    plate = pound_plate(20.0)
    assert 1000 * plate.exact == pytest.approx(12.45, abs=0.005)
    assert plate.sixteenths == 8
    assert plate.difference == pytest.approx(-0.0196, abs=5e-5)
    assert not plate.doubtful


def test_iron_is_lighter() -> None:
    # Wrought iron at 40 lb/ft² per inch (from memory).
    assert pound_plate(20.0, "wrought iron").exact == pytest.approx(0.5 * INCH)
    assert pound_plate(20.0, "wrought iron").difference == pytest.approx(0.0)


def test_name_between_two_sixteenths_is_doubtful() -> None:
    assert pound_plate(9.0).doubtful
    assert pound_plate(0.5).doubtful
    assert pound_plate(0.5).sixteenths == 1


@given(st.integers(1, 64))
def test_whole_sixteenths_come_back(sixteenths: int) -> None:
    plate = pound_plate(40.8 * sixteenths / 16)
    assert plate.sixteenths == sixteenths
    assert plate.nominal == pytest.approx(plate.exact)


@pytest.mark.parametrize("name", ["20.4", "half inch", "20.4 kg plate", "lb plate", "-5 lb", "20.4 lb 5 oz"])
def test_refuses_a_name_that_is_no_pound_plate(name: str) -> None:
    with pytest.raises(OutOfRange, match="does not name a plate"):
        read_pound_plate(name)


@pytest.mark.parametrize("pounds", [0.0, -1.0, float("inf")])
def test_refuses_no_weight(pounds: float) -> None:
    with pytest.raises(OutOfRange, match="weight of a plate"):
        pound_plate(pounds)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(plate="20.4 lb plate")
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["nominal"] == pytest.approx(0.0127)
