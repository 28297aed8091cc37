"""Ask git: one command, run in a folder, without a shell."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

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


@dataclass(frozen=True)
class Answer:
    """What git answered."""

    code: int
    out: bytes
    complaint: str

    @property
    def text(self) -> str:
        """Give the answer as text, without the line feed at its end."""
        return os.fsdecode(self.out).removesuffix("\n")


def ask(root: Path, *words: str, given: bytes = b"", environment: Mapping[str, str] | None = None) -> Answer:
    """Run git in a folder with some words and an input, and give its answer, whatever it is."""
    command = ["git", "-C", str(root), *words]
    try:
        done = subprocess.run(
            command, input=given, capture_output=True, env=environment or _surroundings(), check=False
        )
    except FileNotFoundError:
        return Answer(127, b"", "git is not installed")
    return Answer(done.returncode, done.stdout, os.fsdecode(done.stderr).strip())


def answer(root: Path, *words: str, given: bytes = b"") -> str | None:
    """Run git in a folder and give its answer as text, or None where it refuses."""
    answered = ask(root, *words, given=given)
    return answered.text if answered.code == 0 else None


def _surroundings() -> dict[str, str]:
    """Give the environment without what a hook sets; git fetches nothing and writes no index by the way."""
    kept = {name: text for name, text in os.environ.items() if name not in _SET_BY_HOOKS}
    return kept | {"GIT_NO_LAZY_FETCH": "1", "GIT_OPTIONAL_LOCKS": "0"}


def apart_from_the_user(home: Path) -> dict[str, str]:
    """Give an environment in which git knows nothing that the user or the machine has set up for it."""
    kept = {name: text for name, text in os.environ.items() if not name.startswith("GIT_")}
    return kept | {
        "HOME": str(home),
        "XDG_CONFIG_HOME": str(home),
        "GIT_CONFIG_GLOBAL": os.devnull,
        "GIT_CONFIG_NOSYSTEM": "1",
        "GIT_ATTR_NOSYSTEM": "1",
        "GIT_NO_LAZY_FETCH": "1",
        "GIT_TERMINAL_PROMPT": "0",
    }
