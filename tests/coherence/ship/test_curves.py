"""The curves of form: gross mistakes are told at their figure, and a sound table is left alone."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from msgspec.structs import replace as with_changes

from tenderwright.calculations.steps.registry import steps
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.checks.coherence.ship.curves import check
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.curves import Centres, CurvesOfForm
from tenderwright.notices import Notice
from tests.calculations.ship.marram import package
from tests.calculations.ship.on_curves import american, measured, metric, without_tanks
from tests.replacing import replace


def told(curves: CurvesOfForm, **changes: Any) -> list[Notice]:
    package = without_tanks(**{"offsets": None, **changes}, curves=curves)
    calculated = Calculated(package, [with_changes(step, lazy=True) for step in steps()])
    return list(check(Ship(package, None, calculated)))


def with_row(curves: CurvesOfForm, k: int, **changes: Any) -> CurvesOfForm:
    rows = list(curves.rows)
    rows[k] = replace(rows[k], **changes)
    return replace(curves, rows=tuple(rows))


def each_row(curves: CurvesOfForm, change: Callable[[Any], dict[str, Any]]) -> CurvesOfForm:
    return replace(curves, rows=tuple(replace(row, **change(row)) for row in curves.rows))


@pytest.mark.parametrize("table", [metric, american])
def test_a_sound_table_is_left_alone_with_offsets_and_without(table: Callable[[], CurvesOfForm]) -> None:
    assert told(table()) == []
    assert told(table(), offsets=package().offsets) == []


@pytest.mark.parametrize(
    ("name", "text", "dimension"),
    [
        ("displacement", "580.5 t", "mass"),
        ("lcb", "22.36 m", "length"),
        ("km", "4.51 m", "length"),
        ("immersion", "3.212 t/cm", "line_load"),
        ("moment", "6.11 t*m/cm", "mass"),
        ("kb", "1.45 m", "length"),
    ],
)
def test_a_slip_in_one_row_is_told_there_alone(name: str, text: str, dimension: str) -> None:
    table = replace(
        metric(),
        rows=tuple(
            replace(row, km=measured(f"{row.kb.si + row.bm.si:.2f} m", "length"), bm=None) for row in metric().rows
        ),
    )
    slip = measured(text, dimension)
    (notice,) = told(with_row(table, 6, **{name: slip}))
    assert notice.code == "curves-disagree"
    assert text in notice.message
    assert "at a draft of 2.60 m" in notice.message
    assert notice.hints


def _as(name: str, unit: str, dimension: str, factor: float) -> Callable[[Any], dict[str, Any]]:
    def change(row: Any) -> dict[str, Any]:
        return {name: measured(f"{getattr(row, name).si * factor:.6g} {unit}", dimension)}

    return change


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (_as("draft", "m", "length", 0.3048), "she draws 3.2 m as a rule, and her curves of form run from"),
        (_as("displacement", "kg", "mass", 0.1), "displacement of the curves of form is"),
        (_as("immersion", "kg/m", "line_load", 0.4), "immersion of the curves of form is"),
        (_as("immersion", "kg/m", "line_load", 0.9), "and the displacement rises by"),
        (_as("moment", "kg", "mass", 3.28084), "and the waterplane gives from"),
        (_as("bm", "m", "length", 0.3048), "and the waterplane gives from"),
        (_as("kb", "m", "length", 1.6), "a centre of buoyancy lies from 0.45 to 0.75 of the draft up"),
    ],
)
def test_a_column_in_another_unit_is_told_once(change: Callable[[Any], dict[str, Any]], words: str) -> None:
    notices = told(each_row(metric(), change))
    assert len(notices) == 1
    assert words in notices[0].message


def test_centres_measured_from_elsewhere_or_the_other_way() -> None:
    (notice, other) = told(replace(metric(), centres=Centres(from_="amidships", plus="forward")))
    assert "look at `from` and `plus` of `centres`" in notice.hints[0]
    assert notice.message.startswith("LCB")
    assert other.message.startswith("LCF")
    turned = each_row(metric(), lambda row: {"lcf": measured(f"{48 - row.lcf.si + 3:.2f} m", "length")})
    assert any("LCB moves as if it lay" in one.message for one in told(turned))


def test_a_table_of_another_ship_is_held_against_her_offsets() -> None:
    def lighter(row: Any) -> dict[str, Any]:
        return {
            "displacement": measured(f"{row.displacement.si * 0.9} kg", "mass"),
            "immersion": measured(f"{row.immersion.si * 0.9} kg/m", "line_load"),
            "moment": measured(f"{row.moment.si * 0.9} kg", "mass"),
        }

    (notice,) = told(each_row(metric(), lighter), offsets=package().offsets)
    assert "her offsets give" in notice.message
