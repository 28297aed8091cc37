"""Where editions go is judged before any work, in the same way by every command that writes one."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tenderwright.writing.lock import LOCK
from tests.pipeline.packages import commit, edit, files_of, git, starter

from .run import Ran, Runner

pytestmark = pytest.mark.usefixtures("git_knows_who")

FINDINGS = Path(__file__).parents[1] / "fixtures" / "findings" / "sandling-2027.yaml"
ADDENDUM = "addenda:\n  - { number: 1, date: 2027-11-08, summary: More rivets }\nservices:"
COMMANDS = {
    "yard": ("build", "ROOT"),
    "owner": ("build", "ROOT", "--only", "owner"),
    "preview": ("build", "ROOT", "--only", "yard", "--watch"),
    "issued/issue-1": ("issue", "ROOT", "--tag", "issue-1"),
    "addendum-1": ("addendum", "ROOT", "HEAD~1", "HEAD"),
    "grant-county": ("grant", "ROOT", "county"),
    "statement-2028-04-09": ("statement", "ROOT", "--on", "2028-04-09"),
    "bids": ("bids", "compare", "ROOT"),
    "docking-report": ("close", "ROOT", str(FINDINGS)),
}
"""Each by the folder that it writes."""


@pytest.fixture(scope="module")
def amended(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = starter(tmp_path_factory.mktemp("amended") / "sandling")
    commit(root)
    edit(root, "package.yaml", "services:", ADDENDUM)
    commit(root, "addendum 1")
    return root


@pytest.fixture
def root(amended: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give a package that no command may begin to read."""
    monkeypatch.setattr("tenderwright.pipeline.read_package", lambda *_, **__: pytest.fail("that is work"))
    return Path(shutil.copytree(amended, tmp_path / "sandling"))


def _asked(run: Runner, root: Path, command: str, *more: object) -> Ran:
    return run(*(str(root) if word == "ROOT" else word for word in COMMANDS[command]), *map(str, more))


@pytest.mark.parametrize("command", COMMANDS)
def test_a_file_that_would_be_lost_is_named(run: Runner, root: Path, tmp_path: Path, command: str) -> None:
    letter = tmp_path / "out" / command / "letter.txt"
    letter.parent.mkdir(parents=True)
    letter.write_text("mine", "utf-8")
    before = files_of(tmp_path)
    ran = _asked(run, root, command, "--out", tmp_path / "out")
    assert (ran.code, ran.out) == (2, "")
    assert f"{letter} was not written by an earlier run, and would be lost; move it to another folder" in ran.err
    assert files_of(tmp_path) == before
    assert git(root, "tag") == ""


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize(
    ("out", "said"),
    [
        ("sandling", "nothing can be written over the package itself"),
        ("sandling/owner", "lies among the sources of the package"),
        ("sandling/owner/build", "lies among the sources of the package"),
        ("sandling/items/deep", "lies among the sources of the package"),
        ("sandling/papers", "lies among the sources of the package"),
        ("sandling/.git", "lies among the sources of the package"),
        ("sandling/package.yaml", "lies among the sources of the package"),
        ("notes.txt", "is a file where a folder belongs"),
        ("notes.txt/below", "is a file where a folder belongs"),
    ],
)
def test_a_place_that_is_none_is_refused(
    run: Runner, root: Path, tmp_path: Path, command: str, out: str, said: str
) -> None:
    (tmp_path / "notes.txt").write_text("mine", "utf-8")
    before = files_of(tmp_path)
    ran = _asked(run, root, command, "--out", tmp_path / out)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err
    assert "--out" in ran.err
    assert files_of(tmp_path) == before


@pytest.mark.parametrize("command", COMMANDS)
def test_a_disk_that_cannot_be_written_is_told(
    run: Runner, root: Path, tmp_path: Path, command: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    def read_only(**_: object) -> None:
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr("tenderwright.commands.output_folder.TemporaryFile", read_only)
    ran = _asked(run, root, command, "--out", tmp_path / "out")
    assert ran.code == 2
    assert f"`{tmp_path}` cannot be written: Read-only file system" in ran.err


@pytest.mark.parametrize("command", COMMANDS)
def test_a_folder_that_another_computer_writes_is_left_to_it(
    run: Runner, root: Path, tmp_path: Path, command: str
) -> None:
    lock = (tmp_path / "out" / command).parent / LOCK
    lock.parent.mkdir(parents=True)
    lock.write_text("process 7 on host harrow\n", "utf-8")
    ran = _asked(run, root, command, "--out", tmp_path / "out")
    assert ran.code == 2
    assert f"delete {lock} and give the command again" in ran.err


@pytest.mark.parametrize("place", ["build", ".build"])
def test_a_package_may_hold_what_is_built_from_it(run: Runner, root: Path, place: str) -> None:
    with pytest.raises(pytest.fail.Exception, match="that is work"):
        _asked(run, root, "yard", "--out", root / place)
