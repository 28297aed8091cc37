"""What lies in the repository: no paths of a machine, no hosts of package registries, nothing built."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

from .tree import REPOSITORY, tracked

THIS = Path(__file__).resolve()
BINARY = {".png", ".jpg", ".otf", ".ttf", ".woff2", ".gz", ".zip", ".pdf", ".xlsx"}

MACHINE = re.compile(r"(?<![\w.])/(?:home|Users|root|work|mnt|private)/\w|[A-Z]:\\Users\\|/tmp/\w")
HOSTS = re.compile(
    r"(?:pypi|npmjs|crates|rubygems)\.(?:org|io)|pythonhosted|proxy\.golang|jfrog|artifactory|/simple/|devpi|nexus",
    re.I,
)
EITHER = re.compile(f"(?:{MACHINE.pattern})|(?i:{HOSTS.pattern})")
TRANSPORT = re.compile(r"--(?:extra-)?index-url|--trusted-host|--find-links|https?://")


def _texts() -> list[Path]:
    return [path for path in tracked() if path.suffix not in BINARY and path != THIS]


def _found(pattern: re.Pattern[str], path: Path) -> list[str]:
    lines = path.read_text("utf-8", errors="replace").splitlines()
    return [f"{number}: {line[:120]}" for number, line in enumerate(lines, 1) if pattern.search(line)]


def test_no_path_of_a_machine_and_no_host_of_a_registry() -> None:
    found = [f"{path.relative_to(REPOSITORY)}:{line}" for path in _texts() for line in _found(EITHER, path)]
    assert found == []
    assert len(_texts()) > 200


def test_the_lock_file_names_no_index() -> None:
    lock = REPOSITORY / "requirements.lock"
    assert lock.is_file()
    assert _found(TRANSPORT, lock) == []
    pins = [line for line in lock.read_text("utf-8").splitlines() if line and not line.startswith((" ", "#"))]
    assert len(pins) > 20
    assert all(re.match(r"[A-Za-z0-9._-]+==\S+ \\$", line) for line in pins)


def test_the_lock_file_pins_every_dependency() -> None:
    project = tomllib.loads((REPOSITORY / "pyproject.toml").read_text("utf-8"))["project"]
    wanted = [*project["dependencies"], *project["optional-dependencies"]["dev"]]
    names = {re.split(r"[<>=\[; ]", one)[0].lower().replace("_", "-") for one in wanted}
    lock = (REPOSITORY / "requirements.lock").read_text("utf-8").lower().replace("_", "-")
    assert not {name for name in names if f"\n{name}==" not in f"\n{lock}"}


def test_nothing_built_is_kept() -> None:
    kept = {path.relative_to(REPOSITORY).as_posix() for path in tracked()}
    assert {path for path in kept if path.startswith("build/")} <= {"build/.gitignore"}
    assert not {path for path in kept if path.endswith((".pyc", ".whl", ".egg-info"))}


def test_the_top_of_the_tree_is_as_fixed() -> None:
    top = {path.relative_to(REPOSITORY).parts[0] for path in tracked()}
    fixed = {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "compiler",
        "schemas",
        "package_src",
        "tests",
        "build",
        "LICENSE",
    }
    expected = {
        "build",
        "Makefile",
        "CHANGELOG.md",
        "requirements.lock",
        ".gitignore",
        ".gitattributes",
        ".github",
        ".ci",
        ".pre-commit-hooks.yaml",
    }
    assert fixed <= top
    assert top <= fixed | expected
