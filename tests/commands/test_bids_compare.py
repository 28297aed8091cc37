"""`tenderwright bids compare` as a user runs it: what it writes, says and refuses."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.fixtures.returned_bids import bids_package
from tests.pipeline.packages import files_of

from .run import Runner, package


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return bids_package(tmp_path / "sandling")


def test_the_comparison_is_written_and_what_is_to_settle_is_told(run: Runner, root: Path, tmp_path: Path) -> None:
    out = tmp_path / "out" / "bids"
    ran = run("bids", "compare", root, "--out", out.parent)
    assert ran.code == 0, ran.err
    said = ran.out.splitlines()
    assert said[:3] == [
        "1. Ostrey Dock: EUR 48 275.00, dock pass",
        "2. Wrackness Yard: EUR 51 440.00, dock not known",
        "3. Saltholm Slip: EUR 54 170.00, dock not known",
    ]
    assert said[3].startswith(f"{out}: ")
    assert said[3].endswith("3 warnings to settle with the bidders")
    assert ran.err.count("warning[bid-arithmetic]") == 3
    assert "owner/bids/ostrey-dock.yaml:" in ran.err
    assert sorted(path.name for path in out.iterdir()) == [
        "bids-evaluated.csv",
        "bids-lines.csv",
        "bids.html",
        "bids.pdf",
        "drawings",
        "manifest.json",
    ]


def test_it_is_written_whole_in_place_of_an_earlier_one(run: Runner, root: Path, tmp_path: Path) -> None:
    out = tmp_path / "bids"
    assert run("bids", "compare", root, "--out", tmp_path).code == 0
    written = files_of(out)
    (out / "drawings" / ".DS_Store").write_text("left by a desktop", "utf-8")
    assert run("bids", "compare", root, "--out", tmp_path).code == 0
    assert files_of(out) == written


def test_a_folder_that_was_not_written_here_is_left_alone(run: Runner, root: Path, tmp_path: Path) -> None:
    out = tmp_path / "bids"
    out.mkdir()
    (out / "letter.txt").write_text("mine", "utf-8")
    ran = run("bids", "compare", root, "--out", tmp_path)
    assert ran.code == 2
    assert f"{out / 'letter.txt'} was not written by an earlier run, and would be lost" in ran.err
    assert [path.name for path in out.iterdir()] == ["letter.txt"]


def test_the_package_itself_is_not_written_over(run: Runner, root: Path) -> None:
    assert run("bids", "compare", root, "--out", root).code == 2
    assert (root / "package.yaml").is_file()


def test_without_bids_there_is_nothing_to_compare(run: Runner, tmp_path: Path) -> None:
    ran = run("bids", "compare", package(tmp_path / "sandling"), "--out", tmp_path / "out")
    assert ran.code == 2
    assert "there are no bids in owner/bids/" in ran.err
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("path", "old", "new", "code"),
    [
        ("owner/evaluation.yaml", "saltholm-slip, exclusion", "saltholm-slipp, exclusion", "dead-reference"),
        ("owner/bids/ostrey-dock.yaml", "currency: EUR", "currency: GBP", "bid-currency"),
        ("owner/bids/ostrey-dock.yaml", "facility: ostrey-dock", "facility: ostry-dock", "dead-reference"),
        ("owner/evaluation.yaml", "amount: 1150", "amount: 1150, take: highest", "addition-unclear"),
        ("items/320-rivets-renew.yaml", "title:", "tittle:", "unknown-key"),
    ],
)
def test_mistakes_stop_it_and_are_told_at_their_line(
    run: Runner, tmp_path: Path, path: str, old: str, new: str, code: str
) -> None:
    root = bids_package(tmp_path / "sandling", (path, old, new))
    ran = run("bids", "compare", root, "--out", tmp_path / "out")
    assert ran.code == 1
    assert f"error[{code}]" in ran.err
    assert f"{path}:" in ran.err
    assert "nothing was written" in ran.err
    assert not (tmp_path / "out").exists()


def test_the_name_meant_is_suggested(run: Runner, tmp_path: Path) -> None:
    change = ("owner/evaluation.yaml", "saltholm-slip, exclusion", "saltholm-slipp, exclusion")
    ran = run("bids", "compare", bids_package(tmp_path / "sandling", change), "--out", tmp_path / "out")
    assert "did you mean `saltholm-slip`?" in ran.err


def test_bids_to_settle_are_no_mistakes_of_the_package_and_their_slips_are_told(run: Runner, root: Path) -> None:
    ran = run("check", root)
    assert (ran.code, ran.err) == (0, "")
    assert "line 420.a: rate and quantity make 625.00, and 4 250.00 is written" in ran.out
    assert "error[" not in ran.out
