from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.galvanic import METALS, METHOD, galvanic_pair
from tenderwright.calculations.method import OutOfRange

names = st.sampled_from(sorted(METALS))


def test_steel_by_a_bronze_propeller_wastes() -> None:
    # The galvanic series in sea water (from memory): zinc, steel, bronze, stainless steel, in that order.
    found = galvanic_pair("manganese bronze", "mild steel", area_one=2.0, area_other=400.0)
    assert (found.wastes, found.spared, found.risk) == ("mild steel", "manganese bronze", "marked")
    assert not found.small_anode


def test_steel_bolts_in_bronze_are_the_worse_way_about() -> None:
    assert galvanic_pair("mild steel", "gunmetal", area_one=0.01, area_other=2.0).small_anode


def test_zinc_gives_itself_up_for_steel_and_like_metals_do_no_harm() -> None:
    assert galvanic_pair("zinc", "mild steel").wastes == "zinc"
    assert galvanic_pair("mild steel", "wrought iron").risk == "little"
    assert galvanic_pair("copper", "copper").wastes is None


@given(names, names)
def test_the_pair_is_the_same_from_either_side(one: str, other: str) -> None:
    assert galvanic_pair(one, other) == galvanic_pair(other, one)


@given(names, names, names)
def test_the_series_is_in_order(a: str, b: str, c: str) -> None:
    ab, bc, ac = galvanic_pair(a, b), galvanic_pair(b, c), galvanic_pair(a, c)
    if ab.wastes == a and bc.wastes == b:
        assert ac.wastes == a
        assert ac.difference == pytest.approx(ab.difference + bc.difference)


def test_refuses_a_metal_that_is_not_in_the_series() -> None:
    with pytest.raises(OutOfRange, match="unobtainium"):
        galvanic_pair("unobtainium", "zinc")
    with pytest.raises(OutOfRange, match="areas"):
        galvanic_pair("zinc", "lead", 0.0, 1.0)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(one="mild steel", other="gunmetal")
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["small_anode"] is None
    assert METHOD.run(one="mild steel", other="gunmetal", area_one=1.0, area_other=2.0)["small_anode"] is True
