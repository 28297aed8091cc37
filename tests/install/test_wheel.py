"""The wheel holds all it needs, and works from a fresh environment in another folder, with nothing downloaded."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import sysconfig
import venv
import zipfile
from dataclasses import dataclass
from pathlib import Path

import pytest

from tenderwright.notices.codes import CODES

ROOT = Path(__file__).parents[2]


@dataclass(frozen=True)
class Installed:
    """An environment with the wheel in it."""

    wheel: Path
    folder: Path

    def run(self, *words: object, cwd: Path) -> subprocess.CompletedProcess[str]:
        """Run the command that the wheel brings."""
        return self._run("tenderwright", *map(str, words), cwd=cwd)

    def python(self, program: str, cwd: Path) -> subprocess.CompletedProcess[str]:
        """Run a program in the environment."""
        return self._run("python", "-c", program, cwd=cwd)

    def _run(self, command: str, *words: str, cwd: Path) -> subprocess.CompletedProcess[str]:
        environment = {name: text for name, text in os.environ.items() if not name.startswith("PYTHON")}
        whole = [str(self.folder / "bin" / command), *words]
        return subprocess.run(whole, cwd=cwd, env=environment, capture_output=True, text=True, check=False)


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Installed:
    base = tmp_path_factory.mktemp("wheel")
    source = base / "source"
    for name in ("compiler", "schemas"):
        shutil.copytree(ROOT / name, source / name, ignore=shutil.ignore_patterns("__pycache__", ".*"))
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copyfile(ROOT / name, source / name)
    pip = [sys.executable, "-m", "pip", "--quiet", "--disable-pip-version-check", "--no-input"]
    offline = ["--no-deps", "--no-index", "--no-cache-dir"]
    subprocess.run([*pip, "wheel", *offline, "--no-build-isolation", "--wheel-dir", str(base), str(source)], check=True)
    shutil.rmtree(source)
    (wheel,) = base.glob("*.whl")
    folder = base / "fresh"
    venv.create(folder, with_pip=False)
    subprocess.run([*pip, "--python", str(folder / "bin" / "python"), "install", *offline, str(wheel)], check=True)
    (site,) = folder.glob("lib/python*/site-packages")
    (site / "of-the-tests.pth").write_text(f"{sysconfig.get_path('purelib')}\n", "utf-8")
    return Installed(wheel, folder)


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
