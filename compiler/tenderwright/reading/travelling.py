"""Files that go along with the tender as they are, byte for byte: drawings, reports and pictures under references/."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from functools import cached_property

from msgspec import Struct

FOLDER = "references/"
MOST = 40_000_000
"""The most bytes that one of them may have, so that a parcel can still be sent."""

_TIFF = (b"II*\0", b"MM\0*")
DOCUMENTS: Mapping[str, tuple[bytes, ...]] = {
    "pdf": (b"%PDF-",),
    "tif": _TIFF,
    "tiff": _TIFF,
    "png": (b"\x89PNG\r\n\x1a\n",),
    "dxf": (),
}
"""Kinds of document by the ending of the name, with what a file of the kind begins with; a DXF is text."""
PICTURES: Mapping[str, tuple[bytes, ...]] = {
    "png": DOCUMENTS["png"],
    "jpg": (b"\xff\xd8\xff",),
    "jpeg": (b"\xff\xd8\xff",),
}
"""Kinds of picture that a page can show."""


class Travelling(Struct, frozen=True, dict=True):
    """A file that goes along: its path in the package and its bytes."""

    path: str
    content: bytes

    @cached_property
    def sha256(self) -> str:
        """Give its checksum."""
        return hashlib.sha256(self.content).hexdigest()

    def is_one_of(self, kinds: Mapping[str, tuple[bytes, ...]]) -> bool:
        """Tell whether it is of one of these kinds, by its name and by how it begins."""
        ending = self.path.rpartition(".")[2].lower()
        if ending not in kinds:
            return False
        return self.content.startswith(kinds[ending]) if kinds[ending] else b"SECTION" in self.content[:4096]
