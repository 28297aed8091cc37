"""Commands that typeset stop before they read where the typesetter could not start; the others need none of it."""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pytest

from tenderwright import commands
from tenderwright.writing import typesetter_libraries

from .run import Runner, package

TYPESET = {
    "build": ["build", "no-such-folder"],
    "watch": ["build", "no-such-folder", "--watch"],
    "issue": ["issue", "no-such-folder", "--tag", "issue-1"],
    "verify": ["verify", "no-such.zip", "--in", "no-such-folder"],
    "addendum": ["addendum", "no-such-folder", "one", "other"],
    "grant": ["grant", "no-such-folder", "county"],
    "bids_compare": ["bids", "compare", "no-such-folder"],
    "statement": ["statement", "no-such-folder"],
    "close": ["close", "no-such-folder", "findings.yaml"],
    "diff": ["diff", "no-such-folder", "one"],
}


@pytest.fixture
def no_typesetter(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Hide HarfBuzz-Subset and the typesetter itself, in an empty folder."""
    monkeypatch.setattr(typesetter_libraries, "_loads", lambda library: library.title != "HarfBuzz-Subset")
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    monkeypatch.chdir(tmp_path)


@pytest.mark.usefixtures("no_typesetter")
@pytest.mark.parametrize("words", TYPESET.values(), ids=TYPESET)
def test_a_command_that_typesets_says_what_is_missing_before_it_reads(
    run: Runner, tmp_path: Path, words: list[str]
) -> None:
    ran = run(*words)
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("tenderwright: the typesetter cannot start: HarfBuzz-Subset is not found on this machine")
    assert "sudo apt-get install libharfbuzz-subset0\n" in ran.err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.usefixtures("no_typesetter")
def test_a_sound_package_is_not_half_built(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "ship")
    assert run("build", root, "--out", tmp_path / "out").code == 2
    assert list(tmp_path.iterdir()) == [root]


@pytest.mark.usefixtures("no_typesetter")
def test_the_others_need_no_typesetter(run: Runner, tmp_path: Path) -> None:
    assert run("start", tmp_path / "ship").code == 0
    assert run("check", tmp_path / "ship").code == 0
    assert run("explain", tmp_path / "ship", "110").code == 0
    assert run("explain", "stale-price").code == 0
    assert run("reckon", "--list").code == 0
    assert "typesetter" not in run("bids", "read", tmp_path / "ship", "no-such.xlsx", "--received", "2027-12-09").err


def test_every_command_that_reaches_the_typesetter_asks_for_it() -> None:
    folder = Path(commands.__file__).parent
    texts = {path.stem: path.read_text("utf-8") for path in folder.glob("*.py")}
    reach = {name for name, text in texts.items() if re.search(r"\bTypesetter\(|\byard_at\(|\bbuild_once\(", text)}
    asks = {name for name, text in texts.items() if re.search(r"^ +need_typesetter\(\)$", text, re.M)}
    below = {"watch", "yard_at"}
    """What only such a command calls."""
    assert reach - below == asks
    assert asks | {"watch"} == set(TYPESET)
