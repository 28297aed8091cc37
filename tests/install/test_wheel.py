"""The wheel holds all it needs, and works from a fresh environment in another folder, with nothing downloaded."""

from __future__ import annotations

import json
import shutil
import zipfile
from pathlib import Path

from tenderwright.notices.codes import CODES

from .conftest import ROOT, Installed


def test_the_wheel_holds_what_the_tree_holds(installed: Installed) -> None:
    names = set(zipfile.ZipFile(installed.wheel).namelist())
    tree = ROOT / "compiler" / "tenderwright"
    wanted = {
        f"tenderwright/{path.relative_to(tree).as_posix()}"
        for path in tree.rglob("*")
        if path.is_file() and not any(name.startswith((".", "__pycache__")) for name in path.relative_to(tree).parts)
    }
    wanted |= {f"tenderwright/schemas/{path.name}" for path in (ROOT / "schemas").glob("*.schema.json")}
    assert wanted - names == set()
    for kind, fewest in {
        "schemas/": 19,
        "writing/templates/": 3,
        "writing/styles/": 3,
        "starter/files/": 20,
        "notices/explanations/": len(CODES),
    }.items():
        assert sum(name.startswith(f"tenderwright/{kind}") for name in names) >= fewest, kind


def test_the_wheel_holds_nothing_that_is_not_for_users(installed: Installed) -> None:
    for name in zipfile.ZipFile(installed.wheel).namelist():
        assert name.startswith(("tenderwright/", "tenderwright-"))
        assert not name.endswith((".pyc", ".swp", "~"))


def test_it_runs_the_installed_package(installed: Installed, tmp_path: Path) -> None:
    program = "import tenderwright.shapes.schemas as s, tenderwright as t; print(t.__file__); print(s.schema_folder())"
    done = installed.python(program, tmp_path)
    assert all(Path(line).is_relative_to(installed.folder) for line in done.stdout.splitlines())
    assert done.stdout.splitlines()[1].endswith("/tenderwright/schemas")


def test_check_of_the_demonstration(installed: Installed, tmp_path: Path) -> None:
    shutil.copytree(ROOT / "package_src", tmp_path / "marram", ignore=shutil.ignore_patterns("build"))
    done = installed.run("check", "marram", cwd=tmp_path)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "60 items" in done.stdout


def test_start_check_explain_and_build(installed: Installed, tmp_path: Path) -> None:
    assert installed.run("start", "ship", cwd=tmp_path).returncode == 0
    assert (tmp_path / "ship" / ".gitignore").is_file()
    assert (tmp_path / "ship" / ".schemas" / "item.schema.json").is_file()
    checked = installed.run("check", "ship", "--strict", cwd=tmp_path)
    assert (checked.returncode, checked.stderr) == (0, "")
    assert checked.stdout.startswith("no mistakes found")
    built = installed.run("build", "ship", "--only", "yard", cwd=tmp_path)
    assert (built.returncode, built.stderr) == (0, "")
    assert (tmp_path / "build" / "yard" / "specification.pdf").read_bytes().startswith(b"%PDF-")
    manifest = json.loads((tmp_path / "build" / "yard" / "manifest.json").read_text("utf-8"))
    assert manifest["tender"] == "BWT-2028-01"
    assert [path.name for path in (tmp_path / "build").iterdir()] == ["yard"]


def test_explanations_and_calculations_come_with_it(installed: Installed, tmp_path: Path) -> None:
    assert installed.run("explain", "late-report", cwd=tmp_path).stdout.startswith("# A report")
    assert len(installed.run("reckon", "--list", cwd=tmp_path).stdout.splitlines()) > 10
