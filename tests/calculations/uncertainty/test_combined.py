"""The law of propagation for sources that have nothing to do with each other."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.uncertainty.combined import METHOD, combined

PARTS = st.lists(st.tuples(st.text(max_size=3), st.floats(-1e6, 1e6).filter(lambda x: x == 0 or abs(x) > 1e-9)))


def test_metacentric_height_at_settling() -> None:
    """GM = KM - KG - P KM/W with W 1000 t, KM 3.0/2 m: the parts 0.0290, 0.0500, 0.00424, 0.0030 m (derived)."""
    found = combined([("KM", 0.0290), ("KG", -0.0500), ("P", 0.00424), ("W", 0.0030)])
    assert found.u == pytest.approx(0.0580, abs=5e-5)
    assert found.driver == "KG"
    assert found.shares[0][1] == pytest.approx(0.74, abs=0.005)


def test_upthrust_from_drafts_at_both_ends() -> None:
    """P = MCTC t/l: with 2 t for each centimetre of trim, drafts read to 0.5, 1, 2 and 5 cm (derived)."""
    for read, wanted in ((0.5, 1.414), (1.0, 2.828), (2.0, 5.657), (5.0, 14.142)):
        sources = [{"name": end, "u": read, "sensitivity": 2.0} for end in ("aft", "forward")]
        assert METHOD.run(sources=sources)["u"] == pytest.approx(wanted, abs=5e-4)


@given(PARTS)
def test_the_shares_add_up_and_the_whole_is_no_less_than_any_part(parts: list[tuple[str, float]]) -> None:
    found = combined(parts)
    assert found.u >= max((abs(part) for _, part in parts), default=0.0) * (1 - 1e-12)
    assert sum(share for _, share in found.shares) == pytest.approx(1.0 if found.u else 0.0)


def test_nothing_uncertain_has_no_driver() -> None:
    assert combined([("a", 0.0)]).driver == ""


def test_what_is_not_an_uncertainty() -> None:
    with pytest.raises(OutOfRange, match="no source"):
        METHOD.run(sources=[])
    with pytest.raises(OutOfRange, match="less than nothing"):
        METHOD.run(sources=[{"name": "a", "u": -1.0, "sensitivity": 1.0}])
