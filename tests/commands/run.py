"""Run the command line inside the test."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from tenderwright.cli import main
from tenderwright.starter.write import write_starter


@dataclass(frozen=True)
class Ran:
    """What a run of the command line gave."""

    code: int
    out: str
    err: str


class Runner:
    """Runs the command line and catches what it prints."""

    def __init__(self, capsys: pytest.CaptureFixture[str]) -> None:
        self.capsys = capsys

    def __call__(self, *words: str | Path) -> Ran:
        """Run the command line with these words."""
        self.capsys.readouterr()
        try:
            code = main([str(word) for word in words])
        except SystemExit as left:
            code = int(left.code or 0)
        out, err = self.capsys.readouterr()
        return Ran(code, out, err)


def package(root: Path, *changes: tuple[str, str, str]) -> Path:
    """Write the starter package, with changes of a text in a file."""
    write_starter(root)
    for path, old, new in changes:
        text = (root / path).read_text("utf-8")
        assert old in text
        (root / path).write_text(text.replace(old, new, 1), "utf-8")
    return root
