"""Potentials brought to one cell, against Nernst's slope and equivalents of the trade."""

from __future__ import annotations

import pytest

from tenderwright.calculations.care.reference_cell import on_silver
from tenderwright.calculations.method import OutOfRange


def test_ten_times_less_chloride_is_fifty_nine_millivolts_at_25_degrees() -> None:
    # The slope of Nernst's equation for one electron at 25 degC, in any textbook of electrochemistry: 59.16 mV.
    found = on_silver(-0.80, "silver", 3.5, 25.0)
    assert found.correction == pytest.approx(0.05916, abs=5e-6)
    assert found.potential == pytest.approx(-0.80 + 0.05916, abs=5e-6)


@pytest.mark.parametrize(
    ("reading", "cell"),
    [(-0.80, "silver"), (-0.85, "copper"), (0.25, "zinc"), (-0.80, "calomel"), (-0.75, "silver gel")],
)
def test_the_same_potential_with_each_cell(reading: float, cell: str) -> None:
    assert on_silver(reading, cell).potential == pytest.approx(-0.80)


def test_brackish_water_never_lets_steel_look_better_once_corrected() -> None:
    corrected = [on_silver(-0.85, "silver", salinity).potential for salinity in (35, 24, 12, 3, 1)]
    assert corrected == sorted(corrected)
    assert corrected[0] == pytest.approx(-0.85)


def test_in_fresh_water_an_open_cell_is_not_corrected() -> None:
    with pytest.raises(OutOfRange, match="corrected from"):
        on_silver(-0.85, "silver", 0.2)
    assert on_silver(-0.85, "copper", 0.2).potential == pytest.approx(-0.80)
