"""The checksums of the files of a package: those that are compiled, and those that are kept beside them."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from pathlib import Path

from tenderwright.reading.archived import ARCHIVE, LIST, checksums_below
from tenderwright.reading.layout import OWNER
from tenderwright.reading.package import Files


def checksums(files: Files) -> Mapping[str, str]:
    """Give the checksum of each file of a package by path, owner/ and drawings/ among them; of an archive, its list's.

    A file that is gone meanwhile has none.
    """
    root = files.root
    found = {path: _checksum(root / path) for path in files.paths if (root / path).is_file()}
    for folder in _kept(root):
        top = folder.relative_to(root).as_posix()
        found |= {f"{top}/{path}": checksum for path, checksum in checksums_below(folder)}
    owners = (root / OWNER).glob("*") if (root / OWNER).is_dir() else ()
    found |= {f"{OWNER}{one.name}": _checksum(one) for one in owners if one.is_file() and not one.name.startswith(".")}
    lists = (root / ARCHIVE).glob(f"*/{LIST}")
    return found | {listed.relative_to(root).as_posix(): _checksum(listed) for listed in lists}


def _kept(root: Path) -> Iterator[Path]:
    """Yield the folders whose files are all named: drawings, and the owner's but for the archives."""
    owners = sorted((root / OWNER).iterdir()) if (root / OWNER).is_dir() else []
    for folder in (root / "drawings", *owners):
        if folder.is_dir() and not folder.name.startswith(".") and folder != root / ARCHIVE:
            yield folder


def _checksum(file: Path) -> str:
    with open(file, "rb") as content:
        return hashlib.file_digest(content, "sha256").hexdigest()
