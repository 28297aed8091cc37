from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.pitting import pits_judged
from tenderwright.calculations.ship.regimes import old_strakes, unwelded_strakes
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.package import Package
from tenderwright.model.shell_condition import LaminationTest, MaterialLimit, PlateAnalysis
from tenderwright.notices import Place
from tenderwright.quantities.quantity import parse_quantity
from tests.replacing import replace

from .ship import marram

HERE = Place("vessel/condition.yaml")
ANALYSIS = {
    "carbon": "0.09 %", "manganese": "0.45 %",
    "sulphur": "0.03 %", "phosphorus": "0.03 %", "nitrogen": "0.005 %",
}  # fmt: skip


def share(text: str) -> Any:
    return parse_quantity(text, "fraction")


def of_iron(**condition: Any) -> tuple[Package, Calculated]:
    """Give the ship with strake B of wrought iron."""
    package, _, _ = marram()
    strakes = tuple(replace(one, material="wrought iron") if one.strake == "B" else one for one in package.strakes)
    assert package.condition is not None
    changed = replace(package, strakes=strakes, condition=replace(package.condition, **condition))
    return changed, calculate(changed)


def strake_b() -> tuple[Any, ...]:
    package, _, _ = marram()
    assert package.condition is not None
    return tuple(one.strake for one in package.condition.pitted[:1])


def analysis(**changed: str) -> tuple[PlateAnalysis, ...]:
    shares = {name: share(text) for name, text in (ANALYSIS | changed).items()}
    return (PlateAnalysis(strakes=strake_b(), on=date(2026, 11, 3), source="laboratory", here=HERE, **shares),)


def test_a_ship_of_mild_steel_has_no_old_strakes() -> None:
    _, record, calculated = marram()
    assert calculated.found(old_strakes) == {}
    assert not any(name.startswith("shell.material.") for name in record.values)


def test_the_material_of_a_strake_picks_its_limit() -> None:
    """Plate of B may lose 20 % now in place of the 25 % of its zones; that of other strakes what it might before."""
    _, record, _ = marram()
    _, iron = of_iron()
    assert iron.record.values["shell.material.b.allowable"].si == pytest.approx(0.20)
    assert iron.record.values["shell.survey.beyond"].si > record.values["shell.survey.beyond"].si
    assert (
        iron.record.values["plate.f7-port.renewal-thickness"].si == record.values["plate.f7-port.renewal-thickness"].si
    )
    built = 0.0111
    assert iron.record.values["plate.b5-port.renewal-thickness"].si == pytest.approx(0.8 * built)
    own = (MaterialLimit(material="wrought iron", allowable=share("25 %"), source="her letter", here=HERE),)
    _, other = of_iron(materials=own)
    assert other.record.values["shell.survey.beyond"].si == record.values["shell.survey.beyond"].si


def test_no_weld_is_made_before_an_analysis_has_passed() -> None:
    _, none = of_iron()
    unwelded = none.found(unwelded_strakes)
    assert unwelded is not None
    assert list(unwelded.why) == ["B"]
    pits = [pit for one in (none.found(pits_judged) or {}).values() for pit in one.pits]
    assert not any(pit.treatment == "weld" for pit in pits)
    _, passed = of_iron(analyses=analysis())
    assert passed.found(unwelded_strakes) is not None
    assert passed.record.values["shell.analysis.b.joining"].si == "may be welded by a proved procedure"
    assert any(pit.treatment == "weld" for one in (passed.found(pits_judged) or {}).values() for pit in one.pits)


def test_iron_is_riveted_only_where_its_analysis_fails() -> None:
    _, failed = of_iron(analyses=analysis(phosphorus="0.21 %"))
    unwelded = failed.found(unwelded_strakes)
    assert unwelded is not None
    assert unwelded.why == {"B": "its analysis does not pass"}
    assert failed.record.values["shell.analysis.b.deciding"].si == "phosphorus"


def test_laminations_found_are_told_and_those_not_looked_for() -> None:
    _, untested = of_iron()
    assert untested.record.values["shell.lamination.b.state"].si == "not tested"
    test = LaminationTest(
        strakes=strake_b(), on=date(2025, 10, 8), readings=117, laminated=3, source="thickness report", here=HERE
    )
    _, tested = of_iron(laminations=(test,))
    assert tested.record.values["shell.lamination.b.share"].si == pytest.approx(0.025)
