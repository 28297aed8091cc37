"""`tenderwright diff` shows before anything is issued what yards would be told, and apart what that costs the owner."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from tenderwright.reading.issued import issued
from tests.pipeline.packages import commit, edit, files_of, git, starter

from .run import Runner

SECRET = "the rivets are worse than the yard is told"
RIVETS = "items/320-rivets-renew.yaml"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    root = starter(tmp_path / "sandling")
    edit(root, "owner/rates.yaml", "The wash may show more wasted rivets", SECRET)
    commit(root)
    git(root, "tag", "before")
    edit(root, RIVETS, "quantity: 40 each", "quantity: 55 each")
    return root


def test_what_is_not_committed_yet_is_shown_on_both_sides(run: Runner, root: Path, tmp_path: Path) -> None:
    held = files_of(root)
    ran = run("diff", root, "before", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    assert "1 change listed, and it is proved that nothing else changed; price can be affected" in ran.out
    made = files_of(tmp_path / "out")
    for folder in ("diff", "diff-owner"):
        assert {f"{folder}/diff.{kind}" for kind in ("pdf", "html", "md")} <= set(made)
    yards = made["diff/diff.md"].decode()
    assert "| Line a, quantity | {-40 each-} {+55 each+} | yes |" in yards
    assert "320 Rivets, renew: write `revision: 1`" in yards
    assert json.loads(made["diff/diff.json"])["operations"][0]["new"] == "55 each"
    owners = made["diff-owner/diff.md"].decode()
    assert "CONFIDENTIAL" in owners
    assert "Each side is priced and planned by the owner's papers as they stood at it." in owners
    assert "| 320.a | Rivets, renew: Renew one rivet | 3 800.00 | 5 225.00 | +1 425.00 |" in owners
    assert "| Base with contingency |" in owners
    assert "No days are compared: owner/programme.yaml is needed on both sides." in owners
    assert files_of(root) == held
    assert issued(root) == ()


def test_the_yards_side_is_the_same_bytes_without_the_owners_papers(run: Runner, root: Path, tmp_path: Path) -> None:
    commit(root, "More rivets")
    for out, more in (("with", ()), ("only", ("--only", "yard"))):
        assert run("diff", root, "before", "HEAD", *more, "--out", tmp_path / out).code == 0
    shutil.rmtree(root / "owner")
    assert run("diff", root, "before", "--only", "yard", "--out", tmp_path / "without").code == 0
    made = {name: files_of(tmp_path / name) for name in ("with", "only", "without")}
    assert made["only"] == {path: content for path, content in made["with"].items() if path.startswith("diff/")}
    assert set(made["without"]) == set(made["only"])
    assert all(SECRET.encode() not in content for content in made["only"].values())
    assert "DRAFT" not in made["without"]["diff/diff.md"].decode()
    pair = [json.loads(made[name]["diff/diff.json"]) for name in ("only", "without")]
    assert pair[0] == pair[1]


def test_papers_kept_apart_price_both_sides(run: Runner, root: Path, tmp_path: Path) -> None:
    for words in (
        ("rm", "-r", "-q", "--cached", "owner"),
        ("commit", "-q", "-m", "Apart"),
        ("tag", "--force", "before"),
    ):
        git(root, *words)
    (root / ".gitignore").write_text("owner/\n", "utf-8")
    ran = run("diff", root, "before", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    owners = (tmp_path / "out" / "diff-owner" / "diff.md").read_text("utf-8")
    assert "Both sides are priced and planned by the owner's papers as they are today." in owners
    assert "+1 425.00" in owners


def test_a_line_without_a_rate_is_said_where_the_sums_would_stand(run: Runner, root: Path, tmp_path: Path) -> None:
    edit(root, RIVETS, "lines:\n", "lines:\n  - { line: b, text: Caulk, price: rate, quantity: 3 m, where: A }\n")
    ran = run("diff", root, "before", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    owners = (tmp_path / "out" / "diff-owner" / "diff.md").read_text("utf-8")
    assert "The later side cannot be priced: line 320.b has no rate." in owners


def test_nothing_that_changed_is_said(run: Runner, root: Path, tmp_path: Path) -> None:
    ran = run("diff", root, "before", "before", "--only", "yard", "--out", tmp_path / "out")
    assert "0 changes listed" in ran.out
    assert "Nothing that yards read is changed" in (tmp_path / "out" / "diff" / "diff.md").read_text("utf-8")


def test_mistakes_are_told_and_nothing_is_written(run: Runner, root: Path, tmp_path: Path) -> None:
    edit(root, RIVETS, "kind: contingent", "kind: contingnt")
    ran = run("diff", root, "before", "--out", tmp_path / "out")
    assert (ran.code, ran.out) == (1, "")
    assert "the package as it is has 1 mistake; nothing was written" in ran.err
    assert not (tmp_path / "out").exists()
    ran = run("diff", root, "nowhere", "--out", tmp_path / "out")
    assert ran.code == 2
    assert "there is no commit `nowhere`" in ran.err
