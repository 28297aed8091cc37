from __future__ import annotations

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.gauging import METHOD


def test_the_three_counts_are_added() -> None:
    """2 x 20, a third of 10 rounded up, and 5 x 3."""
    assert METHOD.run(all_plates=20, selected_plates=10, substantial_plates=3) == {"plates": 59.0, "shots": 59.0}


def test_less_than_no_plates_are_refused() -> None:
    with pytest.raises(OutOfRange):
        METHOD.run(all_plates=-1, selected_plates=0, substantial_plates=0)
