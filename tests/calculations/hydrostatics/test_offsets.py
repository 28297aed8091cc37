from __future__ import annotations

import pytest

from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS, OFFSETS, hull_from_offsets
from tenderwright.calculations.hydrostatics.upright import hydrostatics, upright
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import barge
from tests.calculations.hydrostatics.inputs import si


def test_offsets_become_the_same_hull():
    form = barge()
    offsets = {
        "length": form.length,
        "waterlines": form.waterlines.tolist(),
        "stations": [{"x": x, "half_breadths": [4.0] * 6} for x in form.stations.tolist()],
    }
    found = upright(offsets, 2.3, 0.4, 1000.0, 3.0)
    expected = hydrostatics(form, 2.3, 0.4, 1000.0)
    assert found["displacement"] == pytest.approx(expected.displacement)
    assert found["moment_to_change_trim"] == pytest.approx(expected.moment_to_change_trim(3.0))


def test_deck_keel_and_siding_are_taken_over():
    station = {
        "x": 0.0,
        "half_breadths": [0.0, 1.0],
        "keel": 0.5,
        "deck": 3.0,
        "deck_half_breadth": 1.2,
        "half_siding": 0.1,
    }
    stations = [{**station, "x": x} for x in (0.0, 5.0, 10.0)]
    form = hull_from_offsets({"length": 10.0, "waterlines": [0.0, 2.0], "stations": stations})
    assert form.keel_heights.tolist() == [0.5] * 3
    assert form.deck_heights.tolist() == [3.0] * 3
    assert form.deck_half_breadths.tolist() == [1.2] * 3
    assert form.half_sidings.tolist() == [0.1] * 3


def test_example_is_a_ship():
    """Derived: an invented hull; her block coefficient at 2.5 m lies where ordinary hulls do."""
    found = hydrostatics(hull_from_offsets(si(EXAMPLE_OFFSETS, OFFSETS)), 2.5)
    assert 0.4 < found.volume / (40 * 8.4 * 2.5) < 0.7


def test_a_row_that_does_not_match_the_waterlines_is_named() -> None:
    rows = [{"x": float(x), "half_breadths": [0.0, 1.0, 2.0]} for x in (0, 10, 20)]
    table = {"length": 20.0, "waterlines": [0.0, 1.0, 2.0], "stations": rows}
    hull_from_offsets(table)
    for half_breadths in ([], [0.0, 1.0], [0.0, 1.0, 2.0, 3.0]):
        one = {"x": 10.0, "half_breadths": half_breadths}
        with pytest.raises(OutOfRange, match=f"station 2 has {len(half_breadths)} half-breadths, .* 3 waterlines"):
            hull_from_offsets({**table, "stations": [rows[0], one, rows[2]]})
    for waterlines in ([], [1.0]):
        with pytest.raises(OutOfRange, match="two waterlines"):
            hull_from_offsets({**table, "waterlines": waterlines})
