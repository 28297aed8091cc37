"""Opens what the Word writer made."""

from __future__ import annotations

import io
import zipfile
from functools import cache
from typing import Any

import docx
from docx.document import Document
from docx.oxml.ns import qn

from tenderwright.documents.edition import Edition
from tenderwright.writing.word.document import word_document

from ..every_block import every_block

TIMESTAMP = 1770000000


def opened(edition: Edition) -> Document:
    return docx.Document(io.BytesIO(word_document(edition, TIMESTAMP)))


@cache
def small() -> Document:
    return opened(every_block())


def parts_of(made: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(made)) as packed:
        return {name: packed.read(name) for name in packed.namelist()}


def written(document: Document) -> list[tuple[str, str]]:
    """List style and text of every paragraph, those of tables included, in the order they stand."""
    names = {style.style_id: str(style.name) for style in document.styles}
    return [(names[_style(found)], _text(found)) for found in document.element.body.iter(qn("w:p"))]


def _style(paragraph: Any) -> str:
    return str(paragraph.find(qn("w:pPr")).find(qn("w:pStyle")).get(qn("w:val")))


def _text(paragraph: Any) -> str:
    shown = {qn("w:t"): None, qn("w:tab"): "\t", qn("w:br"): "\n"}
    runs = (child for run in paragraph.iter(qn("w:r")) for child in run if child.tag in shown)
    return "".join(shown[child.tag] or child.text or "" for child in runs)
