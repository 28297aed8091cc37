"""Guards the reading of a workbook: nothing parses the file until all of it has been looked through."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

from tenderwright.notices import Notice, Place
from tenderwright.reading.unreadable import no_file, unreadable
from tenderwright.reading.workbook.active_content import check_active_content
from tenderwright.reading.workbook.markup import MAX_CELLS, scan
from tenderwright.reading.workbook.refusal import Area, Refusal, unsafe
from tenderwright.reading.workbook.unpack import unpack

if TYPE_CHECKING:
    from collections.abc import Mapping

MAX_FILE_BYTES = 10_000_000
_DECLARATIONS = ("<!DOCTYPE", "<!ENTITY")


@dataclass(frozen=True)
class Guarded:
    """A workbook that holds nothing to fear, not yet parsed."""

    path: str
    data: bytes
    members: Mapping[str, bytes]
    merged: Mapping[str, tuple[Area, ...]]
    """Merged cells, by the part that holds the sheet."""

    @property
    def sha256(self) -> str:
        """Give the checksum of the file."""
        return hashlib.sha256(self.data).hexdigest()


def guard(file: FilePath) -> tuple[Guarded | None, list[Notice]]:
    """Read a file as a workbook and look through it, named in notices as it was given; None where it is refused."""
    path = str(file)
    try:
        if not file.is_file():
            return None, [no_file(file, path, Place(path))]
        with file.open("rb") as stream:
            data = stream.read(MAX_FILE_BYTES + 1)
    except OSError as error:
        return None, [unreadable(path, error)]
    if len(data) > MAX_FILE_BYTES:
        message = f"a workbook of more than {MAX_FILE_BYTES // 10**6} MB is not read"
        return None, [Notice("too-large", Place(path), message)]
    try:
        return look_through(path, data), []
    except Refusal as refusal:
        return None, [Notice(refusal.code, Place(path), refusal.message, hints=refusal.hints)]


def look_through(path: str, data: bytes) -> Guarded:
    """Look through the bytes of a workbook; raises `Refusal`."""
    members = unpack(data)
    merged: dict[str, tuple[Area, ...]] = {}
    cells = 0
    for name, content in members.items():
        if name.lower().endswith((".xml", ".rels")):
            found = scan(name, content)
            merged[name] = tuple(found.merged)
            cells += found.cells
        elif any(
            word.encode(code) in content for word in _DECLARATIONS for code in ("ascii", "utf-16-le", "utf-16-be")
        ):
            raise unsafe(f"the part `{name}` of the workbook declares a document type or entities")
    if cells > MAX_CELLS:
        raise unsafe(f"the workbook has more than {MAX_CELLS:,} cells")
    check_active_content(members)
    return Guarded(path, data, members, merged)
