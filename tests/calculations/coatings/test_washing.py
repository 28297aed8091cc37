from __future__ import annotations

import pytest

from tenderwright.calculations.coatings.washing import METHOD, SOURCES, WashingClass, WashingEdition, washing_class
from tenderwright.calculations.method import OutOfRange

PSI = 6894.757293168


@pytest.mark.parametrize(
    ("psi", "edition", "name"),
    [
        # SSPC-SP 12 / NACE No. 5, text of the 1990s: bounds at 5000, 10 000 and 25 000 psi.
        (3_000, "1990s", "low-pressure water cleaning"),
        (7_000, "1990s", "high-pressure water cleaning"),
        (20_000, "1990s", "high-pressure waterjetting"),
        (28_000, "1990s", "ultrahigh-pressure waterjetting"),
        # The edition of 2002 (from memory): the upper bound at 30 000 psi.
        (3_000, "2002", "low-pressure water cleaning"),
        (28_000, "2002", "high-pressure waterjetting"),
        (35_000, "2002", "ultrahigh-pressure waterjetting"),
    ],
)
def test_class_depends_on_the_edition(psi: float, edition: WashingEdition, name: WashingClass) -> None:
    assert washing_class(psi * PSI, edition) == name


def test_bounds() -> None:
    assert washing_class(33.9e6, "1990s") == "low-pressure water cleaning"
    assert washing_class(34e6, "1990s") == "high-pressure water cleaning"
    assert washing_class(170e6, "1990s") == "high-pressure waterjetting"


def test_edition_from_memory_says_so() -> None:
    assert "from memory" in str(SOURCES["2002"])


def test_refuses_no_pressure() -> None:
    with pytest.raises(OutOfRange, match="pressure"):
        washing_class(0.0, "1990s")


def test_method_names_the_class_and_whose_it_is() -> None:
    outputs = METHOD.run(pressure=28_000 * PSI, edition="2002")
    assert outputs["class"] == "high-pressure waterjetting"
    assert "from memory" in outputs["source"]
