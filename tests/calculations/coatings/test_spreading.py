from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.spreading import (
    METHOD,
    consumption_factor,
    loss_from_consumption_factor,
    practical_spreading_rate,
    theoretical_spreading_rate,
)
from tenderwright.calculations.method import OutOfRange

US_GALLON = 0.003785411784


@pytest.mark.parametrize(
    ("solids", "mils", "printed"),
    [(1.0, 1, 1600), (1.0, 2, 800), (1.0, 4, 400), (0.5, 1, 800), (0.5, 2, 400), (0.5, 4, 200)],
)
def test_it_gives_the_handbook_figures_in_square_feet_a_gallon(solids: float, mils: float, printed: float) -> None:
    # MIL-HDBK-1110, 2.1.5, which rounds 1604.17 to 1600; 231 in³ to the gallon, 1/12000 ft to the mil (derived).
    exact = theoretical_spreading_rate(solids, mils * 25.4e-6) * US_GALLON / 0.3048**2
    assert exact * 1600 / 1604.1667 == pytest.approx(printed, rel=1e-7)
    assert exact == pytest.approx(printed, rel=0.003)


def test_si_form_gives_the_figure_of_the_rule_of_thumb() -> None:
    # Derived: ten times the solids in percent by the film in µm, 710/125 = 5.68 m²/L.
    assert theoretical_spreading_rate(0.71, 125e-6) / 1000 == pytest.approx(5.68, abs=1e-9)
    assert theoretical_spreading_rate(0.71, 125e-6) / 1000 == pytest.approx(5.7, abs=0.05)


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


def test_a_factor_may_be_given_in_place_of_the_loss_but_not_beside_it() -> None:
    paint = {"volume_solids": 0.71, "dry_film": 125e-6}
    by_factor, by_loss = METHOD.run(**paint, factor=1.25), METHOD.run(**paint, loss=0.2)
    assert by_factor == pytest.approx(by_loss)
    with pytest.raises(OutOfRange, match="each says the other"):
        METHOD.run(**paint, factor=1.25, loss=0.2)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(volume_solids=0.71, dry_film=125e-6)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["practical"] == outputs["theoretical"]
