"""The files of photographs: known by name, size and beginning; the whole of one is read only where it is shown."""

from __future__ import annotations

import hashlib
from pathlib import Path

from msgspec import Struct

FOLDERS = ("photographs/", "owner/photographs/")
"""Where photographs lie: those that yards may see, and the owner's own."""
MOST_IN_PHOTOGRAPH = 40_000_000
"""The most bytes that a photograph may have."""
_BEGINNING = 16
_KINDS = {"png": b"\x89PNG\r\n\x1a\n", "jpg": b"\xff\xd8\xff", "jpeg": b"\xff\xd8\xff"}


class PhotographFile(Struct, frozen=True):
    """A file that lies among the photographs."""

    path: str
    file: Path
    size: int
    beginning: bytes

    @property
    def name(self) -> str:
        """Give its name within its folder."""
        return next(self.path.removeprefix(folder) for folder in FOLDERS if self.path.startswith(folder))

    @property
    def is_picture(self) -> bool:
        """Tell whether it is a JPEG or PNG by its name, and begins as one."""
        kind = _KINDS.get(self.path.rpartition(".")[2].lower())
        return kind is not None and self.beginning.startswith(kind)

    def content(self) -> bytes:
        """Read the whole file; raises OSError."""
        return self.file.read_bytes()

    def sha256(self) -> str:
        """Give the checksum of the whole file; raises OSError."""
        return hashlib.sha256(self.content()).hexdigest()


def photograph_file(root: Path, path: str) -> PhotographFile:
    """Look at a file that lies among the photographs; raises OSError."""
    file = root / path
    with file.open("rb") as opened:
        return PhotographFile(path, file, file.stat().st_size, opened.read(_BEGINNING))
