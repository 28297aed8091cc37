from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from tenderwright.amending import Amended, Stated, amend, new_addenda
from tenderwright.pipeline import compile_package, read
from tenderwright.reading.git_state import GitState
from tests.pipeline.packages import edit, starter

BEFORE = GitState("issued", "1" * 40, 1_822_635_000)
AFTER = GitState("issued", "2" * 40, 1_825_000_000)

LISTED = "addenda:\n  - { number: 1, date: 2027-11-24, summary: Rivets and wash changed }\nowner:"

ITEM = """item: 430
title: Topside, wash
kind: option
phase: dry
option_until: docking - 2 d
scope: Wash the topside at 60 bar.
lines:
  - { line: a, text: Wash the topside, price: lump }
"""

QUESTION = """question: 1
asked: 2027-11-20
about: ["320"]
ask: Who supplies the rivets of <item:320>?
answer: The yard; <item:320> says how many.
answered: 2027-11-22
addendum: 1
"""


def stated(root: Path, state: GitState) -> Stated:
    """Compile a package that must be sound."""
    compiled = compile_package(read(root))
    assert [notice for notice in compiled.notices if notice.severity == "error"] == []
    return Stated(compiled, state)


def change(root: Path) -> None:
    """Make the changes of an addendum in a package."""
    edit(root, "package.yaml", "owner:", LISTED)
    edit(root, "package.yaml", "closing: 2027-12-10", "closing: 2027-12-17")
    rivets = "items/320-rivets-renew.yaml"
    edit(root, rivets, "title: Rivets, renew\n", "title: Rivets, renew\nrevision: 1\n")
    edit(root, rivets, "quantity: 40 each", "quantity: 55 each")
    edit(root, rivets, "within 0.3 m of the place", "within 0.5 m of the place")
    edit(root, rivets, "requirements:\n", "requirements:\n  - Mark the rivets with the owner.\n")
    edit(root, "clauses/02-changes.md", "\n", "\nNo verbal order counts.\n\n")
    edit(root, "items/420-underwater-shell-coat.yaml", "kind:", "revision: 1\nkind:")
    edit(root, "vessel/zones.yaml", "share: 30 %", "share: 45 %")
    edit(root, "vessel/zones.yaml", "name: Topside", "name: Topside shell")
    (root / "items/430-topside-wash.yaml").write_text(ITEM, "utf-8")
    (root / "questions").mkdir()
    (root / "questions/1-rivets.yaml").write_text(QUESTION, "utf-8")
    (root / "questions/2-open.yaml").write_text("question: 2\nasked: 2027-11-23\nask: Is <item:420> needed?\n", "utf-8")


@dataclass(frozen=True)
class Pair:
    """Two compiled packages and the addendum between them."""

    before: Stated
    after: Stated
    amended: Amended


@pytest.fixture(scope="session")
def pair(tmp_path_factory: pytest.TempPathFactory) -> Pair:
    """Give the starter, the starter changed, and the addendum."""
    return amended(tmp_path_factory.mktemp("pair"), change)


def amended(folder: Path, make: Callable[[Path], None]) -> Pair:
    """Make the addendum between the starter and what a change makes of it."""
    before = stated(starter(folder / "before"), BEFORE)
    root = starter(folder / "after")
    make(root)
    after = stated(root, AFTER)
    (entry,) = new_addenda(before, after)
    return Pair(before, after, amend(before, after, entry))
