"""A wheel built from the tree, and bare environments that see the libraries of the tests and nothing of ours."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import sysconfig
import venv
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PIP = [sys.executable, "-m", "pip", "--quiet", "--disable-pip-version-check", "--no-input"]
OFFLINE = ["--no-deps", "--no-index", "--no-cache-dir"]


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
        whole = [str(self.folder / "bin" / command), *words]
        return subprocess.run(whole, cwd=cwd, env=without_python(), capture_output=True, text=True, check=False)


def without_python() -> dict[str, str]:
    """Give the environment of the tests without what leads Python to the tree."""
    return {name: text for name, text in os.environ.items() if not name.startswith("PYTHON")}


def bare_environment(folder: Path) -> Path:
    """Make an environment that sees every library of the tests, pip among them, but no Tenderwright."""
    libraries = folder / "libraries"
    venv.create(folder, with_pip=False)
    libraries.mkdir()
    for path in Path(sysconfig.get_path("purelib")).iterdir():
        if "tenderwright" not in path.name and not path.name.endswith(".pth"):
            (libraries / path.name).symlink_to(path)
    (site,) = folder.glob("lib/python*/site-packages")
    (site / "of-the-tests.pth").write_text(f"{libraries}\n", "utf-8")
    return folder


@pytest.fixture(scope="session")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    base = tmp_path_factory.mktemp("wheel")
    source = base / "source"
    for name in ("compiler", "schemas"):
        shutil.copytree(ROOT / name, source / name, ignore=shutil.ignore_patterns("__pycache__", ".*"))
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copyfile(ROOT / name, source / name)
    subprocess.run([*PIP, "wheel", *OFFLINE, "--no-build-isolation", "--wheel-dir", str(base), str(source)], check=True)
    shutil.rmtree(source)
    (built,) = base.glob("*.whl")
    return built


@pytest.fixture(scope="session")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Installed:
    folder = bare_environment(tmp_path_factory.mktemp("installed") / "fresh")
    subprocess.run([*PIP, "--python", str(folder / "bin" / "python"), "install", *OFFLINE, str(wheel)], check=True)
    return Installed(wheel, folder)
