from __future__ import annotations

import pytest

from tenderwright.calculations.coatings.scheme_area import METHOD, scheme_area
from tenderwright.calculations.method import OutOfRange


def test_a_share_an_area_or_the_whole() -> None:
    assert scheme_area(440.0, share=0.35)["area"] == pytest.approx(154.0)
    assert scheme_area(440.0, measured=120.0)["area"] == 120.0
    assert METHOD.run(zone=440.0)["area"] == 440.0


@pytest.mark.parametrize(("grade", "share"), [(10, 0.0001), (5, 0.03), (3, 0.16), (0, 1.0)])
def test_a_rust_grade_stands_for_the_most_of_its_band(grade: int, share: float) -> None:
    # ASTM D610, Table 1: grade 3 is more than 10 % and up to 16 % of the surface.
    assert scheme_area(440.0, rust_grade=grade)["area"] == pytest.approx(440.0 * share)


def test_refuses_two_extents_and_shares_that_are_none() -> None:
    with pytest.raises(OutOfRange, match="not two"):
        scheme_area(440.0, share=0.3, measured=100.0)
    with pytest.raises(OutOfRange, match="share of a zone"):
        scheme_area(440.0, share=1.2)
    with pytest.raises(OutOfRange, match="grades 0 to 10"):
        scheme_area(440.0, rust_grade=11)
    with pytest.raises(OutOfRange, match="measured"):
        scheme_area(440.0, measured=-1.0)
