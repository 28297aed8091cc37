from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.pitting import METHOD, TREATMENTS, equivalent_thickness, judge_pits


def pits(built: float, *depths: float) -> list[dict[str, Any]]:
    """Make pits of some depths in mm, in plate of its thickness as built."""
    return [{"as_built": built / 1e3, "left": (built - depth) / 1e3} for depth in depths]


@pytest.mark.parametrize(
    ("thickness", "intensity", "deepest", "treatment"),
    [
        (12.0, 0.05, 0.0, "watch"),
        (12.0, 0.05, 0.9, "watch"),
        (12.0, 0.05, 1.0, "fill with epoxy"),
        (12.0, 0.05, 3.9, "fill with epoxy"),  # under 0.33 t
        (12.0, 0.05, 4.0, "weld"),  # over 0.33 t with 8 mm left
        (12.0, 0.05, 5.9, "weld"),  # 6.1 mm left
        (12.0, 0.05, 6.0, "local insert"),  # just 6 mm left, and more is asked
        (20.0, 0.05, 11.0, "weld"),  # deeper than half, but few pits
        (20.0, 0.26, 11.0, "local insert"),  # many, and deeper than half
        (20.0, 0.14, 6.5, "fill with epoxy"),  # 67.5 % left, asked above 15 % only
        (20.0, 0.16, 6.5, "local insert"),
        (20.0, 0.16, 5.9, "fill with epoxy"),
    ],
)
def test_rules_of_pitting(thickness: float, intensity: float, deepest: float, treatment: str) -> None:
    # LR Naval Survey Guidance, Ch. 12 (0.33 t, 6 mm, 25 % and half depth); IMO ESP Code and IACS CSR (15 %, 70 %).
    (pit,) = judge_pits(pits(thickness, deepest), intensity, [thickness / 1e3]).pits
    assert pit.treatment == treatment


def test_each_pit_is_judged_by_itself_and_the_stretch_by_the_worst() -> None:
    found = judge_pits(pits(12.0, 0.5, 2.0, 4.5, 6.5), 0.05, [0.012])
    assert [pit.treatment for pit in found.pits] == ["local insert", "weld", "fill with epoxy", "watch"]
    assert found.treatment == "local insert"
    assert [found.number(name) for name in TREATMENTS] == [1, 1, 1, 1]
    assert found.remaining == pytest.approx(0.0055)


def test_depth_is_taken_from_the_mean_of_the_plate_between_the_pits() -> None:
    (pit,) = judge_pits(pits(12.0, 4.5), 0.05, [0.0110, 0.0114]).pits
    assert pit.depth == pytest.approx(0.0112 - 0.0075)


def test_seventy_per_cent_itself_is_not_enough() -> None:
    # IACS CSR: more than 70 % of as built.
    assert judge_pits(pits(20.0, 6.0000001), 0.20).treatment == "local insert"
    assert judge_pits(pits(20.0, 5.9), 0.20, [0.02]).treatment == "fill with epoxy"


def test_five_deepest_are_asked_above_fifteen_per_cent() -> None:
    few = judge_pits(pits(12.0, *[1.0] * 4), 0.16)
    assert few.gauge_five
    assert any("five deepest" in reason for reason in few.reasons)
    assert not judge_pits(pits(12.0, *[1.0] * 5), 0.16).reasons
    assert not judge_pits(pits(12.0, 1.0), 0.15).gauge_five


@given(st.floats(6, 30), st.floats(0, 1), st.floats(0, 0.99), st.floats(0, 1))
def test_deeper_pits_never_call_for_less(thickness: float, intensity: float, share: float, less: float) -> None:
    plate = [thickness / 1e3]
    deep = judge_pits(pits(thickness, share * thickness), intensity, plate)
    shallow = judge_pits(pits(thickness, share * less * thickness), intensity, plate)
    assert TREATMENTS.index(shallow.treatment) <= TREATMENTS.index(deep.treatment)
    assert shallow.remaining >= deep.remaining


@given(st.floats(0.006, 0.03), st.floats(0, 1), st.floats(0, 1))
def test_equivalent_thickness_lies_between_the_pit_and_the_plate(t: float, intensity: float, share: float) -> None:
    # Derived: with a fraction i of the area lower by d, the mean thickness is t - i d.
    even = equivalent_thickness(t, intensity, share * t)
    assert t - share * t - 1e-15 <= even <= t
    assert even == pytest.approx((1 - intensity) * t + intensity * (t - share * t))
    assert equivalent_thickness(t, intensity, share * t, 0.5) >= even


def test_refuses_what_no_plate_is() -> None:
    with pytest.raises(OutOfRange, match="500 mm"):
        judge_pits([{"as_built": 0.010, "left": 0.0}], 0.1)
    with pytest.raises(OutOfRange, match="intensity"):
        judge_pits(pits(10.0, 1.0), 20.0)
    with pytest.raises(OutOfRange, match="one or more pits"):
        judge_pits([], 0.1)
    with pytest.raises(OutOfRange, match="shape"):
        equivalent_thickness(0.010, 0.1, 0.001, 0.0)
    with pytest.raises(OutOfRange, match="deep"):
        equivalent_thickness(0.010, 0.1, 0.011)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(pits=pits(11.1, 2.5, 1.5), intensity=0.2, plate=[0.0104])
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["remaining"] == pytest.approx(0.0086)
    assert outputs["mean_depth"] == pytest.approx((1.8 + 0.8) / 2e3)
    assert outputs["equivalent_thickness"] == pytest.approx(0.0104 - 0.2 * 0.0013)


@given(st.floats(0.005, 0.03))
def test_just_seventy_per_cent_left_fails_however_it_is_rounded(built: float) -> None:
    for left in (built - 0.3 * built, 0.7 * built, built * 7 / 10):
        assert judge_pits([{"as_built": built, "left": left}], 0.16, [built]).treatment == "local insert"
