"""Lay the life of a tender as a git repository of its own, one commit and one tag a chapter: `make life`.

A life is told in a file such as marram.yaml. It rests on the package as it stands today and on nothing in the history
of this project, so a change of the format is made there and in the few lines that the chapters changed.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

import yaml

from tests.pipeline.packages import MARRAM, QUIET_GIT, files_of

MARRAMS_LIFE = Path(__file__).with_name("marram.yaml")
FINDINGS = Path(__file__).parents[1] / "fixtures" / "findings"
"""What was found in Marram's docking, for `close`, lies beside her life."""

Package = dict[str, bytes]


@dataclass(frozen=True)
class Chapter:
    """What one commit brought."""

    chapter: str
    day: date
    words: str
    new: list[str] = field(default_factory=list)
    changed: dict[str, list[dict[str, str]]] = field(default_factory=dict)


@dataclass(frozen=True)
class Stage:
    """The package as a chapter left it."""

    chapter: Chapter
    files: Package


def stages(life: Path = MARRAMS_LIFE, package: Path = MARRAM) -> list[Stage]:
    """Give every stage of a life, the first chapter first; the last is the package as it stands."""
    files = {path: content for path, content in files_of(package).items() if not path.startswith("build/")}
    found = []
    for told in reversed(yaml.safe_load(life.read_text("utf-8"))):
        chapter = Chapter(**told)
        found.append(Stage(chapter, files))
        files = undone(files, chapter)
    return found[::-1]


def undone(files: Package, chapter: Chapter) -> Package:
    """Give a package as it was before a chapter."""
    earlier = dict(files)
    for path in chapter.new:
        del earlier[path]
    for path, edits in chapter.changed.items():
        text = earlier[path].decode()
        for edit in edits:
            text = put_back(text, edit.get("was", ""), edit["now"], f"{chapter.chapter}, {path}")
        earlier[path] = text.encode()
    return earlier


def put_back(text: str, was: str, now: str, where: str) -> str:
    """Put earlier lines where later ones stand, at their indentation; raises ValueError unless they stand once."""
    lines = r"\n(?P=indent)".join(re.escape(line) for line in now.splitlines())
    found = list(re.finditer(rf"^(?P<indent> *){lines}\n", text, re.MULTILINE))
    if len(found) != 1:
        raise ValueError(f"{where}: found {len(found)} times, and it should be once:\n{now}")
    earlier = "".join(f"{found[0]['indent']}{line}\n" for line in was.splitlines())
    return text[: found[0].start()] + earlier + text[found[0].end() :]


def lay(folder: Path, told: Iterable[Stage]) -> Path:
    """Make a repository of a life in a folder that is not there yet; whoever lays it gets the same commits."""
    folder.mkdir(parents=True)
    _git(folder, "init", "--quiet", "--initial-branch=main")
    _git(folder, "config", "user.name", QUIET_GIT["GIT_AUTHOR_NAME"])
    _git(folder, "config", "user.email", QUIET_GIT["GIT_AUTHOR_EMAIL"])
    (folder / ".gitignore").write_text("build/\n", "utf-8")
    for stage in told:
        for path, content in stage.files.items():
            (folder / path).parent.mkdir(parents=True, exist_ok=True)
            (folder / path).write_bytes(content)
        noon = f"{stage.chapter.day}T12:00:00+00:00"
        _git(folder, "add", "--all")
        _git(folder, "commit", "--quiet", "--message", stage.chapter.words, at=noon)
        _git(folder, "tag", stage.chapter.chapter)
    return folder


def _git(folder: Path, *words: str, at: str = "") -> None:
    environment = {**os.environ, **QUIET_GIT, "GIT_AUTHOR_DATE": at, "GIT_COMMITTER_DATE": at}
    subprocess.run(["git", "-C", str(folder), *words], env=environment, check=True)


def main(folder: Path) -> None:
    """Lay Marram's life in a folder, her findings beside it, and list the chapters."""
    root = folder / "marram"
    if root.exists():
        sys.exit(f"{root} is there already; `make clean` takes it away with all that was tried in it")
    told = stages()
    lay(root, told)
    for file in FINDINGS.glob("marram-*"):
        shutil.copy(file, folder)
    print(f"{root}: a repository with one tag for each chapter")
    for stage in told:
        print(f"  {stage.chapter.day}  {stage.chapter.chapter:<10}  {stage.chapter.words}")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
