from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.diminution import (
    METHOD,
    RENEW,
    SOUND,
    STATES,
    SUBSTANTIAL,
    classify,
    diminution,
)

thicknesses = arrays(np.float64, 20, elements=st.floats(0.004, 0.03))


def test_limits_themselves_are_still_within() -> None:
    # IMO 2011 ESP Code, 1.2.9: "in excess of 75 %"; as built 10 mm, 20 % allowed, so 8.5 and 8.0 mm.
    measured = np.array([8.6, 8.5, 8.4, 8.0, 7.9]) / 1e3
    found = diminution(np.full(5, 0.010), measured)
    assert classify(found.fraction, 0.20).tolist() == [SOUND, SOUND, SUBSTANTIAL, SUBSTANTIAL, RENEW]


def test_new_plate_over_its_nominal_thickness_is_flagged_and_loses_nothing() -> None:
    # TB 55-1900-201-45/1, E-11: 7.7 lb plate (3/16 in) may gauge 0.205 in when new.
    found = diminution(np.array([0.1875, 0.1875]) * 0.0254, np.array([0.205, 0.1865]) * 0.0254)
    assert found.above_nominal.tolist() == [True, False]
    assert found.loss[0] == 0.0
    assert found.excess[0] / found.loss[1] == pytest.approx(17.5)
    assert found.fraction[1] == pytest.approx(0.001 / 0.1875)


@given(thicknesses, thicknesses, st.floats(0.05, 0.6))
def test_loss_is_clamped_and_a_stricter_limit_never_spares(built: np.ndarray, taken: np.ndarray, a: float) -> None:
    found = diminution(built, taken)
    assert (found.loss >= 0.0).all()
    assert (found.fraction < 1.0).all()
    assert not (found.above_nominal & (found.loss > 0.0)).any()
    assert built - found.loss + found.excess == pytest.approx(taken)
    assert (classify(found.fraction, 0.9 * a) >= classify(found.fraction, a)).all()


@given(thicknesses, st.permutations(range(20)))
def test_order_of_readings_does_not_matter(taken: np.ndarray, order: list[int]) -> None:
    built = np.full(20, 0.0111)
    straight = classify(diminution(built, taken).fraction, 0.25)
    assert (classify(diminution(built, taken[order]).fraction, 0.25) == straight[order]).all()


def test_refuses_a_reading_that_is_no_thickness() -> None:
    with pytest.raises(OutOfRange, match="reading 2"):
        diminution(np.array([0.01, 0.01]), np.array([0.009, 9.0]))
    with pytest.raises(OutOfRange, match="each reading"):
        diminution(np.array([0.01]), np.array([0.009, 0.009]))


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(as_built=0.0125, measured=[0.0108, 0.0094, 0.0127, 0.0086], allowable=0.30)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["state"] == ["sound", "substantial", "sound", "renew"]
    assert set(outputs["state"]) <= set(STATES)
    assert outputs["above_nominal"] == 1.0
    assert outputs["mean_diminution"] == pytest.approx((1.7 + 3.1 + 0.0 + 3.9) / 12.5 / 4)
