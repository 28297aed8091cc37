from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from tenderwright import pipeline
from tests.pipeline.packages import git

from .run import Runner, package

MISTAKE = ("items/320-rivets-renew.yaml", 'depends_on: ["130",', 'depends_on: ["1300",')
WARNING = ("vessel/lightship.yaml", "aft: 2.10 m", "aft: 2.50 m")
PLACE = "items/320-rivets-renew.yaml:"


@pytest.fixture
def broken(tmp_path: Path) -> Path:
    return package(tmp_path / "package", MISTAKE)


def test_a_sound_package(run: Runner, tmp_path: Path) -> None:
    ran = run("check", package(tmp_path / "package"))
    assert (ran.code, ran.err) == (0, "")
    assert re.match(r"no mistakes found: 6 items, \d+ values, \d+ files\n", ran.out)
    lines = ran.out.splitlines()
    assert re.match(r"not judged, or only in part: \d+ trade checks$", lines[1])
    assert lines[2].startswith("  it needs vessel/docking-plan.yaml: soundings-too-old, ")
    assert re.match(r"not calculated: \d+ values$", lines[3])


def test_mistakes_in_full(run: Runner, broken: Path) -> None:
    ran = run("check", broken)
    lines = ran.out.splitlines()
    assert ran.code == 1
    assert re.match(PLACE + r"\d+:\d+: error\[dead-reference\]: there is no item 1300$", lines[0])
    number, written = lines[1].split(" | ")
    assert int(number) == int(lines[0].split(":")[1])
    assert lines[2].split(" | ")[1].index("^") == written.index('"1300"')
    assert lines[3].strip() == "hint: nearest: `420`"
    assert lines[4].strip() == "hint: if its work was dropped, bring its file back with `withdrawn: true`"
    assert lines[5].startswith("1 mistake: ")
    assert lines[6] == "What rests on a mistake is not judged: mend it and check again."
    assert lines[-1] == "More about a code: tenderwright explain CODE"


def test_mistakes_one_a_line(run: Runner, broken: Path) -> None:
    ran = run("check", "--format", "line", broken)
    assert ran.code == 1
    assert re.fullmatch(PLACE + r"\d+:\d+: error\[dead-reference\]: there is no item 1300\n", ran.out)


def test_mistakes_as_json(run: Runner, broken: Path) -> None:
    ran = run("check", "--format=json", broken)
    (notice,) = json.loads(ran.out)
    assert ran.code == 1
    assert notice["path"] == "items/320-rivets-renew.yaml"
    assert (notice["severity"], notice["code"]) == ("error", "dead-reference")
    assert notice["end_column"] - notice["column"] == len('"1300"')
    assert notice["hints"] == ["nearest: `420`", "if its work was dropped, bring its file back with `withdrawn: true`"]


def test_mistakes_as_annotations(run: Runner, broken: Path) -> None:
    ran = run("check", "--format", "annotations", broken)
    assert ran.code == 1
    assert ran.out.startswith("::error file=items/320-rivets-renew.yaml,line=")
    assert "title=dead-reference::there is no item 1300; nearest: `420`" in ran.out


def test_annotations_stand_at_paths_of_the_repository(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "ships" / "sand, ling", MISTAKE)
    git(tmp_path, "init", "--quiet")
    ran = run("check", "--format", "annotations", root)
    assert ran.out.startswith("::error file=ships/sand%2C ling/items/320-rivets-renew.yaml,line=")


@pytest.mark.parametrize(
    ("folder", "changes"),
    [
        ("owner", [("owner/rates.yaml", "low: 2900, high: 5200", "low: 9900, high: 5200")]),
        (
            "items",
            [
                ("owner/rates.yaml", "contingency:", "# contingency:"),
                ("items/320-rivets-renew.yaml", "kind: contingent", "kind: measured"),
                ("items/320-rivets-renew.yaml", "basis: surveyed", "basis: assumed"),
            ],
        ),
    ],
)
def test_annotations_tell_nothing_of_the_owners_papers(
    run: Runner, tmp_path: Path, folder: str, changes: list[tuple[str, str, str]]
) -> None:
    root = package(tmp_path / "package", *changes)
    assert run("check", "--strict", "--format", "line", root).out.startswith(f"{folder}/")
    ran = run("check", "--strict", "--format", "annotations", root)
    assert ran.code == 1
    assert re.fullmatch(r"the owner's papers: 1 \w+, shown only by `tenderwright check` on your own machine\n", ran.out)


@pytest.mark.parametrize("form", ["line", "json", "annotations"])
def test_a_sound_package_says_nothing_to_a_machine(run: Runner, tmp_path: Path, form: str) -> None:
    ran = run("check", package(tmp_path / "package"), "--format", form)
    assert ran.code == 0
    assert ran.out == ("[]\n" if form == "json" else "")


def test_warnings_count_only_where_asked(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package", WARNING)
    ran = run("check", root, "--format", "line")
    assert ran.code == 0
    assert ": warning[stated-differs]: " in ran.out
    assert run("check", root, "--strict", "--format", "line").code == 1


def test_mistakes_of_the_owner_are_told_too(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package", ("owner/rates.yaml", "rate: 95", "rate: 9.555"))
    ran = run("check", root, "--format", "line")
    assert ran.code == 1
    assert re.match(r"owner/rates.yaml:\d+:\d+: error\[bad-money\]", ran.out)


def test_a_package_is_found_here_or_below(run: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package(tmp_path / "package_src")
    for here in (tmp_path, tmp_path / "package_src"):
        monkeypatch.chdir(here)
        assert run("check").code == 0
    monkeypatch.chdir(tmp_path / "package_src" / "items")
    ran = run("check")
    assert ran.code == 2
    assert "there is no package.yaml here" in ran.err


def test_wrong_use(run: Runner, tmp_path: Path) -> None:
    ran = run("check", tmp_path / "nowhere")
    assert (ran.code, ran.out) == (2, "")
    assert "is not a folder" in ran.err
    assert run("check", tmp_path, "--format", "xml").code == 2
    assert run("chekc").code == 2
    assert run().code == 2


@pytest.mark.parametrize("words", [["check"], ["build", "--out", "out"], ["explain", "320"], ["issue", "--tag", "a"]])
def test_a_folder_without_package_yaml_is_no_package_which_is_said_once(
    run: Runner, tmp_path: Path, words: list[str]
) -> None:
    root = package(tmp_path / "package")
    (root / "package.yaml").unlink()
    ran = run(words[0], root, *words[1:])
    assert (ran.code, ran.out, ran.err.count("\n")) == (2, "", 1)
    assert "package` is not a package, since there is no package.yaml in it" in ran.err


def test_our_own_failure_is_told_as_ours(run: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> None:
        raise RuntimeError("struck a rock")

    monkeypatch.setattr(pipeline, "calculate", fail)
    ran = run("check", package(tmp_path / "package"))
    assert ran.code == 3
    assert "struck a rock" in ran.err
    assert "a mistake in the compiler, not in the package" in ran.err


def test_nothing_is_written(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package")
    before = {path: path.stat().st_mtime_ns for path in tmp_path.rglob("*")}
    run("check", root)
    assert {path: path.stat().st_mtime_ns for path in tmp_path.rglob("*")} == before
