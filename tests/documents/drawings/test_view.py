"""A view keeps a true scale, and the largest that fits is chosen."""

from __future__ import annotations

import pytest

from tenderwright.documents.drawings.view import SCALES, Room, View, largest_scale


@pytest.mark.parametrize("scale", SCALES)
def test_a_metre_is_a_metre_over_the_scale(scale: int) -> None:
    view = View(scale, 20, 50)
    assert view.x(10) - view.x(0) == pytest.approx(10_000 / scale)
    assert view.y(0) - view.y(3) == pytest.approx(3_000 / scale)


def test_the_largest_scale_that_fits_both_ways_is_chosen() -> None:
    room = Room(239, 125)
    assert largest_scale(room, lambda scale: (51_500 / scale, 10)) == 250
    assert largest_scale(room, lambda scale: (10, 12_500 / scale)) == 100
    assert largest_scale(room, lambda scale: (900_000 / scale, 10)) == SCALES[-1]
