"""Opens the plain document that every edition is written into, and closes it with the same bytes every time."""

from __future__ import annotations

import io
import zipfile
from datetime import UTC, datetime
from importlib.resources import files
from typing import TYPE_CHECKING

from tenderwright.documents.edition import Edition
from tenderwright.writing.archive import zip_members

if TYPE_CHECKING:
    from docx.document import Document

_MEMBERS = {
    "[Content_Types].xml": "content-types.xml",
    "_rels/.rels": "package-relations.xml",
    "docProps/core.xml": "core.xml",
    "word/document.xml": "document.xml",
    "word/_rels/document.xml.rels": "document-relations.xml",
    "word/styles.xml": "styles.xml",
    "word/numbering.xml": "numbering.xml",
    "word/settings.xml": "settings.xml",
}


def open_document(edition: Edition, timestamp: int) -> Document:
    """Open an empty document that has the styles, the language, and what a file says of itself."""
    import docx

    folder = files(__package__) / "template"
    members = [
        (name, (folder / source).read_bytes().replace(b'"en-GB"', f'"{edition.language}"'.encode()))
        for name, source in _MEMBERS.items()
    ]
    document = docx.Document(io.BytesIO(zip_members(members)))
    when = datetime.fromtimestamp(timestamp, UTC).replace(tzinfo=None)
    properties = document.core_properties
    properties.title = f"{edition.title} ({edition.tender})"
    properties.subject = edition.subtitle
    properties.author = properties.last_modified_by = edition.owner
    properties.created = properties.modified = when
    properties.language = edition.language
    properties.revision = 1
    return document


def document_bytes(document: Document) -> bytes:
    """Save a document with its members always in the same order and at the same time."""
    output = io.BytesIO()
    document.save(output)
    with zipfile.ZipFile(output) as packed:
        members = [(name, packed.read(name)) for name in packed.namelist()]
    return zip_members(sorted(members, key=lambda member: (member[0] != "[Content_Types].xml", member[0])))
