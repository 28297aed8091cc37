"""The verdict on a facility, limit by limit."""

from __future__ import annotations

from math import radians, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.cradle.cars import judge
from tenderwright.calculations.cradle.train import Car, arrange
from tenderwright.calculations.facility.clearances import IN_SERVICE, Clearances
from tenderwright.calculations.facility.fit import METHOD, Berth, Visitor, basic_limits, facility_fit
from tenderwright.calculations.facility.water import METHOD as WATER
from tenderwright.calculations.facility.water import deepest, water_over_blocks, water_over_sill
from tenderwright.calculations.method import Citation, OutOfRange
from tenderwright.calculations.verdict import Limit, verdict

SHIP = Visitor(51.8, 9.4, 600e3, 3.3, 3.5, 21e3, 19.4)
DOCK = Berth(96.0, 14.6, 4.3, 3500e3, 45e3, sill=5.1, air_draft=22.0)


def test_passes_with_the_limit_used_most():
    found = facility_fit(SHIP, DOCK)
    assert found.words == "pass"
    assert [limit.name for limit in found.limits] == [
        "length",
        "beam",
        "water over the sill",
        "water over the blocks",
        "lift",
        "line load",
        "air draft",
    ]
    assert found.governs.name == "air draft"
    assert found.margin == pytest.approx(22.0 - 19.4 - 0.3)
    assert found.tightest is found.governs
    assert (found.passed, found.unknown) == ((), ())


def test_fails_by_the_worst():
    found = facility_fit(SHIP, replace(DOCK, length=45.0, blocks=3.4, line_load=None))
    assert (found.met, found.words) == (False, "fail")
    assert found.governs.name == "length"
    assert found.margin == pytest.approx(45.0 - 52.4)
    assert [limit.name for limit in found.passed] == ["length", "water over the blocks"]
    assert [limit.name for limit in found.unknown] == ["line load"]


def test_what_is_not_known_decides_where_nothing_fails():
    found = facility_fit(SHIP, replace(DOCK, lift=None))
    assert (found.met, found.words, found.governs.name, found.margin) == (None, "not known", "lift", None)
    assert found.tightest is not None
    assert found.tightest.name == "air draft"
    unknown_ship = facility_fit(replace(SHIP, draft_over_sill=None), DOCK)
    assert unknown_ship.governs.name == "water over the sill"


def test_sill_and_bridge_are_asked_for_only_where_they_are():
    plain = replace(DOCK, sill=None, air_draft=None)
    names = [limit.name for limit in basic_limits(SHIP, plain)]
    assert "air draft" not in names
    assert "water over the sill" not in names
    there = facility_fit(SHIP, replace(plain, has_sill=True, is_bridged=True))
    assert [limit.name for limit in there.unknown] == ["water over the sill", "air draft"]


def test_clearances_of_a_new_dock():
    """UFC 4-213-10, par. 3-2.1: 0.6 m over the blocks, 1.5 and 4.6 m at the ends, 3.0 m each side, least of each."""
    new = Clearances(0.6, 0.6, 1.5, 4.6, 3.0, 0.3, Citation("UFC 4-213-10", "par. 3-2.1; air assumed"))
    limits = {limit.name: limit for limit in basic_limits(SHIP, DOCK, new)}
    assert limits["length"].demand == pytest.approx(51.8 + 6.1)
    assert limits["beam"].demand == pytest.approx(9.4 + 6.0)
    assert limits["water over the blocks"].demand == pytest.approx(3.9)
    assert facility_fit(SHIP, DOCK, new).governs.name == "beam"
    assert IN_SERVICE.source.standing == "common practice, no source"


@given(st.floats(0.0, 3.0), st.floats(0.0, 3.0))
def test_more_clearance_never_helps(a, b):
    low, high = sorted((a, b))
    one, other = (basic_limits(SHIP, DOCK, replace(IN_SERVICE, side=s, blocks=s, head=s)) for s in (low, high))
    assert all(x.margin >= y.margin for x, y in zip(one, other, strict=True))


def test_cradle_takes_part():
    car = Car(length=6.0, gap=0.4, capacity=150e3, line_limit=20e3, available=6, coupled_limit=6)
    fit = judge(arrange(600e3, 22.5, 1.0, 42.6, car), car, 0.6)
    ship = {name: getattr(SHIP, name) for name in ("length", "beam", "weight")}
    found = METHOD.kernel(ship=ship, berth={}, cradle=fit.limits)
    assert found == METHOD.kernel(ship=ship, berth={}, cradle=[limit.as_input() for limit in fit.limits])
    assert fit.met is False
    assert found.met is False
    assert found.governs.name.startswith("cradle: ")


def test_no_limits_are_no_verdict():
    with pytest.raises(OutOfRange, match="no limits"):
        verdict([])
    with pytest.raises(OutOfRange, match="more than nothing"):
        basic_limits(replace(SHIP, beam=0.0), DOCK)
    with pytest.raises(OutOfRange, match="clearance"):
        replace(IN_SERVICE, air=-0.1)


def test_tightest_of_nothing_known():
    assert verdict([Limit("lift", "mass", 1.0, None)]).tightest is None


def test_water_and_least_tide():
    assert water_over_blocks(3.9, 1.6, 1.2) == pytest.approx(4.3)
    assert water_over_sill(3.9, 1.2) == pytest.approx(5.1)
    with pytest.raises(OutOfRange, match="blocks"):
        water_over_blocks(1.0, 1.0, -0.1)


def test_deepest_point_is_the_heel_of_the_rudder_or_a_bilge_keel():
    points = [(1.0, 0.0, -0.18), (40.0, 0.0, -0.18), (24.0, 3.5, 0.1)]
    assert deepest(3.4, 2.9, 48.0, points) == pytest.approx(3.4 - 0.5 / 48 + 0.18)
    heeled = deepest(3.0, 3.0, 48.0, points, radians(-6.0))
    assert heeled == pytest.approx(3.0 - 0.1 + 3.5 * tan(radians(6.0)))
    with pytest.raises(OutOfRange, match="points"):
        deepest(3.0, 3.0, 48.0, [])


@given(st.floats(2.0, 6.0))
def test_least_tide_leaves_just_the_clearance(tide):
    given_ = {
        "draft_aft": 3.4,
        "draft_forward": 2.9,
        "length": 48.0,
        "points": [{"x": 1.0, "z": -0.18}],
        "floor_below_datum": 1.6,
        "block_height": 1.2,
        "sill_below_datum": 0.3,
    }
    found = WATER.run(tide=tide, **given_)
    again = WATER.run(tide=found["least_tide"], **given_)
    assert again["margin"] == pytest.approx(0.0, abs=1e-9)
    assert found["over_sill"] < found["over_blocks"]


def test_method_takes_other_clearances():
    names = ("blocks", "sill", "head", "entrance", "side", "air")
    ship = {"length": 51.8, "beam": 9.4, "weight": 600e3}
    wide = METHOD.run(ship=ship, berth={"beam": 14.6}, clearances=dict.fromkeys(names, 3.0) | {"source": "the yard"})
    assert (wide["result"], wide["deciding"]) == ("fail", "beam")
    usual = METHOD.run(ship=ship, berth={"beam": 14.6})
    assert usual["result"] == "not known"
