"""A tank from its capacity plan: exact for a box, on the safe side in free surface, and honest about the rest."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.plain import plain
from tenderwright.calculations.tanks.capacity_plan import place_uncertainty, tank_of_plan
from tenderwright.calculations.tanks.contents import tank_contents
from tenderwright.calculations.tanks.polyhedron import box, lofted
from tenderwright.calculations.tanks.sounding import Tank
from tenderwright.calculations.tanks.table_volume import table_volume
from tenderwright.calculations.tanks.tank_input import tank_from_input

size = st.floats(0.5, 12)
share = st.floats(0.01, 0.99)


@given(size, size, size, share, st.floats(-0.03, 0.03), st.booleans())
def test_the_plan_of_a_box_is_the_box(
    long: float, broad: float, deep: float, full: float, slope: float, by_surface: bool
) -> None:
    """Derived: a box is given by its capacity, centre and length, with either its bottom or its free surface."""
    x, y, bottom = 20.0, 1.5, 0.4
    exact = Tank(box((x - long / 2, x + long / 2), (y - broad / 2, y + broad / 2), (bottom, bottom + deep)))
    known = {"free_surface": long * broad**3 / 12} if by_surface else {"bottom": bottom}
    plan = tank_of_plan(
        exact.capacity, x, y, bottom + deep / 2, x_aft=x - long / 2, x_forward=x + long / 2, breadth=broad, **known
    )
    wanted, found = (one.contents(full * exact.capacity, slope) for one in (exact, plan))
    assert plan.capacity == pytest.approx(exact.capacity)
    assert found.centroid == pytest.approx(wanted.centroid, rel=1e-6)
    assert found.surface_longitudinal == pytest.approx(wanted.surface_longitudinal, rel=1e-6)
    assert plan.surface == pytest.approx(long * broad**3 / 12)


@given(share, st.floats(-0.03, 0.03))
def test_the_stated_free_surface_holds_while_the_tank_is_slack(full: float, slope: float) -> None:
    plan = tank_of_plan(46.2, 16.1, 2.1, 0.62, 12.0, 20.0, 0.0, free_surface=38.0)
    assert plan.contents(full * 46.2, slope).surface_transverse == 38.0
    assert plan.contents(0.0, slope).surface_transverse == plan.contents(46.2, slope).surface_transverse == 0.0


@given(share)
def test_a_part_lies_under_the_full_centre_and_rises_with_it(full: float) -> None:
    plan = tank_of_plan(46.2, 16.1, 2.1, 0.62, 12.0, 20.0, bottom=0.1, free_surface=38.0)
    assert plan.contents(full * 46.2).centroid == pytest.approx((16.1, 2.1, 0.1 + full * 0.52))


def test_what_no_plan_says_is_not_guessed() -> None:
    """Pressed full the free surface is not needed; slack, it is."""
    plan = tank_of_plan(10.0, 16.0, 0.0, 3.0)
    assert plan.contents(10.0).centroid == pytest.approx((16.0, 0.0, 3.0))
    with pytest.raises(OutOfRange, match="neither its free surface nor its extent is known"):
        plan.contents(5.0)


def test_without_a_free_surface_the_extent_bounds_it() -> None:
    assert tank_of_plan(10.0, 16.0, 0.0, 3.0, 14.0, 17.0, breadth=4.0).surface == pytest.approx(3.0 * 4.0**3 / 12)


def test_no_tank_is_deeper_than_to_the_keel() -> None:
    """A centreline bulkhead halves the free surface and would make the box of it too deep."""
    assert tank_of_plan(60.0, 16.0, 0.0, 0.5, 12.0, 20.0, free_surface=2.0).body.bottom == pytest.approx(0.0)


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"capacity": 0.0}, "needs a capacity"),
        ({"x_forward": None}, "both its ends"),
        ({"x": 20.5}, "not between its ends"),
        ({"bottom": 0.7}, "not above its bottom"),
        ({"bottom": None, "z": -0.2}, "below the baseline"),
    ],
)
def test_plans_that_are_no_tank(changed: dict[str, float | None], words: str) -> None:
    plan = {"capacity": 46.2, "x": 16.1, "y": 2.1, "z": 0.62, "x_aft": 12.0, "x_forward": 20.0, "bottom": 0.0}
    with pytest.raises(OutOfRange, match=words):
        tank_of_plan(**(plan | changed))  # type: ignore[arg-type]


@given(st.floats(0.02, 1.0), st.sampled_from([0.0, 1.0]))
def test_a_wedge_lies_within_the_uncertainty_of_its_plan(full: float, peak: float) -> None:
    """A vee that grows forward, as a fore peak does: twice the uncertainty holds its contents (derived)."""
    sections = [
        [(-0.02, 0.0), (0.02, 0.0), (0.5 + peak, 3.0), (-0.5 - peak, 3.0)],
        [(-0.02, 0), (0.02, 0), (2, 3), (-2, 3)],
    ]
    exact = Tank(lofted([40.0, 44.0], sections))
    whole = exact.contents(exact.capacity).centroid
    plan = tank_of_plan(exact.capacity, *whole, 40.0, 44.0, 0.0, free_surface=10.0)
    wanted, found = (one.contents(full * exact.capacity).centroid for one in (exact, plan))
    known = place_uncertainty(plan, full * exact.capacity)
    assert all(abs(w - f) <= 2 * u + 1e-6 for w, f, u in zip(wanted, found, known, strict=True))


def test_a_bottom_that_is_not_stated_leaves_more_in_doubt() -> None:
    stated, unstated = (tank_of_plan(24.0, 42.0, 0.0, 1.5, 40.0, 44.0, b, free_surface=2.7) for b in (0.0, None))
    assert stated.body.bottom == pytest.approx(unstated.body.bottom, abs=0.01)
    assert place_uncertainty(unstated, 6.0)[2] > 2 * place_uncertainty(stated, 6.0)[2]


def test_a_plan_is_built_anew_from_what_is_printed() -> None:
    for known in ({"free_surface": 12.0}, {"breadth": 4.0}):
        plan = tank_of_plan(46.2, 16.1, 2.1, 0.62, 12.0, 20.0, **known)
        again = tank_from_input(plain(plan.body))
        assert again.contents(20.0, 0.01) == plan.contents(20.0, 0.01)


def test_contents_by_volume_by_mass_and_by_how_full() -> None:
    plan = tank_of_plan(40.0, 16.1, 2.1, 0.62, 12.0, 20.0, 0.0, free_surface=38.0)
    ways = ({"volume": 10.0}, {"mass": 8800.0}, {"full": 0.25})
    found = [tank_contents(880.0, tank=plan.body, **one) for one in ways]
    assert found[0].mass == pytest.approx(8800.0)
    for one in found[1:]:
        assert one.liquid.centroid == pytest.approx(found[0].liquid.centroid)
    with pytest.raises(OutOfRange, match="give one of"):
        tank_contents(880.0, volume=1.0, full=0.5, tank=plan.body)
    with pytest.raises(OutOfRange, match="neither bounds nor a `plan`"):
        tank_contents(880.0, full=0.5)


@given(st.floats(0.0, 2.0))
def test_a_table_by_ullage_is_one_by_sounding(reading: float) -> None:
    soundings, volumes = [0.0, 0.5, 2.0], [0.0, 3.0, 15.0]
    ullages = [2.4 - one for one in reversed(soundings)]
    by_ullage = table_volume(volumes[::-1], ullage=2.4 - reading, ullages=ullages)
    assert by_ullage["volume"] == pytest.approx(table_volume(volumes, reading, soundings)["volume"])


@pytest.mark.parametrize(
    "wrong",
    [
        {"sounding": 1.0, "soundings": [0, 2], "ullage": 1.0, "ullages": [0, 2]},
        {},
        {"ullage": 1.0, "ullages": [0.0, 2.0]},
        {"ullage": 2.5, "ullages": [2.0, 1.0]},
    ],
)
def test_tables_by_ullage_are_checked(wrong: dict[str, object]) -> None:
    with pytest.raises(OutOfRange):
        table_volume([1.0, 2.0], **wrong)  # type: ignore[arg-type]
