from __future__ import annotations

import pytest

from tenderwright.calculations.hydrostatics.block_coefficient import block_displacement
from tenderwright.calculations.hydrostatics.denny import denny_surface
from tenderwright.calculations.hydrostatics.holtrop_mennen import holtrop_mennen_surface
from tenderwright.calculations.hydrostatics.wetted_surface import wetted_surface
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import wigley


def test_holtrop_mennen_example():
    """Holtrop and Mennen, Int. Shipbuilding Progress 29, 1982, section 5: S 7381.45 m2."""
    found = holtrop_mennen_surface(205, 32, 10, 37500, 0.98, 0.75, 20)
    assert found["wetted_surface"] == pytest.approx(7381.45, abs=0.005)


def test_denny_on_the_same_ship_is_inside_the_band():
    """Computed: Denny-Mumford 7235.0 m2 on the 1982 ship, 2 % under."""
    found = denny_surface(205, 10, 37500)
    assert found["wetted_surface"] == pytest.approx(7235.0, abs=0.05)
    assert found["low"] < 7381.45 < found["high"]


def test_denny_exercise():
    """Reed's Naval Architecture for Marine Engineers (from memory): 5000 t, L 95, T 5.5 gives 1775 m2."""
    assert denny_surface(95, 5.5, 5000 / 1.025)["wetted_surface"] == pytest.approx(1775, abs=0.5)


def test_denny_against_the_wigley_offsets():
    """Computed: Denny-Mumford is 1.3 % above the exact Wigley surface."""
    estimate = denny_surface(100, 6.25, 2777.7778)
    exact = wetted_surface(wigley(), 6.25)
    assert estimate["wetted_surface"] / exact == pytest.approx(1.013, abs=0.001)


def test_block_coefficient_definition():
    found = block_displacement(100, 10, 6.25, 4 / 9, 1025.0)
    assert found["volume"] == pytest.approx(2777.7778, abs=1e-3)
    assert found["displacement"] == pytest.approx(found["volume"] * 1025)
    assert found["low"] < found["displacement"] < found["high"]


@pytest.mark.parametrize(
    ("call", "arguments"),
    [
        (holtrop_mennen_surface, (205, 32, 10, 37500, 0.98, 0.4)),
        (holtrop_mennen_surface, (205, 15, 10, 17000, 0.98, 0.75)),
        (holtrop_mennen_surface, (0, 32, 10, 37500, 0.98, 0.75)),
        (denny_surface, (100, 5, 20)),
        (denny_surface, (100, -5, 2000)),
        (block_displacement, (100, 10, 5, 0.1)),
        (block_displacement, (100, 0, 5, 0.6)),
    ],
)
def test_out_of_range(call, arguments):
    with pytest.raises(OutOfRange):
        call(*arguments)
