"""No test hangs on a clock, and none is skipped but for what a machine cannot have."""

from __future__ import annotations

import ast

import pytest

from .tree import REPOSITORY

TESTS = REPOSITORY / "tests"
NO_TESTS = ("bench/", "fuzz/__main__.py", "fuzz/costs.py", "fuzz/method_costs.py")
FILES = [path for path in sorted(TESTS.rglob("*.py")) if not path.relative_to(TESTS).as_posix().startswith(NO_TESTS)]
"""Every file of the tests but the bench, which measures, and the fuzz that goes on for as long as it is told."""

CLOCKS = {"now", "today", "utcnow"}
SKIPPING = {
    "architecture/test_programs.py": "the test of skipping itself",
    "programs.py": "a program beside Python that is not on the machine; in CI it fails",
    "pipeline/test_bad_input.py": "a file that may not be read, which root reads all the same",
    "pricing/test_price.py": "the owner's papers of the demonstration, where they are kept elsewhere",
}
"""The files that skip a test, each with what for."""


def clocks_in(tree: ast.Module) -> list[str]:
    """List what reads a clock or sets a limit of time: by line, what it is."""
    found = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found += [f"{node.lineno}: {one.name}" for one in node.names if one.name in ("time", "timeit")]
        elif isinstance(node, ast.ImportFrom) and node.module in ("time", "timeit"):
            found.append(f"{node.lineno}: {node.module}")
        elif isinstance(node, ast.Call):
            name = getattr(node.func, "attr", getattr(node.func, "id", ""))
            limits = {"timeout", "deadline"} if name == "settings" else {"timeout"}
            found += [f"{node.lineno}: {one.arg}" for one in node.keywords if one.arg in limits and not _far(one.value)]
            found += [f"{node.lineno}: {name}"] if name in CLOCKS else []
    return found


def _far(value: ast.expr) -> bool:
    """Tell whether a limit is none, or the ceiling that ends the waiting for what never comes."""
    return ast.unparse(value) in ("0", "CEILING")


def skips_in(tree: ast.Module) -> bool:
    """Tell whether a file skips a test."""
    names = {node.attr for node in ast.walk(tree) if isinstance(node, ast.Attribute)}
    return bool(names & {"skip", "skipif", "importorskip", "xfail"})


@pytest.fixture(scope="module")
def trees() -> dict[str, ast.Module]:
    return {path.relative_to(TESTS).as_posix(): ast.parse(path.read_text("utf-8")) for path in FILES}


def test_no_test_hangs_on_a_clock(trees: dict[str, ast.Module]) -> None:
    assert [f"{name}:{one}" for name, tree in trees.items() for one in clocks_in(tree)] == []
    assert len(trees) > 300


def test_tests_are_skipped_only_for_what_is_listed(trees: dict[str, ast.Module]) -> None:
    assert {name for name, tree in trees.items() if skips_in(tree)} == set(SKIPPING)


def test_the_test_itself_finds_what_is_wrong() -> None:
    tree = ast.parse(
        "import time\nfrom time import sleep\nfrom datetime import time\nday = date.today()\n"
        "@settings(deadline=20)\ndef test(): run(timeout=3, check=True), run(timeout=CEILING)\ngrant(deadline=day)\n"
    )
    assert clocks_in(tree) == ["1: time", "2: time", "4: today", "5: deadline", "6: timeout"]
    assert skips_in(ast.parse("pytest.skip('no')"))
    assert not skips_in(ast.parse("skip = 1"))
