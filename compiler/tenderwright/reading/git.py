"""Ask git, so that nothing of a stranger's repository runs: the one place where git is called.

A repository may come from anybody, by clone or as a folder with a `.git` of its own, and its settings can name programs
that git starts. So four things hold for every call. Only commands that convert, compare, show and fetch nothing are
asked (`_COMMANDS`), since the filters and drivers of a repository have names that no one can shut off beforehand. The
repository is named outright, so that a bare one lying among the files is never taken for it, and `core.worktree` leads
nowhere. What else could start a program is overruled on the command line, which wins over every file (`_OVERRULED`).
And git sees nothing that the user or the machine has set up for it, but in two questions whose answer is theirs:
whether they trust the repository of another user (`safe.directory`), and under which name they make a tag.
"""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Iterator, Mapping
from pathlib import Path

from msgspec import Struct

_COMMANDS = frozenset(
    {"cat-file", "check-ignore", "for-each-ref", "ls-tree", "remote", "rev-list", "rev-parse", "tag", "var"}
)
_IN_ONE_OF_OUR_OWN = frozenset({"init", "update-ref", "read-tree", "checkout"})
"""What is asked only of a repository that we have made ourselves, whose settings are ours."""

_OVERRULED = (
    "safe.bareRepository=explicit",
    "core.fsmonitor=false",
    "core.hooksPath=/dev/null",
    "core.attributesFile=/dev/null",
    "core.excludesFile=/dev/null",
    "core.pager=cat",
    "core.editor=false",
    "core.askPass=",
    "core.sshCommand=false",
    "credential.helper=",
    "diff.external=",
    "gpg.program=false",
    "gpg.ssh.program=false",
    "gpg.x509.program=false",
    "gpg.ssh.defaultKeyCommand=",
    "tag.gpgSign=false",
    "tag.forceSignAnnotated=false",
    "log.showSignature=false",
    "submodule.recurse=false",
    "protocol.allow=never",
)
_SET = {
    "LC_ALL": "C",
    "GIT_ALLOW_PROTOCOL": "",  # nothing is fetched, not even objects that a partial clone left out
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_NO_REPLACE_OBJECTS": "1",  # a commit is what its name says, as in any clone of it
    "GIT_GRAFT_FILE": os.devnull,
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_PAGER": "cat",
    "GIT_EDITOR": "false",
    "GIT_ASKPASS": "",
    "SSH_ASKPASS": "",
}
_UNSEEN = {
    "HOME": os.devnull,
    "XDG_CONFIG_HOME": os.devnull,
    "GIT_CONFIG_GLOBAL": os.devnull,
    "GIT_CONFIG_NOSYSTEM": "1",
    "GIT_ATTR_NOSYSTEM": "1",
}
_SET_BY_HOOKS = (
    "GIT_DIR",
    "GIT_WORK_TREE",
    "GIT_INDEX_FILE",
    "GIT_PREFIX",
    "GIT_COMMON_DIR",
    "GIT_OBJECT_DIRECTORY",
    "GIT_ALTERNATE_OBJECT_DIRECTORIES",
)
"""What git sets for its hooks, which may mean another repository or index than that of the folder."""
_KEPT = ("GIT_COMMITTER_DATE",)
"""What a user says to git in the environment that counts for us too."""


class Refused(Exception):
    """There is a repository and git does not read it; the message says why, then the cure where there is one."""

    def __init__(self, why: str, cure: str = "") -> None:
        super().__init__(f"{why}; {cure}" if cure else why)
        self.why = why
        self.cure = cure


class Answer(Struct, frozen=True):
    """What git answered."""

    code: int
    out: bytes
    complaint: str

    @property
    def text(self) -> str:
        """Give the answer as text, without the line feed at its end."""
        return os.fsdecode(self.out).removesuffix("\n")


class Repository(Struct, frozen=True):
    """A repository: the folder whose files it keeps, and the folder where it keeps them."""

    top: Path
    hidden: Path
    ours: bool = False
    """Whether we have made it ourselves."""

    @property
    def _named(self) -> tuple[str, str]:
        return f"--git-dir={self.hidden}", f"--work-tree={self.top}"

    def ask(self, *words: str, given: bytes = b"", environment: Mapping[str, str] | None = None) -> Answer:
        """Run git at the top of the repository with some words and an input, and give its answer, whatever it is."""
        if words[0] not in (_COMMANDS | _IN_ONE_OF_OUR_OWN if self.ours else _COMMANDS):
            raise RuntimeError(f"`git {words[0]}` may run programs of the repository")
        return _run(self.top, (*self._named, *words), given, _apart_from_the_user() | dict(environment or {}))

    def answer(self, *words: str) -> str | None:
        """Run git and give its answer as text, or None where it refuses."""
        answered = self.ask(*words)
        return answered.text if answered.code == 0 else None

    def path_of(self, folder: Path) -> str:
        """Give the path from the top to a folder below it, with a slash at its end; empty for the top itself."""
        return _path(self.top, folder)

    def identity(self) -> dict[str, str] | None:
        """Give who makes tags here, as git's environment names them; None where git does not know.

        The user's own settings are looked at, and whatever else the environment says to git.
        """
        said = _run(self.top, (*self._named, "var", "GIT_COMMITTER_IDENT"), b"", _as_the_user())
        name, _, rest = said.text.rpartition(" <")
        if said.code != 0 or not name:
            return None
        return {"GIT_COMMITTER_NAME": name, "GIT_COMMITTER_EMAIL": rest.partition(">")[0]}


def repository_of(folder: Path) -> Repository | None:
    """Find the repository that a folder lies in, or None; raises `Refused` where git does not read it."""
    top = next(_tops(folder.resolve()), None)
    if top is None:
        return None
    environment = _as_the_user() | {"GIT_CEILING_DIRECTORIES": str(top.parent)}
    found = _run(top, ("rev-parse", "--absolute-git-dir"), b"", environment)
    hidden = Path(found.text)
    if found.code == 0 and hidden != top:
        return Repository(top, hidden)
    if "safe.directory" in found.complaint:
        from shlex import quote  # only where git refuses

        raise Refused(
            f"the repository at `{top}` belongs to another user of this machine, so git does not read it",
            f"if you trust it, say so: `git config --global --add safe.directory {quote(str(top))}`",
        )
    complaint = found.complaint.partition("\n")[0].removeprefix("fatal: ") or "its `.git` is not a repository"
    raise Refused(f"git does not read the repository at `{top}`: {complaint}")


def path_in_repository(folder: Path) -> str:
    """Give the path from the top of its repository to a folder, with a slash at its end; empty where there is none."""
    top = next(_tops(folder.resolve()), None)
    return "" if top is None else _path(top, folder)


def new_repository(folder: Path, *words: str) -> Repository:
    """Make a repository of our own in an empty folder; raises `Refused` where git does not."""
    made = _run(folder, ("init", "--quiet", "--template=", *words), b"", _apart_from_the_user())
    if made.code != 0:
        raise Refused(made.complaint)
    return Repository(folder, folder / ".git", ours=True)


def _path(top: Path, folder: Path) -> str:
    path = folder.resolve().relative_to(top).as_posix()
    return "" if path == "." else f"{path}/"


def _tops(folder: Path) -> Iterator[Path]:
    """Give each folder, from here upwards, that is the top of a repository by the look of its `.git`.

    A bare repository that lies among the files has none, and is passed by.
    """
    ceilings = {
        Path(path).resolve() for path in os.environ.get("GIT_CEILING_DIRECTORIES", "").split(os.pathsep) if path
    }
    for top in (folder, *folder.parents):
        if top in ceilings and top != folder:
            return
        if _is_repository(top / ".git"):
            yield top


def _is_repository(hidden: Path) -> bool:
    try:
        os.lstat(hidden / "HEAD")
    except PermissionError:
        return True
    except OSError:
        return hidden.is_file()  # which names a folder elsewhere
    return True


def _run(folder: Path, words: tuple[str, ...], given: bytes, environment: Mapping[str, str]) -> Answer:
    program = _program()
    if program is None:
        return Answer(127, b"", "git is not installed")
    overruled = [word for setting in _OVERRULED for word in ("-c", setting)]
    done = subprocess.run(
        [program, "--no-pager", *overruled, *words],
        cwd=folder,
        input=given,
        capture_output=True,
        env=environment,
        check=False,
    )
    return Answer(done.returncode, done.stdout, os.fsdecode(done.stderr).strip())


def _program() -> str | None:
    """Find git on the search path, never in the folder that we happen to stand in."""
    folders = [Path(folder) for folder in os.environ.get("PATH", os.defpath).split(os.pathsep)]
    found = (shutil.which(str(folder / "git")) for folder in folders if folder.is_absolute())
    return next((program for program in found if program is not None), None)


def _apart_from_the_user() -> dict[str, str]:
    """Give an environment in which git knows nothing that the user or the machine has set up for it."""
    kept = {name: text for name, text in os.environ.items() if not name.startswith("GIT_") or name in _KEPT}
    return kept | _SET | _UNSEEN


def _as_the_user() -> dict[str, str]:
    """Give an environment in which git knows what the user has set up, and nothing that a hook has."""
    return {name: text for name, text in os.environ.items() if name not in _SET_BY_HOOKS} | _SET
