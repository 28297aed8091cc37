"""Run the commands that README prints, in their order and in one shell, from a copy of the repository."""

from __future__ import annotations

import os
import re
import shlex
import shutil
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from tests.architecture.tree import REPOSITORY, tracked
from tests.pipeline.packages import QUIET_GIT

README = REPOSITORY / "README.md"
_FENCE = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
_SHOWN = re.compile(r"(?P<file>\S+?):(?P<line>\d+):\d+: error\[.*\n *\d+ \| (?P<text>.*)\n")
_NEVER = re.compile(r"make test\b|.*--watch\b")
"""What would test the tests, or does not end."""


@dataclass(frozen=True)
class Fence:
    """A block of README between fences, and the line it begins at."""

    line: int
    kind: str
    text: str

    @property
    def commands(self) -> list[str]:
        """List the commands of a block, without the comments beside them."""
        return [line for line in self.text.splitlines() if line and not line.startswith("#")]


@dataclass(frozen=True)
class Ran:
    """What came of all commands."""

    copy: Path
    code: int
    said: dict[int, str]
    """What each block said, by the line it begins at."""


def fences() -> list[Fence]:
    """Give every block of README, in order."""
    text = README.read_text("utf-8")
    return [Fence(text.count("\n", 0, one.start()) + 1, one[1], one[2]) for one in _FENCE.finditer(text)]


def runnable(command: str) -> bool:
    """Tell whether a command can be run in a test."""
    return not _NEVER.match(command)


def run_readme(folder: Path, wanted: Callable[[str], bool]) -> Ran:
    """Run the commands that are wanted; a notice that README shows is brought about by the line that it shows."""
    copy = _copy(folder / "copy")
    script, package = ["exec 2>&1"], ""
    for fence in fences():
        shown = _SHOWN.match(fence.text)
        if fence.kind == "sh":
            commands = [command for command in fence.commands if runnable(command) and wanted(command)]
            package = next((command.split()[2] for command in commands if " check " in command), package)
        elif shown:
            commands = _mistaken(f"{package}/{shown['file']}", int(shown["line"]), shown["text"], package)
        else:
            continue
        script += [f"echo '=== {fence.line}'", *commands]
    home = folder / "home"
    home.mkdir()
    environment = {
        **os.environ,
        **QUIET_GIT,
        "HOME": str(home),
        "PATH": f"{Path(sys.prefix) / 'bin'}{os.pathsep}{os.environ['PATH']}",
        "PYTHONPATH": str(REPOSITORY / "compiler"),
    }
    words = ["bash", "-e", "-c", "\n".join(script)]
    ran = subprocess.run(words, cwd=copy, env=environment, stdout=subprocess.PIPE, text=True, check=False)
    parts = re.split(r"^=== (\d+)\n", ran.stdout, flags=re.MULTILINE)
    return Ran(copy, ran.returncode, dict(zip(map(int, parts[1::2]), parts[2::2], strict=True)))


def _mistaken(file: str, line: int, text: str, package: str) -> list[str]:
    """Put a line with a mistake into a file, check, and put the file back."""
    name, put = shlex.quote(file), shlex.quote(f"{line}c\\{text}")
    check = f"tenderwright check {package} || test $? = 1"
    return [f"cp {name} kept", f"sed -i {put} {name}", check, f"mv kept {name}"]


def _copy(folder: Path) -> Path:
    """Copy the repository, with a set-up of its own that is this very Python's, done after all else is written."""
    for file in tracked():
        target = folder / file.relative_to(REPOSITORY)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(file, target)
    set_up = folder / ".venv"
    set_up.mkdir()
    for path in Path(sys.prefix).iterdir():
        if not path.name.startswith("."):
            (set_up / path.name).symlink_to(path)
    (set_up / ".ready").write_text(f"{folder.resolve()}\n", "utf-8")  # set up for this very folder
    return folder
