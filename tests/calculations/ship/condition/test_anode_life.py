from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.quantities.quantity import parse_quantity
from tests.replacing import replace

from .ship import marram, surveyed


def test_a_lot_wastes_in_step_with_time_from_the_day_it_was_fitted() -> None:
    """The six of 2018 had 29 % left after eight years on the mean: 8.8 % a year, so that 85 % lasts 9.7 years."""
    package, record, results = marram()
    lot = results.condition.anode_groups[1]
    left = [
        anode.left.si for anode in package.anodes if anode.anode in ("p1", "p2", "p3", "s1", "s2", "s3") and anode.left
    ]
    assert lot.mean_left == pytest.approx(sum(left) / 6)
    years = record.values["anodes.lot-2.whole-life"].si / (365.25 * 86400)
    assert years == pytest.approx(0.85 / ((1 - sum(left) / 6) / lot.years))
    assert lot.life.decision == "renew"


def test_the_current_is_that_of_areas_coating_and_density() -> None:
    package, record, _ = marram()
    assert package.condition is not None
    assert package.condition.anodes is not None
    shell, stern, screw = package.condition.anodes.surfaces
    expected = (
        record.values["zone.underwater.area"].si * 0.080 * (0.02 + 0.5 * 0.012 * 5)
        + record.values["zone.rudder-and-stern-frame.area"].si * 0.080 * (0.05 + 0.5 * 0.025 * 5)
        + 5.4 * 0.080
    )
    assert (shell.b, stern.b, screw.a) == (0.012, 0.025, None)
    assert record.values["anodes.current-mean"].si == pytest.approx(expected, rel=1e-9)


def test_the_number_is_the_mass_over_that_of_one_where_mass_governs() -> None:
    _, record, results = marram()
    plan = results.condition.anode_plan
    assert plan is not None
    mass = record.values["anodes.current-mean"].si * 5 * 365.25 * 24 / (780 * 0.85)
    assert record.values["anodes.mass-needed"].si == pytest.approx(mass)
    assert record.values["anodes.governs"].si == "mass"
    assert record.values["anodes.needed"].si == -(-mass // plan.each)
    assert plan.greatest_life == pytest.approx(5 * record.values["anodes.mass"].si / mass)


def test_where_more_are_needed_they_are_placed_clear_of_what_is_there() -> None:
    package, record, results = surveyed(*marram()[0].surveys, next_docking=parse_quantity("12 yr", "time"))
    plan = results.condition.anode_plan
    assert plan is not None
    assert plan.layout is not None
    assert record.values["anodes.needed"].si > len(package.anodes)
    for centre in plan.layout.centres:
        for anode in package.anodes:
            if abs(anode.height.si - 1.20) < 0.6 and anode.length:
                assert abs(centre - anode.at.x) >= 0.5 * anode.length.si + 0.2 + 0.3 - 1e-9


def test_without_their_sizes_it_is_told_and_without_a_duty_missing() -> None:
    package, _, _ = marram()
    record, _ = calculate(replace(package, anodes=tuple(replace(anode, length=None) for anode in package.anodes)))
    assert any("length, width and thickness" in notice.message for notice in record.notices)
    assert "anodes.needed" in record.failed
    record, _ = calculate(replace(package, condition=None))
    assert "anodes.needed" in record.missing
