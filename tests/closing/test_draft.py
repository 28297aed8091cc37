"""A draft of the findings: what the package knows stands there, and what it does not is `todo` and nothing else."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tenderwright.closing import compile_findings
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.writing.yaml_file import yaml_text
from tests.commands.run import Runner, package
from tests.pricing.in_dock.sandling import WEEK, write_docked

from .conftest import PACKAGE

DEFERRED = 'deferred:\n  - { work: "420", day: 2028-04-09, why: no dry days, by: Trustees, until: next docking }\n'
AT_REST = WEEK.replace(
    "measured:\n  - { line: 420.a, quantity: 47.5 m2 }\n", "measured:\n  - { line: 130.a, quantity: 46 h }\n"
)


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Runner:
    return Runner(capsys)


def _drafted(run: Runner, root: Path) -> dict[str, Any]:
    file = root.parent / "findings.yaml"
    ran = run("close", root, file, "--draft")
    assert ran.code == 0, ran.err
    source, notices = read_yaml("findings.yaml", file.read_text("utf-8"))
    assert notices == []
    assert isinstance(source.data, dict)
    return source.data


def test_the_account_is_that_of_the_papers_to_the_cent(run: Runner, tmp_path: Path) -> None:
    """46 h for 40 of 44: 6 x 44 more; the coating of 4500 is put off; 48 rivets at 100 are paid beside the contract."""
    data = _drafted(run, write_docked(tmp_path / "s", week_1=AT_REST + DEFERRED))
    prices = {one["line"]: one for one in data["prices"]}
    assert prices["130.a"] == {"line": "130.a", "quantity": "46 h", "contract": 1760, "changes": 264, "final": 2024}
    assert prices["320.a"] == {"line": "320.a", "quantity": "48 each", "contract": 0, "changes": 4800, "final": 4800}
    assert prices["420.a"] == {"line": "420.a", "contract": 4500, "changes": -4500, "final": 0}
    assert prices["160.a"]["quantity"] == "20 h"
    changes = {one["change"]: one for one in data["changes"]}
    assert changes["measured-130.a"]["amount"] == 264
    assert changes["left-out-420.a"]["cause"] == "work left out"
    assert "CO-03" not in changes, "it was not signed"
    assert {one["line"]: one["hours"] for one in data["hours_used"]} == {"160.a": "20 h"}
    assert sum(one["final"] for one in data["prices"]) == 36760 + 4800 + 1436 + 264 - 4500


def test_what_the_papers_tell_is_not_asked_again(run: Runner, tmp_path: Path) -> None:
    data = _drafted(run, write_docked(tmp_path / "s", week_1=AT_REST + DEFERRED))
    assert (data["yard"], data["bid"], data["currency"]) == ("Ostrey Slip Company", "ostrey", "EUR")
    days = ["2028-04-03", "2028-04-05", "2028-04-05", "todo", "todo"]
    assert data["dates"] == dict(zip(("arrived", "docked", "dry", "undocked", "departed"), days, strict=True))
    reports = {one["report"]: one for one in data["conditions_found"]}
    assert reports["CF-01"]["decision"] == "Accepted by Trustees"
    assert reports["CF-01"]["done"] == "rivets"
    assert reports["CF-02"]["decision"] == "todo"
    assert data["deferred"] == [
        {
            "what": "Underwater shell, spot blast and coat",
            "condition": "todo",
            "why": "no dry days",
            "by": "next docking",
            "item": "420",
        }
    ]
    assert [one["anode"] for one in data["anodes"]] == ["p1", "s1"]
    assert data["blocks"]["notes"] == "todo"


@pytest.mark.parametrize("name", ["award", "none", "Marram"])
def test_nothing_is_wanting_but_what_is_todo(run: Runner, tmp_path: Path, name: str) -> None:
    root = PACKAGE
    if name != "Marram":
        root = write_docked(tmp_path / "s") if name == "award" else package(tmp_path / "s")
    file = tmp_path / "findings.yaml"
    assert run("close", root, file, "--draft").code == 0
    files = read(root)
    compiled = compile_package(files)
    found = compile_findings(file, compiled, compile_owner(files, compiled))
    assert {notice.code for notice in found.notices} == {"still-todo"}


def test_once_completed_it_closes_the_docking(run: Runner, tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s", week_1=AT_REST + DEFERRED)
    data = _drafted(run, root)
    prices = data["prices"]
    sums = {key: sum(one[key] for one in prices) for key in ("contract", "changes", "final")}
    known = {
        "undocked": "2028-04-18", "departed": "2028-04-20", "drawn": "2028-04-06", "refitted": "2028-04-17",
        "aft": "2.1 m", "forward": "1.9 m", "sounding": "0.2 m", "liquid": "sea water", "at": "Fr 12",
        "fitted": "4 kg",
        "dock_type": "slipway", "length": "300 mm", "width": "1.0 m",
        "left": "40 %",
        "guarantee_until": "2029-04-20", "tight": True, "decided": "2028-04-09", "grade": "Sa 2", "place": "Ostrey",
        "area": "50 m2", "salts": "30 mg/m2", "profile": "60 um", "mean": "150 um", "least": "120 um", "most": "200 um",
        "readings": 12, "of": "this coat", "begun": "2028-04-10 09:00", "ended": "2028-04-10 15:00", **sums,
        "totals": sums,
    }  # fmt: skip
    lists = ("not_painted", "renewed", "rivets", "days_lost", "photographs", "batches")
    filled = _filled(data, known, (*lists, "readings_file", "quantity"))
    file = tmp_path / "done.yaml"
    file.write_text(yaml_text(filled), "utf-8")
    ran = run("close", root, file, "--out", tmp_path / "made")
    assert ran.code == 0, ran.err
    assert (root / "history" / "docking-2028.yaml").is_file()
    assert run("check", root).code == 0


def _filled(value: Any, known: dict[str, Any], left: tuple[str, ...], key: str = "") -> Any:
    """Write what is `todo` by its key, in words where no figure is known, and leave out some lists."""
    if isinstance(value, dict):
        kept = {k: one for k, one in value.items() if not (one == "todo" and k in left)}
        return {k: _filled(one, known, left, k) for k, one in kept.items()}
    if isinstance(value, list):
        return [_filled(one, known, left, key) for one in value]
    return known.get(key, "as she was") if value == "todo" else value


def test_readings_that_lie_with_the_surveys_are_not_asked_again(run: Runner, tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s")
    assert "readings_file" in _drafted(run, root)
    (root.parent / "findings.yaml").unlink()
    (root / "surveys").mkdir(exist_ok=True)
    head = "strake,frame,side,tank,member,kind,as_built_mm,measured_mm,date,instrument,stage"
    row = "A,20,port,,,plate,9.5,8.1,2028-04-06,ultrasonic,after wash"
    (root / "surveys" / "dock.csv").write_text(f"{head}\n{row}\n", "utf-8")
    file = tmp_path / "findings.yaml"
    ran = run("close", root, file, "--draft")
    assert "surveys/dock.csv holds the readings taken in dock, which are not asked again" in ran.out
    assert "readings_file" not in file.read_text("utf-8")


def test_no_file_is_written_over_and_none_into_the_package(run: Runner, tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s")
    there = tmp_path / "findings.yaml"
    there.write_text("mine", "utf-8")
    assert run("close", root, there, "--draft").code == 2
    assert there.read_text("utf-8") == "mine"
    assert run("close", root, root / "findings.yaml", "--draft").code == 2
    assert not (root / "findings.yaml").exists()


def test_a_mistake_in_the_papers_stops_it(run: Runner, tmp_path: Path) -> None:
    root = write_docked(
        tmp_path / "s",
        week_1=WEEK.replace(
            "line: 320.a\n    quantity: 48 each\n    cause", "line: 390.a\n    quantity: 48 each\n    cause"
        ),
    )
    ran = run("close", root, tmp_path / "findings.yaml", "--draft")
    assert ran.code == 1
    assert not (tmp_path / "findings.yaml").exists()
