"""The files that a package sends along: which thing names each, with the checksum that it states."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from tenderwright.model.package import Package
from tenderwright.notices import Place
from tenderwright.reading.travelling import DOCUMENTS, PICTURES, Travelling


class Sent(Struct, frozen=True):
    """A file that a document or a picture says is sent along."""

    path: str
    sha256: str
    what: str
    here: Place
    kinds: Mapping[str, tuple[bytes, ...]]
    found: Travelling | None


def sent(package: Package) -> Iterator[Sent]:
    """Yield every file that is named, in order."""
    for drawing in package.drawings:
        if drawing.file:
            found = package.travelling.get(drawing.file)
            what = f"document {drawing.drawing.upper()}"
            yield Sent(drawing.file, drawing.sha256, what, drawing.here, DOCUMENTS, found)
    for item in package.items:
        for picture in item.pictures:
            found = package.travelling.get(picture.file)
            what = f"a picture of item {item.number}"
            yield Sent(picture.file, picture.sha256, what, picture.here, PICTURES, found)
