from __future__ import annotations

import pytest

from tenderwright.calculations.climate.dust import METHOD, dust_passes
from tenderwright.calculations.method import OutOfRange


@pytest.mark.parametrize(
    ("quantity", "size", "passes"),
    [(0, 5, True), (1, 3, True), (2, 3, False), (1, 5, True), (2, 4, False), (3, 2, True), (5, 0, True)],
)
def test_quantity_one_for_classes_three_to_five(quantity: int, size: int, passes: bool) -> None:
    # IMO PSPC (from memory), sizes by ISO 8502-3.
    assert dust_passes(quantity, size) is passes


def test_a_limit_of_ones_own() -> None:
    assert dust_passes(2, 3, limit=2)


@pytest.mark.parametrize(("quantity", "size"), [(6, 1), (1, 6), (-1, 1)])
def test_refuses_a_rating_that_is_not_in_the_standard(quantity: int, size: int) -> None:
    with pytest.raises(OutOfRange, match="0 to 5"):
        dust_passes(quantity, size)


def test_method_gives_its_outputs() -> None:
    assert METHOD.run(quantity=2, size=4) == {"passes": False, "particles": "0.5 to 2.5 mm"}
