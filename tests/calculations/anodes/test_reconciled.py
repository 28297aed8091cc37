from __future__ import annotations

import pytest

from tenderwright.calculations.anodes.reconciled import METHOD, reconciled
from tenderwright.calculations.method import OutOfRange


@pytest.mark.parametrize(
    ("measured", "spent", "reading"),
    [
        (2.0, 0, "as calculated"),
        (1.5, 9, "as calculated"),
        (2.6, 0, "more than calculated"),
        (1.4, 0, "less than calculated"),
        (1.4, 1, "less, and some were spent"),
        (0.0, 0, "less than calculated"),
    ],
)
def test_how_the_two_are_read(measured: float, spent: int, reading: str) -> None:
    """Derived: of 2 A reckoned; within a quarter the two agree."""
    found = reconciled(measured, 2.0, spent)
    assert found.reading == reading
    assert found.share == pytest.approx(measured / 2.0)
    assert METHOD.run(measured=measured, demand=2.0, spent=spent)["reading"] == reading


def test_what_cannot_be_compared() -> None:
    with pytest.raises(OutOfRange):
        reconciled(1.0, 0.0, 0)
    with pytest.raises(OutOfRange):
        reconciled(-1.0, 2.0, 0)
