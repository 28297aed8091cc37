from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tests.replacing import replace

from .ship import marram


def test_riveted_tanks_are_tested_by_the_head_agreed_and_openings_by_hose() -> None:
    """1.0 m of fresh water is 9.807 kPa; the hose has 2.0 bar at the nozzle."""
    _, record, results = marram()
    assert record.values["tightness.oil-port.test"].si == "head"
    assert record.values["tightness.oil-port.pressure"].si == pytest.approx(9806.65)
    assert record.values["tightness.sea-chest-main.test"].si == "hose"
    assert record.values["tightness.sea-chest-main.pressure"].si == pytest.approx(2.0e5)
    assert all(one.choice.sign_off for one in results.condition.tests if one.kind == "tank")


def test_where_no_hose_can_play_it_is_looked_at() -> None:
    package, _, _ = marram()
    again = tuple(replace(item, withdrawn=False) if item.item == 550 else item for item in package.items)
    record, _ = calculate(replace(package, items=again))
    assert record.values["tightness.echo-sounder.test"].si == "dye penetrant or ultrasonic"


def test_every_boundary_names_the_items_that_work_on_it() -> None:
    _, _, results = marram()
    named = {one.name: one.items for one in results.condition.tests}
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
    record, _ = calculate(replace(package, condition=replace(package.condition, tightness=welded)))
    assert record.values["tightness.oil-port.head"].si == pytest.approx(2.4)
