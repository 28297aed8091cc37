from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.abrasive import (
    METHOD,
    PUBLISHED_RATES,
    abrasive_mass,
    spent_mass,
    within_published_rates,
)
from tenderwright.calculations.method import OutOfRange


def test_published_masses_for_two_barges() -> None:
    # Common practice, no source: 10 219 m², 825 t of slag or 250 t of garnet.
    assert abrasive_mass(10_219.0, 80.7) / 1000 == pytest.approx(825, rel=0.001)
    assert abrasive_mass(10_219.0, 24.5) / 1000 == pytest.approx(250, rel=0.002)


def test_published_rates() -> None:
    # 5 lb/ft² is 24.4 kg/m² and 825 t on 10 219 m² is 80.7 kg/m² (common practice, no source).
    assert list(PUBLISHED_RATES) == pytest.approx([24.4, 80.7], abs=0.05)
    assert within_published_rates(40.0)
    assert not within_published_rates(10.0)
    assert not within_published_rates(120.0)


def test_old_paint_in_the_waste() -> None:
    # Derived: 300 µm at 1.4 g/cm³ is 0.42 kg/m².
    assert spent_mass(1.0, 40.0, 300e-6) - 40.0 == pytest.approx(0.42)
    assert spent_mass(1.0, 40.0, 300e-6, rust=0.5) == pytest.approx(40.92)


@given(st.floats(0, 1e4), st.floats(1, 100), st.floats(0, 2e-3), st.floats(0, 5))
def test_waste_is_no_lighter_than_the_abrasive(area: float, rate: float, film: float, rust: float) -> None:
    assert spent_mass(area, rate, film, rust=rust) >= abrasive_mass(area, rate)


@pytest.mark.parametrize("rate", [0.0, -1.0, float("nan")])
def test_never_assumes_a_rate(rate: float) -> None:
    with pytest.raises(OutOfRange, match="rate"):
        abrasive_mass(1.0, rate)


@pytest.mark.parametrize("change", [{"old_film": -1e-4}, {"paint_density": 0.0}, {"rust": -1.0}])
def test_refuses_what_is_no_waste(change: dict[str, float]) -> None:
    with pytest.raises(OutOfRange):
        spent_mass(1.0, 40.0, **change)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(area=100.0, rate=10.0)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["within_published_rates"] is False
