from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.resistance import (
    METHOD,
    Shape,
    anode_current,
    long_flush,
    long_slender,
    resistance_of,
    short_flush,
    short_slender,
)
from tenderwright.calculations.method import OutOfRange


@pytest.mark.parametrize(("ohm_cm", "printed"), [(22.0, 0.103), (250.0, 1.17)])
def test_published_resistance_of_a_rod(ohm_cm: float, printed: float) -> None:
    # MIL-HDBK-1004/10, p. 211: rod of 2 in by 60 in, K = 0.0234, R = (P/L) K with L in feet.
    assert long_slender(0.01 * ohm_cm, 60 * 0.0254, 0.0254) == pytest.approx(printed, abs=0.0005)


def test_published_constant_of_a_rod() -> None:
    # MIL-HDBK-1004/10, p. 211: K = 0.0234 for length over diameter of 30; R = P K / L, P in ohm-cm, L in feet.
    assert long_slender(0.01, 60 * 0.0254, 0.0254) * 5.0 == pytest.approx(0.0234, abs=0.00005)


def test_ten_in_parallel() -> None:
    # MIL-HDBK-1004/10: 0.103/10 = 0.010 ohm.
    assert long_slender(0.22, 60 * 0.0254, 0.0254) / 10 == pytest.approx(0.010, abs=0.0005)


def test_forms_of_slender_anodes_do_not_meet() -> None:
    # DNV-RP-B401 (from memory), rho = L = 1, L = 4 r: 0.3014 short and 0.2821 long, 6.8 % apart.
    assert short_slender(1.0, 1.0, 0.25) == pytest.approx(0.3014, abs=0.00005)
    assert long_slender(1.0, 1.0, 0.25) == pytest.approx(0.2821, abs=0.00005)


def test_flush_anodes() -> None:
    # DNV-RP-B401 (from memory) and report D6316: rho/(2 S), S = (L + w)/2; 0.315 rho/sqrt(A).
    assert long_flush(0.25, 0.4, 0.1) == pytest.approx(0.5)
    assert short_flush(0.25, 0.09) == pytest.approx(0.2625)


def test_current_of_an_anode() -> None:
    # Lloyd's Register rules: zinc -1.00 V; protection at -0.80 V (from memory).
    assert anode_current(0.5, -1.00) == pytest.approx(0.4)
    with pytest.raises(OutOfRange, match="more negative"):
        anode_current(0.5, -0.80)


def test_a_bar_is_taken_by_its_section_and_its_faces() -> None:
    size = {"resistivity": 0.25, "length": 0.4, "width": 0.1, "depth": 0.03}
    slender = METHOD.run(shape="long slender", **size)
    assert slender["resistance"] == pytest.approx(long_slender(0.25, 0.4, math.sqrt(0.1 * 0.03 / math.pi)))
    flush = METHOD.run(shape="short flush", **size)
    assert flush["resistance"] == pytest.approx(short_flush(0.25, 0.4 * 0.1 + 2 * 0.03 * (0.4 + 0.1)))


def test_what_is_left_of_a_bar_is_narrower_and_thinner_alike() -> None:
    size = {"shape": "long flush", "resistivity": 0.25, "length": 0.4, "width": 0.1, "depth": 0.03}
    assert METHOD.run(**size, left=0.25) == METHOD.run(**size | {"width": 0.05, "depth": 0.015})
    for wrong in ({"left": 0.0}, {"left": 1.1}):
        with pytest.raises(OutOfRange, match="left of an anode"):
            METHOD.run(**size, **wrong)
    with pytest.raises(OutOfRange, match="width and depth"):
        METHOD.run(shape="long flush", resistivity=0.25, length=0.4, width=0.1, left=0.5)


@given(st.floats(0.05, 5), st.floats(0.1, 3), st.floats(0.005, 0.024), st.floats(1.05, 3))
def test_resistance_follows_the_water_and_falls_with_size(
    rho: float, length: float, radius: float, more: float
) -> None:
    one = long_slender(rho, length, radius)
    assert long_slender(more * rho, length, radius) == pytest.approx(more * one)
    assert long_slender(rho, more * length, radius) < one
    assert long_slender(rho, more * length, more * radius) == pytest.approx(one / more)
    assert long_flush(rho, more * length, more * radius) == pytest.approx(long_flush(rho, length, radius) / more)
    assert short_flush(rho, more**2 * radius) == pytest.approx(short_flush(rho, radius) / more)


@pytest.mark.parametrize(
    ("shape", "need"), [("long slender", "radius"), ("long flush", "width"), ("short flush", "area")]
)
def test_refuses_a_shape_without_its_size(shape: Shape, need: str) -> None:
    with pytest.raises(OutOfRange, match=need):
        resistance_of(shape, 0.25, length=1.0)


def test_refuses_a_form_outside_its_range() -> None:
    with pytest.raises(OutOfRange, match="short"):
        long_slender(0.25, 0.3, 0.1)
    with pytest.raises(OutOfRange, match="short"):
        long_flush(0.25, 0.3, 0.1)
    with pytest.raises(OutOfRange, match="resistivity"):
        short_flush(0.0, 0.1)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(shape="long flush", resistivity=0.25, length=0.4, width=0.1, alloy="aluminium")
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["current"] == pytest.approx(0.5)
    assert outputs["utilisation"] == 0.85


def test_refuses_an_alloy_whose_potential_is_not_known() -> None:
    with pytest.raises(OutOfRange, match="magnesium"):
        METHOD.run(shape="long flush", resistivity=0.25, length=0.4, width=0.1, alloy="magnesium")
