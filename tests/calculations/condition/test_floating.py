from __future__ import annotations

from math import atan, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.condition.floating import condition_floating, floating_position, outputs_of
from tenderwright.calculations.condition.loading import TankLoad, Weight, liquids, summed
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tanks.polyhedron import box
from tenderwright.calculations.tanks.sounding import Tank
from tests.calculations.condition.ships import FORM, FUEL_PORT, FUEL_STARBOARD, TANKS, WEIGHTS
from tests.calculations.hydrostatics.hulls import barge


def test_derrett_free_surface_example():
    """Derrett, Ship Stability for Masters and Mates, ch. 20 Example 1: W 8153.75 t, KM 8, KG 7.5; a full tank
    15 x 10 x 2 m of sea water pumped to half; printed GM 0.225 m (from memory), computed 0.2245 m."""
    tank = Tank(box((50, 65), (-5, 5), (0, 2)))
    full = TankLoad("double bottom", tank, 1025.0, 307.5e3)
    rest = 8153.75e3 - full.mass
    ship = Weight("ship", rest, 57.5, 0.0, (8153.75e3 * 7.5 - full.mass * 1.0) / rest)
    before = summed([ship], [full], liquids([full]))
    assert (before.mass, before.vcg, before.free_surface_moment) == pytest.approx((8153.75e3, 7.5, 0.0))
    half = replace(full, mass=full.mass / 2)
    after = summed([ship], [half], liquids([half]))
    assert after.mass == pytest.approx(8000e3)
    assert after.vcg == pytest.approx(7.6153, abs=5e-5)
    assert 8.0 - after.vcg - after.free_surface_moment / after.mass == pytest.approx(0.22453, abs=5e-6)


def test_floats_in_equilibrium():
    found = floating_position(FORM, WEIGHTS, TANKS, 1025.0)
    h, loading = found.hydrostatics, found.loading
    assert h.displacement == pytest.approx(loading.mass, rel=1e-9)
    assert loading.lcg - h.lcb == pytest.approx(h.trim / 40 * (loading.vcg - h.kb), abs=1e-7)
    assert found.gm_fluid < found.gm_solid
    assert found.heel == pytest.approx(0.0, abs=1e-9)


def test_liquid_is_read_at_the_trim():
    found = floating_position(FORM, WEIGHTS, TANKS, 1025.0)
    again = liquids(TANKS, found.hydrostatics.trim / 40)
    level = liquids(TANKS)
    for one, other in zip(found.liquids, again, strict=True):
        assert one.centroid == pytest.approx(other.centroid, abs=1e-6)
    assert abs(found.liquids[2].centroid[0] - level[2].centroid[0]) > 1e-3


def test_tank_and_equal_weight_float_alike():
    """Derived: a full tank is a fixed weight at its centroid."""
    full = (
        replace(FUEL_PORT, mass=FUEL_PORT.tank.capacity * 880),
        replace(FUEL_STARBOARD, mass=FUEL_STARBOARD.tank.capacity * 880),
    )
    as_weights = [Weight(t.name, t.mass, *b.centroid) for t, b in zip(full, liquids(full), strict=True)]
    one, other = (
        floating_position(FORM, WEIGHTS, full, 1025.0),
        floating_position(FORM, [*WEIGHTS, *as_weights], [], 1025.0),
    )
    assert one.hydrostatics.draft == pytest.approx(other.hydrostatics.draft, rel=1e-9)
    assert one.hydrostatics.trim == pytest.approx(other.hydrostatics.trim, abs=1e-8)
    assert one.gm_fluid == pytest.approx(other.gm_solid, rel=1e-9)


@given(st.floats(-0.05, 0.05))
def test_weight_to_port_lists_her_to_port(offset):
    """Derrett, Ship Stability for Masters and Mates: tan(list) = w d/(W GM)."""
    weights = [replace(WEIGHTS[0], y=offset), *WEIGHTS[1:]]
    found = floating_position(FORM, weights, TANKS, 1025.0)
    assert found.heel is not None
    assert tan(found.heel) == pytest.approx(-offset * 430e3 / (found.loading.mass * found.gm_fluid), abs=1e-9)


def test_drafts_at_marks_lie_on_the_waterline():
    found = floating_position(FORM, WEIGHTS, TANKS, 1025.0)
    h = found.hydrostatics
    assert found.draft_at_marks(0.0) == pytest.approx(h.draft_aft)
    assert found.draft_at_marks(40.0, -0.3) == pytest.approx(h.draft_forward + 0.3)
    assert h.draft_at_lcf == pytest.approx(found.waterline_at(h.lcf))


def test_barge_by_hand():
    """Derived: 640 t on a box 40 x 8 m in fresh water float at 2 m; KM = 1 + 64/24."""
    found = floating_position(barge(), [Weight("barge", 640e3, 20.0, 0.0, 2.5)], [], 1000.0)
    assert found.hydrostatics.draft == pytest.approx(2.0)
    assert found.gm_solid == pytest.approx(1 + 64 / 24 - 2.5)


def test_shifting_weights_agrees_with_mctc():
    """Derived: change of trim = w d/MCTC for a small shift."""
    base = floating_position(FORM, WEIGHTS, [], 1025.0)
    moved = floating_position(FORM, [WEIGHTS[0], replace(WEIGHTS[1], x=24.0)], [], 1025.0)
    mctc = base.hydrostatics.moment_to_change_trim(base.loading.vcg)
    assert moved.hydrostatics.trim - base.hydrostatics.trim == pytest.approx(8e3 * 3 / mctc, rel=0.02)


def test_large_list_is_refused():
    with pytest.raises(OutOfRange, match="list"):
        floating_position(FORM, [replace(WEIGHTS[0], y=0.3)], [], 1025.0)


def test_unstable_ship_has_no_list():
    found = floating_position(FORM, [replace(WEIGHTS[0], z=4.8)], [], 1025.0)
    assert found.gm_fluid < 0
    assert found.heel is None


def test_a_ship_that_would_not_float_upright_has_no_list():
    corners = [{"x": x, "half_breadths": [4.0, 4.0]} for x in (0.0, 20.0, 40.0)]
    offsets = {"length": 40.0, "waterlines": [0.0, 5.0], "stations": corners}
    high = [{"name": "all", "mass": 640e3, "x": 20.0, "z": 4.0}]
    found = outputs_of(condition_floating(high, offsets=offsets))
    assert found["gm_fluid"] < 0
    assert "list" not in found


@pytest.mark.parametrize(
    "load", [replace(FUEL_PORT, mass=1e9), replace(FUEL_PORT, mass=-1.0), replace(FUEL_PORT, density=0.0)]
)
def test_impossible_tanks_are_refused(load):
    with pytest.raises(OutOfRange, match="fuel port"):
        floating_position(FORM, WEIGHTS, [load], 1025.0)


def test_no_weight_is_refused():
    with pytest.raises(OutOfRange, match="more than nothing"):
        floating_position(FORM, [], [], 1025.0)


def test_hydrostatics_of_the_position_are_those_of_its_draft():
    h = floating_position(FORM, WEIGHTS, TANKS, 1025.0).hydrostatics
    assert hydrostatics(FORM, h.draft, h.trim).volume == pytest.approx(h.volume)


@pytest.mark.parametrize("side", [1.0, -1.0])
def test_the_deck_edge_is_held_against_the_water_at_the_list_found(side):
    """Derived: a box 40 by 8 by 4 m at a draft of 3.9 m has 0.1 m of freeboard, which a list of atan(0.1/4) takes."""
    form, weight = barge(depth=4.0), 1000.0 * 40 * 8 * 3.9
    kb, bm = 3.9 / 2, 8**2 / (12 * 3.9)
    gm = kb + bm - 1.0

    def listed(slope: float) -> float:
        ship = Weight("ship", weight, 20.0, side * gm * slope, 1.0)
        return floating_position(form, [ship], [], 1000.0).heel

    assert listed(0.09 / 4) == pytest.approx(-side * atan(0.09 / 4))
    with pytest.raises(OutOfRange, match=r"deck edge is 0\.01 m under water"):
        listed(0.11 / 4)
