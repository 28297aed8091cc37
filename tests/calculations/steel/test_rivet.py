from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steel.rivet import METHOD, rivet_diameter, rivet_diameter_metric, rivet_hole

INCH = 0.0254


@pytest.mark.parametrize(("plate", "hole"), [(5 / 16, 0.73), (7 / 16, 0.86), (1 / 2, 0.91), (9 / 16, 0.975), (1, 1.3)])
def test_published_holes(plate: float, hole: float) -> None:
    # Unwin's rule as tabled in A Text-Book of Mechanical Engineering.
    assert rivet_hole(plate * INCH) / INCH == pytest.approx(hole, abs=0.0125)


def test_published_metric_diameter() -> None:
    # Unwin's rule in millimetres: a plate of 9 mm takes a rivet of 18 mm.
    assert 1000 * rivet_diameter_metric(0.009) == pytest.approx(18.0)


def test_published_diameter_in_inches() -> None:
    # Unwin: 1.2 sqrt(t); one inch of plate takes 1.2 in.
    assert rivet_diameter(INCH) / INCH == pytest.approx(1.2)


@given(st.floats(0.003, 0.04))
def test_hole_is_larger_than_the_rivet_and_both_forms_agree(thickness: float) -> None:
    assert rivet_hole(thickness) > rivet_diameter(thickness)
    assert rivet_diameter_metric(thickness) == pytest.approx(rivet_diameter(thickness), rel=0.009)


@pytest.mark.parametrize("thickness", [0.0, -0.01, float("nan")])
def test_refuses_no_plate(thickness: float) -> None:
    for rule in (rivet_diameter, rivet_hole, rivet_diameter_metric):
        with pytest.raises(OutOfRange, match="thickness"):
            rule(thickness)


def test_method_gives_its_outputs() -> None:
    assert set(METHOD.run(thickness=0.009)) == {symbol.name for symbol in METHOD.outputs}
