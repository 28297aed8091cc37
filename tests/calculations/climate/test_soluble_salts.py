from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.climate.soluble_salts import METHOD, SALT_LIMITS, soluble_salts
from tenderwright.calculations.method import OutOfRange

MICROSIEMENS_PER_CM = 1e-4


@pytest.mark.parametrize(("millilitres", "factor"), [(3.0, 1.2), (15.0, 6.0)])
def test_published_factor(millilitres: float, factor: float) -> None:
    # ISO 8502-9 (from memory): mg/m² for each uS/cm on 12.5 cm².
    assert 1e6 * soluble_salts(MICROSIEMENS_PER_CM, 1e-6 * millilitres, 12.5e-4) == pytest.approx(factor)


def test_fifty_milligrams_are_five_micrograms_a_square_centimetre() -> None:
    # IMO PSPC: 50 mg/m² of sodium chloride.
    assert SALT_LIMITS[0].limit * 1e9 / 1e4 == pytest.approx(5.0)


@given(st.floats(0, 1000), st.floats(1, 5))
def test_salts_follow_the_conductivity(conductivity: float, more: float) -> None:
    assert soluble_salts(more * conductivity) == pytest.approx(more * soluble_salts(conductivity))


def test_method_takes_off_the_water_before() -> None:
    outputs = METHOD.run(after=45.0, before=3.0)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert 1e6 * outputs["salts"] == pytest.approx(50.4)
    assert outputs["passes"] is False
    assert METHOD.run(after=45.0, before=4.0)["passes"] is True


def test_refuses_water_that_grew_cleaner() -> None:
    with pytest.raises(OutOfRange, match="rise"):
        METHOD.run(after=2.0, before=3.0)
    with pytest.raises(OutOfRange, match="area"):
        soluble_salts(0.001, area=0.0)
