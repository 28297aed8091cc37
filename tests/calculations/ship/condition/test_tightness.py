from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.tightness import boundary_test, opened_boundaries
from tenderwright.calculations.steps.again import different
from tests.replacing import replace

from .ship import marram


def test_riveted_tanks_are_tested_by_the_head_agreed_and_openings_by_hose() -> None:
    """1.0 m of fresh water is 9.807 kPa; the hose has 2.0 bar at the nozzle."""
    _, record, calculated = marram()
    assert record.values["tightness.oil-port.test"].si == "head"
    assert record.values["tightness.oil-port.pressure"].si == pytest.approx(9806.65)
    assert record.values["tightness.sea-chest-main.test"].si == "hose"
    assert record.values["tightness.sea-chest-main.pressure"].si == pytest.approx(2.0e5)
    opened, tests = calculated.found(opened_boundaries), calculated.found(boundary_test)
    assert opened is not None
    assert tests is not None
    assert [tests[key].sign_off for key, one in opened.items() if one.kind == "tank"].count(True) > 1
    assert all(tests[key].sign_off for key, one in opened.items() if one.kind == "tank")


def test_where_no_hose_can_play_it_is_looked_at() -> None:
    package, _, _ = marram()
    again = tuple(replace(item, withdrawn=False) if item.item == 550 else item for item in package.items)
    record = calculate(replace(package, items=again)).record
    assert record.values["tightness.echo-sounder.test"].si == "dye penetrant or ultrasonic"
    assert "tightness.echo-sounder.pressure" not in record.values


def test_every_boundary_names_the_items_that_work_on_it() -> None:
    _, _, calculated = marram()
    opened = calculated.found(opened_boundaries)
    assert opened is not None
    named = {one.name: tuple(item.number for item in one.items) for one in opened.values()}
    assert {"310", "335"} <= set(named["oil-port"])
    assert named["stern-tube"] == ("610", "620")
    assert "bilge-holding" not in named


def test_the_hose_runs_along_the_joints_of_renewed_plate() -> None:
    _, record, _ = marram()
    joints = record.values["shell.renewal.joint"].si + record.values["shell.contingent.joint"].si
    assert record.values["tightness.hose"].si == pytest.approx(joints)


def test_welded_structure_takes_the_published_head() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    assert package.condition.tightness is not None
    welded = replace(package.condition.tightness, structure="welded", tank_head=None)
    record = calculate(replace(package, condition=replace(package.condition, tightness=welded))).record
    assert record.values["tightness.oil-port.head"].si == pytest.approx(2.4)


def test_every_figure_comes_out_again() -> None:
    _, record, _ = marram()
    assert [value.name for value, _ in different(record) if value.name.startswith("tightness.")] == []


def test_without_defaults_every_boundary_says_what_it_needs() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    for condition in (None, replace(package.condition, tightness=None)):
        record = calculate(replace(package, condition=condition)).record
        assert record.missing["tightness.oil-port.test"] == "it needs `tightness` in vessel/condition.yaml"
        assert "tightness.sea-chest-main.test" in record.missing


def test_a_tank_and_an_opening_of_one_name_are_both_tested() -> None:
    package, _, _ = marram()
    opening = next(one for one in package.openings if one.opening == "sea-chest-main")
    tanks = tuple(replace(one, tank="sea-chest-main") if one.tank == "oil-port" else one for one in package.tanks)
    items = tuple(
        replace(
            item,
            where=replace(
                item.where,
                boundary_of=tuple(
                    replace(ref, name="sea-chest-main") if ref.name == "oil-port" else ref
                    for ref in item.where.boundary_of
                ),
            ),
        )
        for item in package.items
    )
    record = calculate(replace(package, tanks=tanks, items=items)).record
    assert record.values["tightness.sea-chest-main.test"].si == "head"
    assert record.values[f"tightness.opening-{opening.opening}.test"].si == "hose"
