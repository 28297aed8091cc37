from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.spreading import (
    FT2_MIL_PER_US_GALLON,
    METHOD,
    consumption_factor,
    loss_from_consumption_factor,
    practical_spreading_rate,
    theoretical_spreading_rate,
    theoretical_spreading_rate_us,
)
from tenderwright.calculations.method import OutOfRange

US_GALLON = 0.003785411784


@pytest.mark.parametrize(
    ("solids", "mils", "printed"),
    [(1.0, 1, 1600), (1.0, 2, 800), (1.0, 4, 400), (0.5, 1, 800), (0.5, 2, 400), (0.5, 4, 200)],
)
def test_us_form_gives_the_handbook_figures(solids: float, mils: float, printed: float) -> None:
    # MIL-HDBK-1110, 2.1.5, which rounds 1604 to 1600.
    exact = theoretical_spreading_rate_us(solids, mils)
    assert exact * 1600 / FT2_MIL_PER_US_GALLON == pytest.approx(printed, rel=1e-12)
    assert exact == pytest.approx(printed, rel=0.003)


def test_si_form_gives_the_figure_of_the_rule_of_thumb() -> None:
    # Derived: ten times the solids in percent by the film in µm, 710/125 = 5.68 m²/L.
    assert theoretical_spreading_rate(0.71, 125e-6) / 1000 == pytest.approx(5.68, abs=1e-9)
    assert theoretical_spreading_rate(0.71, 125e-6) / 1000 == pytest.approx(5.7, abs=0.05)


def test_constant_of_the_us_form() -> None:
    # Derived: 231 in³ to the gallon, 1/12000 ft to the mil.
    assert pytest.approx(1604.17, abs=0.005) == FT2_MIL_PER_US_GALLON


@given(st.floats(0.01, 1.0), st.floats(0.5, 40.0))
def test_both_forms_agree(solids: float, mils: float) -> None:
    per_gallon = theoretical_spreading_rate(solids, mils * 25.4e-6) * US_GALLON / 0.3048**2
    assert per_gallon == pytest.approx(theoretical_spreading_rate_us(solids, mils), rel=1e-9)


def test_loss_divides_and_is_not_a_consumption_factor() -> None:
    # Derived: a loss of 0.30 is a factor of 1/0.70 = 1.4286, not 1.30.
    assert consumption_factor(0.30) == pytest.approx(1.4286, abs=5e-5)
    assert practical_spreading_rate(5680.0, 0.30) == pytest.approx(5680.0 / 1.4286, rel=1e-4)


@given(st.floats(0.0, 0.99))
def test_consumption_factor_and_loss_are_inverse(loss: float) -> None:
    assert loss_from_consumption_factor(consumption_factor(loss)) == pytest.approx(loss, abs=1e-12)


@pytest.mark.parametrize("loss", [1.0, 1.43, -0.1, float("nan")])
def test_refuses_a_factor_in_place_of_a_loss(loss: float) -> None:
    with pytest.raises(OutOfRange, match="loss"):
        consumption_factor(loss)


def test_refuses_a_yield_in_place_of_a_factor() -> None:
    with pytest.raises(OutOfRange, match="factor"):
        loss_from_consumption_factor(0.7)


@pytest.mark.parametrize("solids", [0.0, -0.1, 1.01, 71.0, float("nan")])
def test_refuses_solids_that_are_no_fraction(solids: float) -> None:
    with pytest.raises(OutOfRange, match="volume solids"):
        theoretical_spreading_rate(solids, 1e-4)


@pytest.mark.parametrize("film", [0.0, -1e-6, float("inf")])
def test_refuses_a_film_of_nothing(film: float) -> None:
    with pytest.raises(OutOfRange, match="dry film"):
        theoretical_spreading_rate(0.5, film)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(volume_solids=0.71, dry_film=125e-6)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["practical"] == outputs["theoretical"]
