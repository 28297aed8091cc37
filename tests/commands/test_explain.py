"""`explain` answers for prices and dates: every step to a price, and why an activity is on the critical path."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.cli import main
from tenderwright.starter.write import write_starter
from tests.planning.conftest import PROGRAMME


@pytest.fixture
def root(tmp_path: Path) -> Path:
    folder = tmp_path / "sandling"
    write_starter(folder)
    (folder / "owner" / "programme.yaml").write_text(PROGRAMME, "utf-8")
    rates = folder / "owner" / "rates.yaml"
    text = rates.read_text("utf-8").replace(
        "  210.a: { rate: 2900 }",
        "  210.a: { hours: 38 h, labour: shipwright, materials: 340, factors: [{ factor: 1.12, why: keel }] }",
    )
    rates.write_text(text + "labour: { shipwright: { rate: 62 } }\n", "utf-8")
    return folder


def told(capsys: pytest.CaptureFixture[str], *words: str | Path) -> list[str]:
    assert main(["explain", *map(str, words)]) == 0
    return [line.strip() for line in capsys.readouterr().out.splitlines()]


def test_a_price_is_told_step_by_step(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = told(capsys, root, "210")
    assert "38 h of a shipwright at 62 -> 2 356.00" in lines
    assert "+ 340 for materials -> 2 696.00" in lines
    assert "× 1.12, keel -> 3 019.52" in lines
    assert any(line.startswith("price 3 019.52 + ") and "shared services, by direct value" in line for line in lines)


def test_a_line_is_told_alone(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = told(capsys, root, "140.b")
    assert any(line.startswith("140.b") for line in lines)
    assert not any(line.startswith(("140.a", "price", "after", "referred")) for line in lines)


def test_why_it_is_on_the_critical_path(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = told(capsys, root, "320")
    (rivet,) = [line for line in lines if line.startswith("rivet")]
    assert rivet.endswith("critical, no float")
    assert "waits for clean: item 320 comes after item 140" in lines
    assert "arrival -> dock-slot -> dock -> clean -> rivet -> coat -> cure -> undock -> redelivery" in lines


def test_what_has_float_is_on_no_critical_path(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = told(capsys, root, "wash")
    assert lines[0].endswith("float 1.2 d")
    assert not any("critical" in line for line in lines)


def test_a_withdrawn_item_says_so(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    item = root / "items" / "420-underwater-shell-coat.yaml"
    item.write_text(item.read_text("utf-8").replace("item: 420", "item: 420\nwithdrawn: true", 1), "utf-8")
    lines = told(capsys, root, "420")
    assert "withdrawn: it is not priced, and its number stays taken" in lines
    assert not any(line.startswith("at ") for line in lines)


def test_what_there_is_not_suggests_what_there_is(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", str(root), "rivt"]) == 2
    assert "did you mean `rivet`?" in capsys.readouterr().err


def test_what_is_broken_is_told_where_it_would_be_explained(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    item = next((root / "items").glob("210-*.yaml"))
    item.write_text(item.read_text("utf-8").replace("phase: ", "phaes: ", 1), "utf-8")
    assert main(["explain", str(root), "210"]) == 1
    said = capsys.readouterr().err
    assert "error[unknown-key]: key `phaes` is not known here" in said
    assert said.endswith("1 mistake; `210` may rest on what is broken, and cannot be explained\n")
