"""A figure is held against the words of an item only where they state one figure of its kind."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.planning.inspection.figure import asked_of
from tenderwright.quantities.quantity import parse_quantity


def passes(accept: str, value: str) -> bool | None:
    read = parse_quantity(value, "any")
    asked = asked_of(accept, read)
    return None if asked is None else asked.passes(read.si)


@pytest.mark.parametrize(
    ("accept", "value", "found"),
    [
        ("24 of 24 in place; resistance 0.01 ohm or less", "0.01 ohm", True),
        ("24 of 24 in place; resistance 0.01 ohm or less", "0.02 ohm", False),
        ("3 bar or more at two nozzles; 16 extinguishers in place", "2.9 bar", False),
        ("Keel within 25 mm of the block centres; list under 0.5 deg", "0.5 deg", False),
        ("No gap above 50 mm; smoke is drawn inward", "30 mm", True),
        ("1.0 mm to 1.5 mm on diameter", "1.6 mm", False),
        ("1.0 mm to 1.5 mm on diameter", "0.05 in", True),
        ("Salts 50 mg/m2 or less; profile of the scheme", "90 mg/m2", False),
    ],
)
def test_one_figure_of_the_kind_is_judged(accept: str, value: str, found: bool) -> None:
    assert passes(accept, value) is found


@pytest.mark.parametrize(
    ("accept", "value"),
    [
        ("Frame marks within 50 mm; repeat readings within 0.2 mm", "0.1 mm"),
        ("Laps closed to 0.1 mm feeler; no gap above 1 mm", "0.5 mm"),
        ("Grade of the scheme, matt and dry", "80 um"),
        ("3 bar or more", "4 mm"),
    ],
)
def test_several_figures_or_none_are_left_to_who_signs(accept: str, value: str) -> None:
    assert passes(accept, value) is None


@given(st.integers(1, 500), st.integers(1, 500))
def test_what_is_no_more_than_the_figure_passes_and_all_else_fails(limit: int, value: int) -> None:
    assert passes(f"{limit} mm or less", f"{value} mm") is (value <= limit)
    assert passes(f"{limit} mm or more", f"{value} mm") is (value >= limit)
    assert passes(f"under {limit} mm", f"{value} mm") is (value < limit)
