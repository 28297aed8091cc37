"""Archives of closed tenders under owner/archive/, each proved by the checksums that it was written with."""

from __future__ import annotations

import hashlib
import os
import re
from collections.abc import Iterator, Mapping
from pathlib import Path

from msgspec import Struct

from tenderwright.notices import Notice, Place

ARCHIVE = "owner/archive/"
"""Below here lies one folder for each closed tender."""
LIST = "SHA256SUMS"
"""The checksums of an archive, in the form that `sha256sum --check` reads."""

_LINE = re.compile(r"([0-9a-f]{64}) [ *](.+)")
_FEW = 3


class Archived(Struct, frozen=True):
    """An archive held against its list."""

    files: int
    """How many files the list names."""
    list_sha256: str
    """Checksum of the list itself; empty where there is none."""
    altered: Mapping[str, str]
    """The files that are not as listed, each with how."""


def list_text(checksums: Mapping[str, str]) -> str:
    """Write the list of an archive."""
    return "".join(f"{checksum}  {path}\n" for path, checksum in sorted(checksums.items()))


def archived(folder: Path) -> Archived:
    """Hold every file of an archive against its list; hidden files, which systems leave behind, are passed over."""
    try:
        listed = (folder / LIST).read_bytes()
    except OSError:
        return Archived(0, "", {LIST: "is missing, so that nothing here is proved"})
    altered: dict[str, str] = {}
    checksums: dict[str, str] = {}
    for number, line in enumerate(listed.decode("utf-8", "replace").splitlines(), start=1):
        found = _LINE.fullmatch(line)
        if found is None:
            altered[LIST] = f"cannot be read in line {number}"
        else:
            checksums[found[2]] = found[1]
    there = dict(checksums_below(folder))
    for path in sorted({*checksums, *there} - {LIST}):
        if path not in there:
            altered[path] = "is missing"
        elif path not in checksums:
            altered[path] = "was added"
        elif there[path] != checksums[path]:
            altered[path] = "was changed"
    return Archived(len(checksums), hashlib.sha256(listed).hexdigest(), altered)


def changed_archives(root: Path) -> Iterator[Notice]:
    """Report each archive of a package that is not as it was written."""
    folder = root / ARCHIVE
    for archive in sorted(folder.iterdir()) if folder.is_dir() else ():
        if archive.name.startswith(".") or not archive.is_dir():
            continue
        altered = archived(archive).altered
        if not altered:
            continue
        told = [f"{path} {how}" for path, how in altered.items()]
        if len(told) > _FEW + 1:
            told = [*told[:_FEW], f"and {len(told) - _FEW} files more"]
        first = next(iter(altered))
        message = f"the archive of the closed tender is not as it was written: {'; '.join(told)}"
        hints = ("take the files back as they were, from git or a copy: an archive is never edited",)
        yield Notice("archive-changed", Place(f"{ARCHIVE}{archive.name}/{first}"), message, hints=hints)


def checksums_below(top: Path, folder: Path | None = None) -> Iterator[tuple[str, str]]:
    """Yield each file below a folder with its checksum; of a link, that of where it leads to by name."""
    for entry in sorted(os.scandir(folder or top), key=lambda one: one.name):
        path = Path(entry.path)
        if entry.name.startswith("."):
            continue
        if entry.is_symlink():
            yield path.relative_to(top).as_posix(), hashlib.sha256(os.readlink(path).encode()).hexdigest()
        elif entry.is_dir():
            yield from checksums_below(top, path)
        elif entry.is_file():
            with open(path, "rb") as content:
                yield path.relative_to(top).as_posix(), hashlib.file_digest(content, "sha256").hexdigest()
