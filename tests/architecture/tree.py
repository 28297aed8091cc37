"""What the tests of the architecture look at: the modules of the compiler and what each imports."""

from __future__ import annotations

import ast
import re
import subprocess
from dataclasses import dataclass
from functools import cache
from pathlib import Path

REPOSITORY = Path(__file__).parents[2]
COMPILER = REPOSITORY / "compiler" / "tenderwright"

STAGES = ("reading", "shapes", "model", "linking", "calculations", "pricing", "planning", "checks", "comparing",
          "documents", "writing", "commands")  # fmt: skip
"""The stages, from the first to the last; pricing and planning stand beside each other."""

FOR_ALL = ("notices", "quantities")
"""What every stage may import."""

BESIDE = ("starter",)
"""What is no stage; only commands import it."""


@dataclass(frozen=True)
class Module:
    """One module: its path below the package, its syntax tree, and the modules of ours that it imports."""

    path: Path
    tree: ast.Module

    @property
    def name(self) -> str:
        """Give the path as text, such as `reading/source.py`."""
        return self.path.as_posix()

    @property
    def folder(self) -> str:
        """Name the folder it stands in below the package; empty for pipeline.py and its like."""
        return self.path.parts[0] if len(self.path.parts) > 1 else ""

    @property
    def imports(self) -> list[str]:
        """List every module it imports, at the top or inside a function, by full name."""
        found = []
        for node in ast.walk(self.tree):
            if isinstance(node, ast.ImportFrom):
                assert node.level == 0, f"{self.name}: imports are written in full"
                found += [f"{node.module}.{alias.name}" for alias in node.names]
            elif isinstance(node, ast.Import):
                found += [alias.name for alias in node.names]
        return found

    @property
    def ours(self) -> list[list[str]]:
        """List the imports from the package itself, in parts below it."""
        return [name.split(".")[1:] for name in self.imports if name.split(".")[0] == "tenderwright"]


@cache
def modules() -> tuple[Module, ...]:
    """Give every module of the compiler."""
    paths = sorted(COMPILER.rglob("*.py"))
    return tuple(Module(path.relative_to(COMPILER), ast.parse(path.read_text("utf-8"))) for path in paths)


@cache
def tracked() -> tuple[Path, ...]:
    """List the files that belong to the repository, tracked or about to be; all but outputs where there is no git."""
    try:
        words = ["git", "ls-files", "--cached", "--others", "--exclude-standard"]
        out = subprocess.run(words, cwd=REPOSITORY, capture_output=True, text=True, check=True).stdout
    except (OSError, subprocess.CalledProcessError):
        skip = re.compile(r"(^|/)(\.[^/]*|__pycache__|build|dist)(/|$)")
        out = "\n".join(p for f in REPOSITORY.rglob("*") if not skip.search(p := f.relative_to(REPOSITORY).as_posix()))
    files = (REPOSITORY / line for line in out.splitlines())
    return tuple(file for file in files if file.is_file())
