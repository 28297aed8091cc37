"""Every command of README runs as printed, in its order, and leaves the files that README names."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.readme.run import README, Ran, fences, run_readme

ROW = re.compile(r"^\| (`(?:yard|owner)/[^|]*) \|", re.MULTILINE)


@pytest.fixture(scope="module")
def ran(tmp_path_factory: pytest.TempPathFactory) -> Ran:
    return run_readme(tmp_path_factory.mktemp("readme"), lambda command: True)


def named() -> list[str]:
    """List the files and folders that the table of outputs names; `.html` alone is the one before with that ending."""
    found: list[str] = []
    for cell in ROW.findall(README.read_text("utf-8")):
        for name in re.findall(r"`([^`]+)`", cell):
            found.append(str(Path(found[-1]).with_suffix(name)) if name.startswith(".") else name)
    return found


def test_every_command_succeeds(ran: Ran) -> None:
    assert ran.code == 0, list(ran.said.items())[-1]
    assert {fence.line for fence in fences() if fence.kind == "sh"} <= set(ran.said)


def test_the_files_that_it_names_are_there(ran: Ran) -> None:
    assert len(named()) > 8
    assert [name for name in named() if not (ran.copy / "build" / name).exists()] == []


def test_what_was_issued_is_verified(ran: Ran) -> None:
    assert any("The same, byte for byte: `HPT-2027-01-yard.zip` is what commit" in said for said in ran.said.values())
    assert any("records addendum 2 of HPT-2027-01 at that commit" in said for said in ran.said.values())


def test_her_life_leaves_its_papers(ran: Ran) -> None:
    made = {path.name for path in (ran.copy / "build" / "life" / "marram" / "build").iterdir()}
    assert {
        "issued",
        "diff",
        "diff-owner",
        "addendum-1",
        "addendum-2",
        "docking-report",
        "statement-2027-05-12",
    } <= made
