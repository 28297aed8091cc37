"""Each block bears the worse of both hulls; an elastic one that rests on estimates leaves the verdict open."""

from __future__ import annotations

import pytest

from tenderwright.calculations.blocks.bearing import bearing
from tenderwright.calculations.method import OutOfRange

G = 9.80665
LINE = [{"x": x, "length": 0.4, "width": 0.4} for x in (0.0, 2.0, 6.0)]
RIGID, ELASTIC = [20e3, 21e3, 22e3], [26e3, 18e3, 24e3]
LIMIT = {"allowable": 1.7e6, "allowable_source": "assumed"}


def test_load_line_load_and_pressure_by_hand() -> None:
    """Derived: spans from mid-gap to mid-gap are 2, 3 and 4 m, the ends as much beyond as within."""
    found = bearing(LINE, RIGID, ELASTIC)
    assert [one.load for one in found.blocks] == [26e3, 21e3, 24e3]
    assert [one.line_load for one in found.blocks] == pytest.approx([13e3, 7e3, 6e3])
    assert [one.pressure for one in found.blocks] == pytest.approx([load * G / 0.16 for load in (26e3, 21e3, 24e3)])
    assert (found.rigid_line_load, found.elastic_line_load) == pytest.approx((10e3, 13e3))
    assert found.hardest == 0


def test_the_verdict_is_open_while_the_worse_hull_rests_on_estimates() -> None:
    assert bearing(LINE, RIGID, ELASTIC, **LIMIT).limit.met is True
    one = bearing(LINE, RIGID, ELASTIC, rests_on="an estimated girder", **LIMIT).limit
    assert one.met is None
    assert (one.demand, one.estimate) == pytest.approx((22e3 * G / 0.16, 26e3 * G / 0.16))
    assert bearing(LINE, ELASTIC, RIGID, rests_on="an estimated girder", **LIMIT).limit.met is True


def test_what_the_naval_architect_calculated_is_judged_in_place_of_the_estimates() -> None:
    for calculated, met in ((1.65e6, True), (1.75e6, False)):
        said = bearing(LINE, RIGID, ELASTIC, rests_on="an estimated girder", calculated=calculated, **LIMIT)
        assert said.limit.met is met
        assert said.limit.demand == calculated


def test_loads_of_other_blocks_or_none_at_all() -> None:
    with pytest.raises(OutOfRange, match="each block"):
        bearing(LINE, RIGID[:2])
    with pytest.raises(OutOfRange, match="each block"):
        bearing(LINE)
    with pytest.raises(OutOfRange, match="source"):
        bearing(LINE, RIGID, allowable=1e6)
