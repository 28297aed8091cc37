"""Where the set parts of documents are kept between runs: the user's cache folder, which may be emptied at any time.

A part is found by its HTML, and by what else its PDF hangs on: our own files with the style sheet among them, Python,
the libraries with the faces, and the machine.
"""

from __future__ import annotations

import os
from contextlib import suppress
from functools import cached_property
from pathlib import Path

from tenderwright.calculations.steps.kept import SIZE, digest
from tenderwright.commands.kept_results import cache_folder, maker

MOST = 256 * 2**20
"""Bytes that are kept; parts that were used longest ago go."""


def kept_parts() -> PartsInFolder | None:
    """Give what is kept; None where the system names no folder for it."""
    folder = cache_folder()
    return None if folder is None else PartsInFolder(folder / "parts")


class PartsInFolder:
    """Set parts in a folder, one file each, which is read only where it is whole."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._tidied = False

    def get(self, page: str) -> bytes | None:
        """Give the PDF of a part that was kept, by its HTML."""
        file = self._file(page)
        with suppress(OSError):
            content = file.read_bytes()
            if digest(content[SIZE:]) == content[:SIZE]:
                os.utime(file)
                return content[SIZE:]
        return None

    def put(self, page: str, content: bytes) -> None:
        """Keep the PDF of a part; where that cannot be done, it is set again next time."""
        with suppress(OSError):
            self._tidy()
            file = self._file(page)
            part = file.with_suffix(f".{os.getpid()}")
            part.write_bytes(digest(content) + content)
            part.replace(file)

    @cached_property
    def _maker(self) -> bytes:
        return maker()

    def _file(self, page: str) -> Path:
        return self._folder / f"{digest(self._maker + page.encode()).hex()}.part"

    def _tidy(self) -> None:
        """Take away what was used longest ago, once before anything is added."""
        if self._tidied:
            return
        self._tidied = True
        self._folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        files = sorted(((one.stat(), one) for one in self._folder.iterdir()), key=lambda one: -one[0].st_mtime)
        room = MOST
        for state, file in files:
            room -= state.st_size
            if room < 0:
                file.unlink()
