"""The workflow that `start` writes: where it stands, what it names, and that it never writes over another."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from tenderwright.starter import source
from tenderwright.starter.workflow import top_for, workflow_text
from tests.commands.run import Ran
from tests.commands.run import Runner as Run
from tests.pipeline.packages import git

SOURCE = "tenderwright @ git+https://git.example.org/t@" + "5" * 40


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Run:
    return Run(capsys)


def started(run: Run, folder: Path) -> Ran:
    ran = run("start", folder)
    assert ran.code == 0, ran.err
    assert (folder / "package.yaml").is_file()
    return ran


def workflow(path: Path) -> Any:
    return yaml.safe_load(path.read_text("utf-8"))


def test_outside_git_the_package_is_the_top(run: Run, tmp_path: Path) -> None:
    started(run, tmp_path / "sandling")
    assert workflow(tmp_path / "sandling" / ".github/workflows/docking.yml")["env"]["PACKAGE"] == "."


def test_an_empty_clone_is_the_top(run: Run, tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet")
    started(run, tmp_path)
    assert workflow(tmp_path / ".github/workflows/docking.yml")["env"]["PACKAGE"] == "."


def test_in_a_repository_it_stands_at_the_top(run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    git(tmp_path, "init", "--quiet")
    (tmp_path / "ships").mkdir()
    monkeypatch.chdir(tmp_path / "ships")
    ran = started(run, Path("sand ling"))
    assert not (tmp_path / "ships" / "sand ling" / ".github").exists()
    assert workflow(tmp_path / ".github/workflows/docking.yml")["env"]["PACKAGE"] == "ships/sand ling"
    assert f"{tmp_path / '.github/workflows/docking.yml'} checks the package" in ran.out


def test_a_folder_that_git_ignores_is_its_own_top(tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet")
    (tmp_path / ".gitignore").write_text("try/\n", "utf-8")
    assert top_for(tmp_path / "try" / "ship") == tmp_path / "try" / "ship"
    assert top_for(tmp_path / "ship") == tmp_path


def test_no_workflow_is_written_over(run: Run, tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet")
    folder = tmp_path / ".github" / "workflows"
    folder.mkdir(parents=True)
    (folder / "docking.yml").write_text("mine\n", "utf-8")
    started(run, tmp_path / "a ship")
    assert workflow(folder / "docking-a-ship.yml")["env"]["PACKAGE"] == "a ship"
    (folder / "docking-b.yml").write_text("mine too\n", "utf-8")
    assert "docking-b.yml is there already" in started(run, tmp_path / "b").err
    assert [(folder / name).read_text("utf-8") for name in ("docking.yml", "docking-b.yml")] == ["mine\n", "mine too\n"]


def test_a_package_is_whole_where_its_workflow_cannot_be_written(run: Run, tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet")
    (tmp_path / ".github").write_text("no folder", "utf-8")
    assert "the package is whole, but its workflow could not be written" in started(run, tmp_path / "ship").err


@pytest.mark.parametrize("pinned", [SOURCE, ""])
def test_it_names_the_source_that_runs_or_asks_for_one(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, pinned: str
) -> None:
    monkeypatch.setattr(source, "pinned_source", lambda: pinned)
    ran = started(run, tmp_path / "ship")
    text = (tmp_path / "ship" / ".github/workflows/docking.yml").read_text("utf-8")
    assert yaml.safe_load(text)["env"]["TENDERWRIGHT"] == pinned
    assert ("FILL IN" in text) == ("fill in its line TENDERWRIGHT" in ran.out) == (not pinned)


def test_names_are_quoted(tmp_path: Path) -> None:
    name = 'the "Sand: ling" #2 é'
    assert yaml.safe_load(workflow_text(name, SOURCE))["env"] == {"PACKAGE": name, "TENDERWRIGHT": SOURCE}


def test_it_fetches_the_whole_history_and_keeps_the_yard_edition_alone() -> None:
    steps = yaml.safe_load(workflow_text("ship", SOURCE))["jobs"]["package"]["steps"]
    used = [(step["uses"].partition("@")[0], step["with"]) for step in steps if "uses" in step]
    assert dict(used)["actions/checkout"] == {"fetch-depth": 0, "persist-credentials": False}
    kept = {said["name"]: said["path"] for name, said in used if name == "actions/upload-artifact"}
    assert kept == {
        "yard-edition": "${{ runner.temp }}/tender/yard",
        "what-changed": "${{ runner.temp }}/tender/diff",
    }


def test_it_never_installs_by_the_bare_name() -> None:
    for pinned in (SOURCE, ""):
        text = workflow_text("ship", pinned)
        assert [line.strip() for line in text.splitlines() if "pip install" in line] == [
            'run: python -m pip install "$TENDERWRIGHT"'
        ]
