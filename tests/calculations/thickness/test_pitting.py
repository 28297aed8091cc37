from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.pitting import METHOD, equivalent_thickness, judge_pitting


@pytest.mark.parametrize(
    ("thickness", "intensity", "deepest", "treatment"),
    [
        (12.0, 0.05, 0.0, "none"),
        (12.0, 0.05, 3.9, "fill with epoxy"),  # under 0.33 t
        (12.0, 0.05, 4.0, "weld"),  # over 0.33 t with 8 mm left
        (12.0, 0.05, 5.9, "weld"),  # 6.1 mm left
        (12.0, 0.05, 6.0, "renew"),  # just 6 mm left, and more is asked
        (20.0, 0.05, 11.0, "weld"),  # deeper than half, but few pits
        (20.0, 0.26, 11.0, "renew"),  # many, and deeper than half
        (20.0, 0.14, 6.5, "fill with epoxy"),  # 67.5 % left, asked above 15 % only
        (20.0, 0.16, 6.5, "renew"),
        (20.0, 0.16, 5.9, "fill with epoxy"),
    ],
)
def test_rules_of_pitting(thickness: float, intensity: float, deepest: float, treatment: str) -> None:
    # LR Naval Survey Guidance, Ch. 12 (0.33 t, 6 mm, 25 % and half depth); IMO ESP Code and IACS CSR (15 %, 70 %).
    assert judge_pitting(thickness / 1e3, thickness / 1e3, intensity, [deepest / 1e3]).treatment == treatment


def test_seventy_per_cent_itself_is_not_enough() -> None:
    # IACS CSR: more than 70 % of as built.
    assert not judge_pitting(0.020, 0.020, 0.20, [0.0060000001]).passes
    assert judge_pitting(0.020, 0.020, 0.20, [0.0059]).passes


def test_five_deepest_are_asked_above_fifteen_per_cent() -> None:
    few = judge_pitting(0.012, 0.012, 0.16, [0.001] * 4)
    assert few.gauge_five
    assert any("five deepest" in reason for reason in few.reasons)
    assert not judge_pitting(0.012, 0.012, 0.16, [0.001] * 5).reasons
    assert not judge_pitting(0.012, 0.012, 0.15, [0.001]).gauge_five


ORDER = ("none", "fill with epoxy", "weld", "renew")


@given(st.floats(0.006, 0.03), st.floats(0, 1), st.floats(0, 1), st.floats(0, 1))
def test_deeper_pits_never_call_for_less(thickness: float, intensity: float, share: float, less: float) -> None:
    deep = judge_pitting(thickness, thickness, intensity, [share * thickness])
    shallow = judge_pitting(thickness, thickness, intensity, [share * less * thickness])
    assert ORDER.index(shallow.treatment) <= ORDER.index(deep.treatment)
    assert shallow.remaining >= deep.remaining


@given(st.floats(0.006, 0.03), st.floats(0, 1), st.floats(0, 1))
def test_equivalent_thickness_lies_between_the_pit_and_the_plate(t: float, intensity: float, share: float) -> None:
    # Derived: with a fraction i of the area lower by d, the mean thickness is t - i d.
    even = equivalent_thickness(t, intensity, share * t)
    assert t - share * t - 1e-15 <= even <= t
    assert even == pytest.approx((1 - intensity) * t + intensity * (t - share * t))
    assert equivalent_thickness(t, intensity, share * t, 0.5) >= even


def test_refuses_a_pit_deeper_than_the_plate() -> None:
    with pytest.raises(OutOfRange, match="deep"):
        judge_pitting(0.010, 0.010, 0.1, [0.011])
    with pytest.raises(OutOfRange, match="intensity"):
        judge_pitting(0.010, 0.010, 20.0, [0.001])
    with pytest.raises(OutOfRange, match="shape"):
        equivalent_thickness(0.010, 0.1, 0.001, 0.0)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(as_built=0.0111, thickness=0.0104, intensity=0.2, depths=[0.0025], mean_depth=0.0015)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["remaining"] == pytest.approx(0.0079)
    assert outputs["equivalent_thickness"] == pytest.approx(0.0101)


@given(st.floats(0.005, 0.03))
def test_just_seventy_per_cent_left_fails_however_it_is_rounded(as_built: float) -> None:
    for depth in (0.3 * as_built, as_built - 0.7 * as_built, as_built * 3 / 10):
        assert judge_pitting(as_built, as_built, 0.16, [depth] * 5).passes is False
        assert judge_pitting(as_built, as_built, 0.16, [depth * (1 - 1e-6)] * 5).passes is True
