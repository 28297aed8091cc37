from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cradle.line_load import METHOD, line_load
from tenderwright.calculations.method import OutOfRange

TONNE = 1000.0


def test_trapezoid_within_the_middle_third() -> None:
    # Derived from the trapezoidal equation (R. Heger, Dry Dock Conference, 2008): W 2000 t, L 40 m, e 1.5 m.
    load = line_load(2000 * TONNE, 21.5, 0.0, 40.0)
    assert load.load_aft / TONNE == pytest.approx(38.75, abs=1e-9)
    assert load.load_forward / TONNE == pytest.approx(61.25, abs=1e-9)
    assert load.lift_off == 0.0


def test_triangle_outside_the_middle_third() -> None:
    # Derived check: W 2000 t, L 40 m, e 8 m gives contact over 36 m and 111.11 t/m.
    load = line_load(2000 * TONNE, 28.0, 0.0, 40.0)
    assert load.contact_length == pytest.approx(36.0)
    assert load.contact_aft == pytest.approx(4.0)
    assert load.lift_off == pytest.approx(4.0)
    assert load.peak / TONNE == pytest.approx(111.11, abs=0.005)
    assert load.load_aft == 0.0


def test_eccentric_footing_of_a_tower_crane() -> None:
    # Tower-crane footing on an unattributed page: V 2687.5 kN, M 4200 kN m, 7 m square: 5.811 m, 132.2 kPa.
    load = line_load(2687.5, 4200 / 2687.5, -3.5, 3.5)
    assert load.contact_length == pytest.approx(5.811, abs=0.001)
    assert load.peak / 7.0 == pytest.approx(132.12, abs=0.01)


def test_trapezoid_is_not_used_where_it_would_pull() -> None:
    # The same kind of page: V 2550, M 4500, 6 m square prints 196 kPa by 1 + 6e/L, although e > L/6.
    # 229.4 kPa is right (derived).
    load = line_load(2550.0, 4500 / 2550, -3.0, 3.0)
    assert load.peak / 6.0 == pytest.approx(229.4, abs=0.05)
    assert load.ordinate(-3.0) == 0.0


def test_bay_loads_agree_with_separate_blocks_by_the_area_moment_method() -> None:
    # Derived check of the area-moment method: ten equal blocks at 2, 6, ... 38 m carry 159.09 to 240.91 t.
    load = line_load(2000 * TONNE, 21.5, 0.0, 40.0)
    blocks = 159.0909 + 9.0909 * np.arange(10)
    bays = [load.between(4.0 * i, 4.0 * i + 4.0) / TONNE for i in range(10)]
    assert bays == pytest.approx(blocks, rel=0.003)


@pytest.mark.parametrize("lcg", [0.0, -1.0, 40.0, 41.0])
def test_hull_cannot_stand_with_her_weight_beyond_the_keel(lcg: float) -> None:
    with pytest.raises(OutOfRange, match="cannot stand"):
        line_load(1.0, lcg, 0.0, 40.0)


@pytest.mark.parametrize(
    ("weight", "lcg", "aft", "forward", "words"),
    [
        (0.0, 20.0, 0.0, 40.0, "weight"),
        (-5.0, 20.0, 0.0, 40.0, "weight"),
        (1.0, 20.0, 40.0, 40.0, "keel"),
        (1.0, 20.0, 40.0, 0.0, "keel"),
        (float("nan"), 20.0, 0.0, 40.0, "finite"),
        (1.0, float("inf"), 0.0, 40.0, "finite"),
    ],
)
def test_refuses_what_is_no_hull_on_a_keel(weight: float, lcg: float, aft: float, forward: float, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        line_load(weight, lcg, aft, forward)


shares = st.floats(0.02, 0.98)
weights = st.floats(1e3, 1e8)
lengths = st.floats(1.0, 200.0)
starts = st.floats(-50.0, 50.0)


@given(weights, shares, starts, lengths)
def test_force_and_moment_balance(weight: float, share: float, aft: float, length: float) -> None:
    lcg = aft + share * length
    load = line_load(weight, lcg, aft, aft + length)
    assert load.between(aft, aft + length) == pytest.approx(weight, rel=1e-9)
    # First moment of a linear load, by Simpson's rule, which is exact for a quadratic.
    low, high = load.contact_aft, load.contact_forward
    middle = 0.5 * (low + high)
    arms = [(low - aft) * load.ordinate(low), 4 * (middle - aft) * load.ordinate(middle)]
    arms.append((high - aft) * load.ordinate(high))
    moment = (high - low) / 6 * sum(arms)
    assert moment / weight == pytest.approx(share * length, rel=1e-7, abs=1e-7)


@given(weights, shares, lengths)
def test_never_pulls(weight: float, share: float, length: float) -> None:
    load = line_load(weight, share * length, 0.0, length)
    assert load.load_aft >= 0.0
    assert load.load_forward >= 0.0
    assert load.lift_off >= -1e-9


@given(shares, lengths)
def test_mirror_image(share: float, length: float) -> None:
    there = line_load(1e6, share * length, 0.0, length)
    back = line_load(1e6, -share * length, -length, 0.0)
    assert back.load_aft == pytest.approx(there.load_forward, rel=1e-9, abs=1e-6)
    assert back.contact_aft == pytest.approx(-there.contact_forward, rel=1e-9, abs=1e-9)


@given(shares, shares, shares)
def test_integral_is_additive_and_in_either_order(share: float, a: float, b: float) -> None:
    load = line_load(1e6, 60 * share, 0.0, 60.0)
    assert load.between(60 * a, 60 * b) == load.between(60 * b, 60 * a)
    low, high = sorted((a, b))
    parts = load.between(0, 60 * low) + load.between(60 * low, 60 * high) + load.between(60 * high, 60)
    assert parts == pytest.approx(1e6, rel=1e-9)


def test_nothing_outside_the_contact() -> None:
    load = line_load(2e6, 28.0, 0.0, 40.0)
    assert load.ordinate(-1.0) == load.ordinate(3.9) == load.ordinate(41.0) == 0.0
    assert load.between(-10.0, 4.0) == 0.0
    assert load.peak_between(-10.0, 3.0) == 0.0


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(weight=2e6, lcg=28.0, keel_aft=0.0, keel_forward=40.0)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["lift_off"] == pytest.approx(4.0)
    assert outputs["load_at_keel_aft"] == 0.0
