"""The libraries asked for are those that the typesetter loads, and each that is missing is named with its cure."""

from __future__ import annotations

import ast
import ctypes.util
import re
import subprocess
import sys
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path

import pytest

from tenderwright.writing import typesetter_libraries
from tenderwright.writing.typesetter_libraries import (
    DLL_FOLDERS,
    LIBRARIES,
    SYSTEMS,
    Library,
    how_to_install,
    load,
    missing,
    packages,
)

WITHOUT = {"libharfbuzz-vector-0": "faces in colour alone"}
"""What the typesetter tries and we do without, and for what it serves."""
ALLOWED_TO_FAIL = {"libharfbuzz-subset-0", *WITHOUT}


def typesetter_calls() -> list[ast.Call]:
    """Give every call in the module of the typesetter that loads the libraries."""
    found = find_spec("weasyprint")
    assert found is not None
    assert found.origin is not None
    source = (Path(found.origin).parent / "text" / "ffi.py").read_text("utf-8")
    return [node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.Call)]


def called(call: ast.Call) -> str:
    return ast.unparse(call.func)


def texts(call: ast.Call) -> tuple[str, ...]:
    return tuple(one.value for one in call.args if isinstance(one, ast.Constant) and isinstance(one.value, str))


def test_the_list_is_what_the_typesetter_loads() -> None:
    loaded = [call for call in typesetter_calls() if called(call) == "_dlopen"]
    names = [texts(call) for call in loaded]
    assert [one for one in names if one[0] not in WITHOUT] == [library.names for library in LIBRARIES]
    assert {one[0] for one, call in zip(names, loaded, strict=True) if call.keywords} == ALLOWED_TO_FAIL
    opened = [call for call in typesetter_calls() if called(call).endswith("dlopen") and called(call) != "_dlopen"]
    assert {ast.unparse(call.args[0]) for call in opened} == {"name", "names[0]"}, "all else goes through _dlopen"


def test_the_folders_on_windows_are_those_of_the_typesetter() -> None:
    (asked,) = (call for call in typesetter_calls() if "WEASYPRINT_DLL_DIRECTORIES" in texts(call))
    assert texts(asked)[1].split(";") == list(DLL_FOLDERS)


def test_every_library_is_here_when_the_typesetter_is_tested() -> None:
    assert missing() == []


def without(monkeypatch: pytest.MonkeyPatch, *gone: Library) -> None:
    """Let a loader fail on libraries, by every name they have."""
    names = {name for library in gone for name in library.names}
    monkeypatch.setattr(typesetter_libraries, "load", lambda path: path not in names and load(path))
    find: Callable[[str], str | None] = ctypes.util.find_library
    monkeypatch.setattr(ctypes.util, "find_library", lambda name: None if name in names else find(name))


@pytest.mark.parametrize("library", LIBRARIES, ids=lambda library: library.title)
def test_each_library_missing_is_named_with_its_package_on_every_system(
    monkeypatch: pytest.MonkeyPatch, library: Library
) -> None:
    without(monkeypatch, library)
    assert missing() == [library]
    said = how_to_install(missing()).splitlines()
    assert said[0] == (f"the typesetter cannot start: {library.title} is not found on this machine; install with")
    wanted = [[*command.split(), package] for (_, command), package in zip(SYSTEMS, library.packages, strict=True)]
    assert [line.split()[-len(words) :] for line, words in zip(said[1:], wanted, strict=False)] == wanted


def test_several_that_are_missing_are_told_at_once_and_no_package_twice() -> None:
    said = how_to_install(list(LIBRARIES))
    assert "GObject, Pango, HarfBuzz, HarfBuzz-Subset, Fontconfig and PangoFT2 are not found" in said
    assert "sudo dnf install glib2 pango harfbuzz fontconfig\n" in said
    assert packages(list(LIBRARIES[1:3])) == ["libpango-1.0-0", "libharfbuzz0b"]


def test_a_library_under_a_name_that_only_the_system_finds_is_there(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(typesetter_libraries, "load", lambda path: path == "/opt/somewhere/libpango.so")
    monkeypatch.setattr(
        ctypes.util, "find_library", lambda name: "/opt/somewhere/libpango.so" if name == "pango-1.0" else None
    )
    assert "Pango" not in [library.title for library in missing()]
    assert "PangoFT2" in [library.title for library in missing()]


def test_what_is_no_library_does_not_load(tmp_path: Path) -> None:
    (tmp_path / "libnone.so").write_text("no library", "utf-8")
    assert not load(str(tmp_path / "libnone.so"))


def test_it_runs_by_itself_before_anything_is_installed() -> None:
    words = [sys.executable, "-I", "-S", typesetter_libraries.__file__]
    ran = subprocess.run(words, capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stdout, ran.stderr) == (0, "", "")
    ran = subprocess.run([*words, "--debian"], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stdout.strip(), ran.stderr) == (0, "", "")
    assert {name.split(".")[0] for name in _imports()} <= sys.stdlib_module_names


def _imports() -> set[str]:
    tree = ast.parse(Path(typesetter_libraries.__file__).read_text("utf-8"))
    plain = {alias.name for node in ast.walk(tree) if isinstance(node, ast.Import) for alias in node.names}
    return plain | {node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}


def test_the_names_for_debian_are_printed_alone(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    without(monkeypatch, LIBRARIES[3])
    monkeypatch.setattr(sys, "argv", ["typesetter_libraries.py", "--debian"])
    assert typesetter_libraries.main() == 2
    assert capsys.readouterr() == ("libharfbuzz-subset0\n", "")
    monkeypatch.setattr(sys, "argv", ["typesetter_libraries.py"])
    assert typesetter_libraries.main() == 2
    assert capsys.readouterr().err == how_to_install([LIBRARIES[3]]) + "\n"


def test_the_packages_that_readme_names_are_those_told_here() -> None:
    readme = (Path(__file__).parents[2] / "README.md").read_text("utf-8")
    named = set(re.findall(r"\blib[a-z0-9.+-]*\d\b", readme))
    assert {"libpango-1.0-0", "libharfbuzz-subset0"} <= named <= set(packages(list(LIBRARIES)))
