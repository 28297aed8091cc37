"""The compiler as it was at an earlier commit, beside this one on the same machine: times of whole commands."""

from __future__ import annotations

import io
import os
import resource
import shutil
import subprocess
import sys
import tarfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from time import perf_counter

REPOSITORY = Path(__file__).parents[2]
FORMER = "0864a638a08e5fa4c134d1a3ee2cdf817b0ab46f"
"""The last commit before parts were set one by one and joined."""
GIT = ("git", "-c", "user.name=Bench", "-c", "user.email=bench@example.org", "-c", "commit.gpgsign=false")
EDITED = "items/420-*.yaml"


@dataclass(frozen=True)
class Took:
    """What a command took, s."""

    processor: float
    wall: float


class NoFormer(Exception):
    """The history of this repository does not hold the earlier commit."""


class Compiler:
    """A compiler in a tree of its own, with a repository of the demonstration that it brought along."""

    def __init__(self, tree: Path, work: Path) -> None:
        self._tree, self._caches = tree, work / "caches"
        self.package, self.out = work / "package", work / "out"
        shutil.copytree(tree / "package_src", self.package)
        git(self.package, "init", "--quiet")
        self.commit("The demonstration")

    def commit(self, words: str) -> None:
        """Commit what is there, be it nothing new."""
        git(self.package, "add", "--all")
        git(self.package, "commit", "--quiet", "--allow-empty", "--message", words)

    def edit(self, words: str) -> None:
        """Put words before the scope of one item."""
        (item,) = self.package.glob(EDITED)
        self._replace(item, "scope: |\n  ", f"scope: |\n  {words} ")

    def amend(self) -> None:
        """List an addendum, as one that changes this item."""
        entry = "  - number: 3\n    date: 2027-02-08\n    summary: The scope of item 420 is told more clearly\n"
        self._replace(self.package / "package.yaml", "yard_questions:\n", f"{entry}yard_questions:\n")
        (item,) = self.package.glob(EDITED)
        self._replace(item, "revision: 0\n", "revision: 1\n")

    def _replace(self, file: Path, before: str, after: str) -> None:
        text = file.read_text("utf-8")
        if before not in text:
            raise ValueError(f"{file.name} does not hold {before!r}")
        file.write_text(text.replace(before, after, 1), "utf-8")

    def forget(self) -> None:
        """Throw away what is kept between runs."""
        shutil.rmtree(self._caches, ignore_errors=True)

    def run(self, *words: str | Path) -> Took:
        """Run a command in a process of its own, and give what it and its own processes took."""
        return self.python("-m", "tenderwright", *words)

    def python(self, *words: str | Path) -> Took:
        """Run Python in this tree."""
        own = {"PYTHONPATH": str(self._tree / "compiler"), "XDG_CACHE_HOME": str(self._caches)}
        keeping = {name: text for name, text in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
        start, before = perf_counter(), _spent()
        done = subprocess.run(
            [sys.executable, *map(str, words)], cwd=self._tree, env=keeping | own, capture_output=True, text=True
        )
        if done.returncode:
            raise RuntimeError(f"{' '.join(map(str, words))} ended with {done.returncode}: {done.stderr[-500:]}")
        return Took(_spent() - before, perf_counter() - start)

    def build(self) -> Took:
        """Build all papers."""
        return self.run("build", self.package, "--out", self.out)


def git(folder: Path, *words: str) -> None:
    """Run git in a folder."""
    subprocess.run([*GIT, *words], cwd=folder, check=True, capture_output=True)


def _spent() -> float:
    """Give the processor time of all processes that ended, s."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


@contextmanager
def compilers(folder: Path) -> Iterator[tuple[Compiler, Compiler]]:
    """Give this compiler and the former one, each with its own package, their bytecode compiled.

    Raises NoFormer where the history does not hold the earlier commit.
    """
    packed = subprocess.run([*GIT, "archive", FORMER], cwd=REPOSITORY, capture_output=True)
    if packed.returncode:
        raise NoFormer(f"the history does not hold {FORMER[:7]}: {packed.stderr.decode().strip()}")
    tree = folder / "former"
    with tarfile.open(fileobj=io.BytesIO(packed.stdout)) as archive:
        archive.extractall(tree, filter="data")
    made = []
    for name, where in (("ours", REPOSITORY), ("other", tree)):
        work = folder / name
        work.mkdir()
        one = Compiler(where, work)
        one.run("check", one.package)
        made.append(one)
    yield made[0], made[1]


def issued(one: Compiler) -> dict[str, Took]:
    """Time what goes to yards: an issue, the proof of its parcel, and an addendum."""
    took = {"issue": one.run("issue", one.package, "--tag", "bench-1", "--out", one.out)}
    (parcel,) = (one.out / "issued").rglob("*-yard.zip")
    took["verify"] = one.run("verify", parcel, "--in", one.package)
    one.edit("Once.")
    one.amend()
    one.commit("An addendum")
    took["addendum"] = one.run("addendum", one.package, "bench-1", "HEAD", "--out", one.out / "addenda")
    return took
