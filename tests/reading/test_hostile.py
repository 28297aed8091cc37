"""A stranger's repository is safe to meet: nothing that it names runs, and the outcome is that of a harmless one."""

from __future__ import annotations

import os
import re
import shlex
import shutil
import subprocess
from pathlib import Path

import pytest

from tenderwright.pipeline import read
from tenderwright.reading import git as module
from tenderwright.reading.at_commit import NotAtCommit, package_at
from tenderwright.reading.git import Refused, repository_of
from tenderwright.reading.git_state import git_state, uncommitted
from tenderwright.reading.issued import issued
from tenderwright.writing.tag import may_tag, tag_commit
from tests.fixtures.hostile import HOSTILE, RIVETS, canary_in, ran, settings, taken
from tests.fixtures.issue import issue
from tests.pipeline.packages import QUIET_GIT, commit, edit, git, starter


@pytest.fixture(scope="module")
def harmless(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A repository with a package below its top, issued once and changed since."""
    top = tmp_path_factory.mktemp("harmless") / "ships"
    root = starter(top / "sandling")
    (top / ".gitattributes").write_text("*.yaml filter=spoil diff=spoil\n", "utf-8")
    issue(root, "issue-1", repository=top)
    edit(root, RIVETS, "quantity: 40 each", "quantity: 41 each")
    commit(top, "changed")
    return top


@pytest.fixture
def top(harmless: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of it, as an unpacked archive gives it, to be made hostile."""
    for name, text in QUIET_GIT.items():
        monkeypatch.setenv(name, text)
    return Path(shutil.copytree(harmless, tmp_path / "ships"))


@pytest.fixture
def canary(tmp_path: Path) -> Path:
    return canary_in(tmp_path)


def _outcome(top: Path) -> tuple[object, ...]:
    """Give all that is asked of git, and make a tag."""
    root = top / "sandling"
    files = read(root)
    sources = files.without_owner().sources
    with package_at(root, "issue-1") as folder:
        then = read(folder).sources, git_state(folder, ["package.yaml"])
    may_tag(root, "issue-2")
    tag_commit(root, "issue-2", "HEAD", "A tag\n")
    tag = git(top, "cat-file", "tag", "issue-2").partition("tagger ")[2]
    texts = {path: source.text for path, source in files.sources.items() if path not in ("HEAD", "config")}
    return (
        {**files.issued},
        issued(root),
        git_state(root, sources).state,
        uncommitted(root, [path for path in sources if path not in ("HEAD", "config")]),
        {path: source.text for path, source in then[0].items()},
        then[1],
        tag,
        texts,
    )


@pytest.fixture(scope="module")
def wanted(harmless: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[object, ...]:
    with pytest.MonkeyPatch.context() as patch:
        for name, text in QUIET_GIT.items():
            patch.setenv(name, text)
        return _outcome(Path(shutil.copytree(harmless, tmp_path_factory.mktemp("copy") / "ships")))


@pytest.mark.parametrize("kind", HOSTILE)
def test_nothing_runs_and_the_outcome_is_right(kind: str, top: Path, canary: Path, wanted: tuple[object, ...]) -> None:
    spoil, bait = HOSTILE[kind]
    spoil(top, canary)
    ran(canary)
    outcome = _outcome(top)
    assert not ran(canary)
    assert outcome == wanted
    assert taken(top, bait, canary), "git itself runs nothing here, so this shows nothing"


def test_objects_that_were_left_out_are_not_fetched(top: Path, canary: Path) -> None:
    blob = git(top, "rev-parse", f"issue-1:sandling/{RIVETS}")
    (top / ".git" / "objects" / blob[:2] / blob[2:]).unlink()
    settings(
        "core.repositoryFormatVersion=1",
        "extensions.partialClone=origin",
        "remote.origin.promisor=true",
        "remote.origin.url=host:x",
        "core.sshCommand=CANARY",
    )(top, canary)
    files = read(top / "sandling")
    assert RIVETS not in files.issued["issue-1"]
    assert "items/210-hull-wash.yaml" in files.issued["issue-1"]
    with pytest.raises(NotAtCommit, match="cannot be checked out"), package_at(top / "sandling", "issue-1"):
        pytest.fail("it was given")
    assert not ran(canary)
    assert taken(top, f"cat-file -p {blob}", canary)


def test_a_commit_is_what_its_name_says(top: Path) -> None:
    before = git_state(top / "sandling", ["package.yaml"])
    git(top, "replace", "HEAD", "HEAD~1")
    assert git_state(top / "sandling", ["package.yaml"]) == before
    assert uncommitted(top / "sandling", ["package.yaml"]) == []


def test_git_is_not_taken_from_where_we_stand(top: Path, canary: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copy(canary, top / "git")
    monkeypatch.chdir(top)
    monkeypatch.setenv("PATH", os.pathsep.join(("", ".", os.environ["PATH"])))
    assert git_state(Path("sandling"), ["package.yaml"]).state == "issued"
    assert not ran(canary)


def test_the_repository_of_another_user_is_refused_in_words_until_it_is_trusted(
    top: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = top.rename(tmp_path / "sand ling") / "sandling"
    monkeypatch.setenv("GIT_TEST_ASSUME_DIFFERENT_OWNER", "1")
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", str(tmp_path / "settings"))
    cure = f"git config --global --add safe.directory '{root.parent}'"
    with pytest.raises(Refused, match="belongs to another user of this machine") as refused:
        repository_of(root)
    assert refused.value.cure == f"if you trust it, say so: `{cure}`"
    (notice,) = [notice for notice in read(root).notices if notice.code == "repository-refused"]
    assert notice.hints == (refused.value.cure,)
    assert "git does not read the repository" in git_state(root, []).label
    with pytest.raises(NotAtCommit, match="belongs to another user"), package_at(root, "HEAD"):
        pytest.fail("it was given")
    subprocess.run(shlex.split(cure), check=True)
    assert git_state(root, ["package.yaml"]).state == "issued"
    assert read(root).issued.keys() == {"issue-1"}


def test_only_commands_that_run_nothing_are_asked(top: Path) -> None:
    repository = repository_of(top)
    assert repository is not None
    with pytest.raises(RuntimeError, match="`git status` may run programs of the repository"):
        repository.ask("status")


def test_git_is_called_in_one_place_and_nothing_else_is_but_our_own_workers() -> None:
    code = Path(module.__file__).parents[1]
    starts = re.compile(r"\bimport subprocess|\bos\.(system|popen|exec|spawn|posix_spawn)|create_subprocess")
    assert [path.name for path in code.rglob("*.py") if starts.search(path.read_text("utf-8"))] == [
        "git.py",
        "worker.py",
    ]
