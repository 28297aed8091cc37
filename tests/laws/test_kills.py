"""A command killed at any moment leaves the old or the new and all that is the user's, and can be given again."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from random import Random

import pytest

from tenderwright.reading.issued import Issued, issued
from tenderwright.reading.layout import UNFINISHED
from tenderwright.writing.lock import LOCK
from tests.commands.test_bids_read import returned
from tests.pipeline.packages import QUIET_GIT, commit, edit, files_of, starter
from tests.writing.test_outputs import edition

FINDINGS = Path(__file__).parents[1] / "fixtures" / "findings" / "sandling-2027.yaml"
ADDENDUM = "addenda:\n  - { number: 1, date: 2027-11-08, summary: More rivets }\nservices:"
COMMANDS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "build": (("build", "ships", "--only", "yard", "--out", "out"), ("yard",)),
    "issue": (("issue", "ships", "--tag", "issue-1", "--out", "out"), ()),
    "addendum": (("addendum", "ships", "HEAD~1", "HEAD", "--out", "out"), ("addendum-1",)),
    "grant": (("grant", "ships", "object-classes", "--out", "out"), ("grant-object-classes",)),
    "bids read": (("bids", "read", "ships", "returned.xlsx", "--yard", "Ostrey", "--received", "2027-12-09"), ()),
    "close": (("close", "ships", str(FINDINGS), "--out", "out"), ("docking-report",)),
}
"""Each with the folders in place of an earlier edition that it writes."""
OLD = edition(stale_txt=b"stale", drawings__a_svg=b"a")
MINE = ("out/letter.txt", "out/yard-sent/price-form.xlsx", "out/.yard.mine/photo.jpg", "ships/owner/documents/mine.txt")
KILLS = range(10)
_RUN = """
import os, signal, sys
moment, every = int(sys.argv[1]), sys.argv[2] == "every"
CHANGES = {"os.rename", "os.remove", "os.rmdir", "os.mkdir", "os.link", "os.truncate", "subprocess.Popen"}
CHANGES |= {"fcntl.flock", "ctypes.dlsym"}
passed = 0
def step():
    global passed
    passed += 1
    if passed == moment + 1:
        os.kill(os.getpid(), signal.SIGKILL)
def writes(mode, flags):
    return bool(set(mode or "") & set("wxa+")) or bool(flags & (os.O_WRONLY | os.O_RDWR | os.O_CREAT))
def hook(event, words):
    if every or event in CHANGES or (event == "open" and writes(*words[1:])):
        step()
sys.addaudithook(hook)
from tenderwright.cli import main
code = main(sys.argv[3:])
step()
print(passed)
sys.exit(code)
"""
"""Runs a command that is killed before a step: one that Python tells of, or of those alone that change the disk."""


@dataclass(frozen=True)
class State:
    """All files, and the issues that tags record."""

    files: dict[str, bytes]
    issues: tuple[Issued, ...]


def _state(base: Path) -> State:
    files = {path: content for path, content in files_of(base).items() if not path.startswith(("ships/.git/", "tmp/"))}
    return State(files, issued(base / "ships"))


def _run(base: Path, command: str, moment: int = -1, steps: str = "changing") -> subprocess.CompletedProcess[str]:
    (base / "tmp").mkdir(exist_ok=True)
    return subprocess.run(
        [sys.executable, "-B", "-c", _RUN, str(moment), steps, *COMMANDS[command][0]],
        cwd=base,
        env={**os.environ, **QUIET_GIT, "TMPDIR": str(base / "tmp"), "XDG_CACHE_HOME": str(base / "tmp" / "caches")},
        capture_output=True,
        text=True,
        check=False,
    )


def _whole(base: Path, command: str, steps: str = "changing") -> int:
    """Run a command to its end, and tell in how many steps it came there."""
    ran = _run(base, command, steps=steps)
    assert ran.returncode == 0, ran.stderr
    return int(ran.stdout.split()[-1])


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give a package in git, a form returned, editions of earlier, and beside them files of the user's."""
    base = tmp_path_factory.mktemp("before")
    root = starter(base / "ships")
    commit(root)
    edit(root, "package.yaml", "services:", ADDENDUM)
    edit(root, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: 55 each")
    edit(root, "items/320-rivets-renew.yaml", "kind: contingent", "revision: 1\nkind: contingent")
    commit(root, "addendum 1")
    returned(root)
    for path in MINE:
        (base / path).parent.mkdir(parents=True, exist_ok=True)
        (base / path).write_text("mine", "utf-8")
    for folder in (name for _, names in COMMANDS.values() for name in names):
        for path, content in OLD.items():
            (base / "out" / folder / path).parent.mkdir(parents=True, exist_ok=True)
            (base / "out" / folder / path).write_bytes(content)
    return base


@dataclass(frozen=True)
class Whole:
    """What a command leaves when it is let run, and in how many steps of either sort it comes there."""

    command: str
    state: State
    steps: dict[str, int]


@pytest.fixture(scope="module", params=COMMANDS)
def whole(request: pytest.FixtureRequest, before: Path, tmp_path_factory: pytest.TempPathFactory) -> Whole:
    made = tmp_path_factory.mktemp("whole")
    steps, states = {}, []
    for sort in ("changing", "every"):
        base = Path(shutil.copytree(before, made / sort))
        steps[sort] = _whole(base, request.param, sort)
        states.append(_state(base))
    assert states[0] == states[1]
    assert steps["changing"] > 15
    return Whole(request.param, states[0], steps)


@pytest.mark.parametrize("kill", KILLS)
def test_a_kill_loses_nothing_and_the_command_can_be_given_again(
    kill: int, whole: Whole, before: Path, tmp_path: Path
) -> None:
    command, done = whole.command, whole.state
    base = Path(shutil.copytree(before, tmp_path / "base"))
    old = _state(base)
    steps = "every" if kill < 2 else "changing"
    killed = _run(base, command, Random(f"{command} {kill}").randrange(whole.steps[steps]), steps)
    assert killed.returncode == -signal.SIGKILL
    left = _state(base)
    assert {path: left.files.get(path) for path in MINE} == dict.fromkeys(MINE, b"mine")
    for folder in (*COMMANDS[command][1], "issued/issue-1"):
        held = _below(f"out/{folder}/", left)
        assert held in (_below(f"out/{folder}/", old), _below(f"out/{folder}/", done)), f"{folder} is mixed"
    assert left.issues in (old.issues, done.issues)
    sent = {True: "addendum-1", False: "issued/issue-1"}
    assert all(_below(f"out/{sent[bool(one.amends)]}/", left) for one in left.issues), "a tag without its folder"
    if f"ships/{UNFINISHED}" not in left.files:
        assert _below("ships/", left) in (_below("ships/", old), _below("ships/", done))
    _whole(base, command)
    assert _state(base) == done


def _below(folder: str, state: State) -> dict[str, bytes]:
    """Give the files below a folder, but for a lock."""
    return {path: content for path, content in state.files.items() if path.startswith(folder) and LOCK not in path}
