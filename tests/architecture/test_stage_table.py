"""The table of stages in DEVELOPERS.md is that of the tree."""

from __future__ import annotations

import re

import pytest

from .tree import COMPILER, REPOSITORY, STAGES

HEADER = ["stage", "folder", "takes", "gives", "may"]


def _cells(line: str) -> list[str]:
    return [cell.strip() for cell in line.strip().strip("|").split("|")]


@pytest.fixture(scope="module")
def rows() -> list[list[str]]:
    page = REPOSITORY / "DEVELOPERS.md"
    assert page.is_file(), "DEVELOPERS.md is missing; it holds the table of stages"
    lines = page.read_text("utf-8").splitlines()
    start = next((n for n, line in enumerate(lines) if line.startswith("|") and _cells(line) == HEADER), None)
    assert start is not None, f"DEVELOPERS.md has no table whose header is | {' | '.join(HEADER)} |"
    table = []
    for line in lines[start + 2 :]:
        if not line.startswith("|"):
            break
        table.append(_cells(line))
    return table


def test_every_row_is_whole(rows: list[list[str]]) -> None:
    for row in rows:
        assert len(row) == len(HEADER), row
        assert all(row), row


def test_the_rows_are_the_stages_in_order(rows: list[list[str]]) -> None:
    folders = [re.fullmatch(r"`(\w+)/`", row[1]) for row in rows]
    assert all(folders), [row[1] for row in rows]
    assert [match[1] for match in folders if match] == list(STAGES)


def test_every_stage_has_its_folder() -> None:
    for stage in STAGES:
        assert (COMPILER / stage / "__init__.py").is_file(), stage
