from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.patch_area import METHOD, RustScale, patch_area, rusted_fraction
from tenderwright.calculations.method import OutOfRange


@pytest.mark.parametrize(
    ("grade", "upper"),
    [(10, 0.01), (9, 0.03), (8, 0.1), (7, 0.3), (6, 1), (5, 3), (4, 10), (3, 16), (2, 33), (1, 50), (0, 100)],
)
def test_upper_bounds_of_astm_d610(grade: int, upper: float) -> None:
    # ASTM D610, Table 1, per cent rusted; grade 0 is more than 50.
    assert 100 * rusted_fraction(grade, "ASTM D610").greatest == pytest.approx(upper)


@pytest.mark.parametrize(
    ("grade", "least", "greatest"),
    [(0, 0, 0), (1, 0.05, 0.05), (2, 0.5, 0.5), (3, 1, 1), (4, 8, 8), (5, 40, 50)],
)
def test_grades_of_iso_4628_3(grade: int, least: float, greatest: float) -> None:
    # ISO 4628-3 (from memory), per cent rusted.
    found = rusted_fraction(grade, "ISO 4628-3")
    assert [100 * found.least, 100 * found.greatest] == pytest.approx([least, greatest])


def test_patch_is_the_area_by_the_middle_of_the_grade() -> None:
    # Derived: grade 4 runs from 3 to 10 %, so 6.5 % of 620 m².
    assert patch_area(620.0, 4, "ASTM D610") == pytest.approx(40.3)
    assert patch_area(620.0, 5, "ISO 4628-3") == pytest.approx(279.0)


@given(st.integers(0, 9))
def test_grades_of_astm_d610_join_without_a_gap(grade: int) -> None:
    worse, better = rusted_fraction(grade, "ASTM D610"), rusted_fraction(grade + 1, "ASTM D610")
    assert worse.least == better.greatest
    assert worse.middle > better.middle


@pytest.mark.parametrize(("grade", "scale"), [(11, "ASTM D610"), (-1, "ASTM D610"), (6, "ISO 4628-3")])
def test_refuses_a_grade_the_scale_does_not_have(grade: int, scale: RustScale) -> None:
    with pytest.raises(OutOfRange, match="grades"):
        rusted_fraction(grade, scale)


def test_refuses_an_area_below_nothing() -> None:
    with pytest.raises(OutOfRange, match="area"):
        patch_area(-1.0, 4, "ASTM D610")


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(area=100.0, grade=2, scale="ASTM D610")
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert (outputs["least"], outputs["greatest"]) == (pytest.approx(16.0), pytest.approx(33.0))
