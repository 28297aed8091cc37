"""What a yard filled into the tables of the tender in dock: checked, printed, and kept in the history."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.documents.docking_report import not_recorded
from tenderwright.documents.history_entry import history_entry
from tenderwright.pipeline import compile_package, read
from tenderwright.writing.yaml_file import yaml_text
from tests.fixtures.wider_format import wider_package

from .conftest import SMALL, Tendered, compiled
from .test_report import report, words_of

FILLED = """tables:
  - { item: "510", table: valves, row: suction-fire, cells: { Wear of the spindle: 0.3 mm } }
  - { item: "510", table: pumps, row: "2", cells: { Found: seized } }
"""


@pytest.fixture(scope="module")
def tendered(tmp_path_factory: pytest.TempPathFactory) -> Tendered:
    return compiled(wider_package(tmp_path_factory.mktemp("tables") / "p"))


def _file(folder: Path, old: str = "", new: str = "") -> Path:
    assert old in FILLED
    file = folder / "findings.yaml"
    file.write_text(SMALL.read_text("utf-8") + FILLED.replace(old, new, 1), "utf-8")
    return file


def test_rows_go_into_the_report_and_the_history_in_words(tendered: Tendered, tmp_path: Path) -> None:
    file = _file(tmp_path)
    found = tendered.check(file)
    assert found.notices == ()
    assert found.findings is not None
    assert found.source is not None
    printed = words_of(report(tendered, file, confidential=False), "fittings")
    assert "Wear of the spindle\nFire pump suction\n0.3 mm" in printed
    entry = history_entry(found.findings, found.source.data, tendered.compiled.package)
    assert entry["tables"] == [
        {"table": "Sea valves", "row": "Fire pump suction", "cells": {"Wear of the spindle": "0.3 mm"}},
        {"table": "Pumps beside them", "row": "Bilge pump", "cells": {"Found": "seized"}},
    ]
    (tendered.root / "history" / "docking-2028.yaml").write_text(yaml_text(entry), "utf-8")
    again = compile_package(read(tendered.root))
    assert [one for one in again.notices if one.severity == "error"] == []
    assert dict(again.package.history[0].tables[0].cells) == {"Wear of the spindle": "0.3 mm"}


def test_rows_that_nobody_filled_are_told(tendered: Tendered, tmp_path: Path) -> None:
    findings = tendered.check(_file(tmp_path)).findings
    assert findings is not None
    missing = not_recorded(findings, tendered.compiled.package, ())
    assert "tables not filled: 510.valves.sea-chest, 510.valves.suction-bilge, 510.pumps.fire" in missing


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("table: valves", "table: valve", "dead-reference"),
        ("row: suction-fire", "row: suction", "dead-reference"),
        ("Wear of the spindle", "Bore", "dead-reference"),
        ('item: "510"', 'item: "511"', "dead-reference"),
        ("0.3 mm", "0.3 kg", "wrong-dimension"),
        ("0.3 mm", "some", "bad-quantity"),
        (
            'table: pumps, row: "2", cells: { Found',
            "table: valves, row: suction-fire, cells: { Found",
            "duplicate-name",
        ),
    ],
)
def test_what_was_not_tendered_is_told(tendered: Tendered, tmp_path: Path, old: str, new: str, code: str) -> None:
    assert code in [one.code for one in tendered.check(_file(tmp_path, old, new)).notices]
