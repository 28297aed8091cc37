from __future__ import annotations

import pytest

from tenderwright.calculations.coatings.profile_fill import (
    METHOD,
    dead_volume,
    profile_fill,
)
from tenderwright.calculations.method import OutOfRange


def test_cost_of_a_profile() -> None:
    # A supplier's example (common practice, no source): 10 000 ft², 50 µm, 79 %, transfer 75 %: about 80 L.
    paint = 1000 * profile_fill(10_000 * 0.3048**2, 50e-6, 0.79, 0.25)
    assert paint == pytest.approx(78.4, abs=0.05)
    assert paint == pytest.approx(80, rel=0.025)


def test_deeper_profile_takes_half_as_much_again() -> None:
    # The same page: 75 µm in place of 50 µm takes 50 % more.
    assert profile_fill(1.0, 75e-6, 0.79, 0.25) == pytest.approx(1.5 * profile_fill(1.0, 50e-6, 0.79, 0.25))


def test_dead_volume_by_area() -> None:
    # Derived: k Rz / 1000 L/m²; two thirds of 30 µm is 20 cm³/m².
    assert dead_volume(1.0, 30e-6, 2 / 3) == pytest.approx(20e-6)


@pytest.mark.parametrize(("area", "profile", "factor"), [(-1.0, 1e-5, 1.0), (1.0, -1e-5, 1.0)])
def test_refuses_what_is_below_nothing(area: float, profile: float, factor: float) -> None:
    with pytest.raises(OutOfRange, match="less than nothing"):
        dead_volume(area, profile, factor)


def test_refuses_a_loss_of_everything() -> None:
    with pytest.raises(OutOfRange, match="loss"):
        profile_fill(1.0, 1e-5, 0.5, 1.0)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(area=1.0, profile=60e-6, volume_solids=0.5, loss=0.2, profile_factor=0.5)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["dead_film"] == pytest.approx(30e-6)
