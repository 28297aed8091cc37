"""Everything that can be read out of the files of an edition, archives within archives too."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterator, Mapping
from functools import lru_cache
from html import unescape

import pypdf


def texts_in(files: Mapping[str, bytes]) -> Iterator[tuple[str, str]]:
    """Yield a name and the text of every file, of every part of a workbook or archive, every page; not of pictures.

    What an archive holds is read only where it is not the very same as a file beside it.
    """
    for name, content in files.items():
        yield f"{name}: its name", name
        if name.endswith((".zip", ".xlsx", ".docx")):
            with zipfile.ZipFile(io.BytesIO(content)) as packed:
                yield f"{name}: comment", packed.comment.decode()
                inside = {f"{name}/{member}": packed.read(member) for member in packed.namelist()}
            yield from texts_in({path: held for path, held in inside.items() if held not in files.values()})
        elif name.endswith(".pdf"):
            yield from _pdf_texts(name, content)
        elif not name.endswith((".png", ".jpg", ".jpeg", ".tif", ".tiff")):
            yield name, unescape(content.decode("utf-8"))


def _pdf_texts(name: str, content: bytes) -> Iterator[tuple[str, str]]:
    for number, words in enumerate(pages_of(content), start=1):
        yield f"{name}: page {number}", words
    reader = pypdf.PdfReader(io.BytesIO(content))
    yield f"{name}: information", repr(reader.metadata)
    yield f"{name}: destinations", " ".join(reader.named_destinations)
    for index in range(1, len(reader.xref[0]) + 1):
        thing = reader.get_object(pypdf.generic.IndirectObject(index, 0, reader))
        yield f"{name}: object {index}", repr(thing)
        if isinstance(thing, pypdf.generic.StreamObject):
            yield f"{name}: stream {index}", thing.get_data().decode("latin-1")


@lru_cache(maxsize=4)
def pages_of(content: bytes) -> tuple[str, ...]:
    """Read the text of every page of a PDF."""
    return tuple(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(content)).pages)
