from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.area_rule import METHOD, Paint, zincs_for_area
from tenderwright.calculations.method import OutOfRange

SQUARE_FOOT = 0.3048**2


@pytest.mark.parametrize(("square_feet", "paint"), [(400, "fresh"), (200, "one year old"), (100, "bare")])
def test_two_zincs_for_each_area(square_feet: float, paint: Paint) -> None:
    # US Army TB 43-0144: two zincs per 400, 200 and 100 ft²; never fewer than two.
    assert zincs_for_area(square_feet * SQUARE_FOOT, paint) == 2
    assert zincs_for_area(3 * square_feet * SQUARE_FOOT, paint) == 6
    assert zincs_for_area(0.0, paint) == 2
    assert zincs_for_area(1.01 * square_feet * SQUARE_FOOT, paint) == 4


@given(st.floats(0, 5000))
def test_worse_paint_needs_no_fewer(area: float) -> None:
    fresh, year, bare = (zincs_for_area(area, paint) for paint in ("fresh", "one year old", "bare"))
    assert 2 <= fresh <= year <= bare
    assert fresh % 2 == 0


def test_two_thirds_go_amidships() -> None:
    # US Army TB 43-0144.
    assert METHOD.run(area=9 * 400 * SQUARE_FOOT, paint="fresh") == {"number": 18.0, "amidships": 12.0, "stern": 6.0}


def test_refuses_an_area_below_nothing() -> None:
    with pytest.raises(OutOfRange, match="area"):
        zincs_for_area(-1.0, "bare")
