from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steel.weldability import METHOD, carbon_equivalent, weldability

GOOD = {"carbon": 0.0018, "manganese": 0.005, "sulphur": 0.0004, "phosphorus": 0.0004, "nitrogen": 0.00006}


def test_the_carbon_equivalent_by_hand() -> None:
    """EN 1011-2, Annex C.2 (from memory), of plain steel: 0.16 + 0.5/6."""
    assert carbon_equivalent(0.16, 0.5) == pytest.approx(0.2433, abs=1e-4)


def test_steel_that_keeps_every_figure_may_be_welded() -> None:
    assert METHOD.run(**GOOD)["joining"] == "may be welded by a proved procedure"


@pytest.mark.parametrize(
    ("element", "share", "governs"),
    [
        ("carbon", 0.0030, "carbon"),
        ("sulphur", 0.0008, "sulphur"),
        ("phosphorus", 0.0020, "phosphorus"),
        ("nitrogen", 0.00020, "nitrogen"),
        ("manganese", 0.0250, "carbon equivalent"),
    ],
)
def test_plate_is_riveted_only_where_one_figure_fails(element: str, share: float, governs: str) -> None:
    found = METHOD.run(**{**GOOD, element: share})
    assert found["joining"] == "riveted only"
    assert found["deciding"] == governs


@given(st.sampled_from(sorted(GOOD)))
def test_what_was_not_analysed_is_not_known(element: str) -> None:
    some = dict(GOOD)
    del some[element]
    found = METHOD.run(**some)
    assert found["joining"] == "no weld until it is known"


def test_refuses_shares_that_no_plate_has() -> None:
    with pytest.raises(OutOfRange, match="carbon"):
        weldability(carbon=0.18)
