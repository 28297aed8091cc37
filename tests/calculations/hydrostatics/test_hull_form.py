from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.hydrostatics.hull_form import hull_form
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import coaster, wigley

GOOD = {
    "length": 10.0,
    "stations": [0.0, 5.0, 10.0],
    "waterlines": [0.0, 1.0, 2.0],
    "half_breadths": [[0.0, 1.0, 1.0], [1.0, 1.0, 1.0], [0.0, 1.0, 1.0]],
}


@pytest.mark.parametrize(
    ("change", "why"),
    [
        ({"stations": [0.0, 5.0]}, "2 stations"),
        ({"stations": [0.0, 5.0, 5.0]}, "run forward"),
        ({"waterlines": [0.0, 2.0, 1.0]}, "upward"),
        ({"half_breadths": [[0, 1, -1], [1, 1, 1], [0, 1, 1]]}, "negative"),
        ({"half_breadths": [[0, 1, float("nan")], [1, 1, 1], [0, 1, 1]]}, "finite"),
        ({"keel_heights": [0.0, 0.5, 0.0]}, "below the keel"),
        ({"deck_heights": [0.0, 2.5, 2.5]}, "not above the keel"),
        ({"length": 0.0}, "positive"),
    ],
)
def test_contradictory_tables_are_refused(change, why):
    with pytest.raises(OutOfRange, match=why):
        hull_form(**{**GOOD, **change})


def test_curve_passes_through_every_offset():
    form = coaster()
    used = form.waterlines[None, :] >= form.keel_heights[:, None]
    for j, z in enumerate(form.waterlines):
        found = form.curves.half_breadth(np.full(form.stations.size, z))
        assert found[used[:, j]] == pytest.approx(form.half_breadths[used[:, j], j], abs=1e-9)


def test_curve_is_straight_from_the_top_waterline_to_the_deck_edge():
    form = coaster()
    middle = (form.waterlines[-1] + form.deck_heights) / 2
    expected = (form.half_breadths[:, -1] + form.deck_half_breadths) / 2
    assert form.curves.half_breadth(middle) == pytest.approx(expected)


def test_half_breadth_between_stations_follows_the_wigley_parabola():
    form = wigley()
    assert form.half_breadth_at(17.3, [2.0])[0] == pytest.approx(
        5 * (1 - 0.654**2) * (1 - (1 - 2 / 6.25) ** 2), rel=1e-12
    )


def test_keel_between_waterlines_starts_at_the_half_siding():
    form = hull_form(**{**GOOD, "half_breadths": [[0, 1, 1]] * 3, "keel_heights": 0.4, "half_sidings": 0.15})
    assert form.curves.half_breadth(np.full(3, 0.4)) == pytest.approx(0.15)
    assert form.curves.half_breadth(np.full(3, 0.39)) == pytest.approx(0.0)
    assert form.curves.half_area(np.full(3, 0.4)) == pytest.approx(0.0)


def test_waterlines_above_the_deck_edge_are_not_used():
    form = hull_form(**{**GOOD, "deck_heights": 1.5, "deck_half_breadths": 0.8})
    assert form.curves.half_breadth(np.full(3, 1.5)) == pytest.approx(0.8)
    assert form.curves.half_area(np.full(3, 3.0)) == pytest.approx(form.curves.half_area(np.full(3, 1.5)))


def test_position_outside_the_stations_is_refused():
    with pytest.raises(OutOfRange, match="outside the stations"):
        wigley().half_breadth_at(101.0, [1.0])
