"""The circle: Marram's tender of 2027 is closed, the next one begins from it, and answered it is a tender again.

What was found in dock tells of another course than her life does, in which Corve was awarded; so that is where her life
is left here.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tenderwright.notices import Notice
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tests.commands.run import Runner
from tests.pipeline.packages import edit, files_of

from .life import FINDINGS, MARRAMS_LIFE, stages

OLD, NEW = "HPT-2027-01", "HPT-2039-01"
AWARD = f"tender: {OLD}\nbid: corve-harbour-dock-trust\nawarded: 2027-03-15\namount: 919349\n"
SAID = re.compile(r"todo, (?:[^\n]*\n)*?[^\n]*(?:had|said):\n\n *")
"""What stands before the words of the closed tender."""


@pytest.fixture(scope="module")
def laid(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Marram as her bids left her, with the award to Corve."""
    root = tmp_path_factory.mktemp("circle") / "marram"
    bids = next(stage for stage in stages(MARRAMS_LIFE) if stage.chapter.chapter == "bids")
    for path, content in {**bids.files, "owner/award.yaml": AWARD.encode()}.items():
        (root / path).parent.mkdir(parents=True, exist_ok=True)
        (root / path).write_bytes(content)
    return root


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Runner:
    return Runner(capsys)


def compiled(root: Path) -> tuple[Compiled, OwnersSide]:
    files = read(root)
    package = compile_package(files)
    return package, compile_owner(files, package)


def errors(*sides: Compiled | OwnersSide) -> list[Notice]:
    return [one for side in sides for one in side.notices if one.severity == "error"]


def test_a_tender_that_is_awarded_is_closed_first(run: Runner, laid: Path, tmp_path: Path) -> None:
    ran = run("next", laid, tmp_path / "next", "--number", NEW)
    assert ran.code == 2
    assert "awarded and not closed" in ran.err


def test_the_circle_closes(run: Runner, laid: Path, tmp_path: Path) -> None:
    ran = run("close", laid, FINDINGS / "marram-2027.yaml", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    before = files_of(laid)
    new = tmp_path / "next"
    ran = run("next", laid, new, "--number", NEW)
    assert ran.code == 0, ran.err
    assert files_of(laid) == before

    package, owner = compiled(new)
    assert [*package.notices, *owner.notices] == []
    assert {one.place.path.split("/")[0] for one in package.package.todos} <= {
        *("package.yaml", "items", "clauses", "vessel"),
    }
    assert owner.papers.todos == ()
    assert max(package.package.history, key=lambda one: one.docked).docking == "docking-2027"
    assert owner.papers.closing_of("docking-2027") is not None

    archive = new / "owner/archive" / OLD
    kept = files_of(archive / "package")
    assert kept == before
    assert {"owner/award.yaml", "owner/evaluation.yaml", "questions/10-a-later-closing-day.yaml"} < kept.keys()
    assert run("verify", archive).code == 0

    answer(new)
    package, owner = compiled(new)
    assert [f"{one.place}" for one in package.package.todos] == []
    assert errors(package, owner) == []
    assert run("add", "rates", "--in", new).code == 0
    edit(new, "owner/indices.yaml", "      2026-10: 154.1\n", "      2026-10: 154.1\n      2038-10: 205.0\n")
    rates = (new / "owner/rates.yaml").read_text("utf-8").replace("base_month: todo", "base_month: 2038-10")
    (new / "owner/rates.yaml").write_text(rates.replace("rate: todo", "rate: 100"), "utf-8")
    assert rates.count("history: { docking: docking-2027,") > 100
    package, owner = compiled(new)
    assert errors(package, owner) == []
    assert owner.estimate is not None
    assert "facility-certificate" in {one.code for one in package.notices}, "the certificates of 2027 have run out"


def answer(root: Path) -> None:
    """Answer all that is asked as if everything were wanted again, twelve years later."""
    for path in [*root.glob("*.yaml"), *root.glob("items/*.yaml"), *root.glob("clauses/*"), *root.glob("vessel/*")]:
        text = path.read_text("utf-8")
        if "todo" in text:
            text = SAID.sub("", re.sub(rf"todo \({OLD} had (.*?)\)(?=[ ,}}]*$)", r"\1", text, flags=re.MULTILINE))
            text = re.sub(r"^todo, lines? .*\n", "", text, flags=re.MULTILINE)
            text = re.sub("202[678](?=-[01])", lambda year: str(int(year[0]) + 12), text)
            path.write_text(text.replace("2027", "2039"), "utf-8")
