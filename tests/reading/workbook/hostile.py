"""Workbooks made in the test: a harmless one, and what can be done to it."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from typing import Any

import openpyxl

SHEET = "xl/worksheets/sheet1.xml"
BOOK = "xl/workbook.xml"
TYPES = "[Content_Types].xml"
RELATIONS = "xl/_rels/workbook.xml.rels"
_KINDS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"


def harmless(**cells: Any) -> bytes:
    """Make a workbook of one sheet with these cells."""
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    sheet.title = "Prices"
    for address, value in (cells or {"A1": "420.a", "B1": 12.5}).items():
        sheet[address] = value
    output = io.BytesIO()
    book.save(output)
    return output.getvalue()


def members(data: bytes) -> dict[str, bytes]:
    """Give the members of a workbook."""
    with zipfile.ZipFile(io.BytesIO(data)) as packed:
        return {name: packed.read(name) for name in packed.namelist()}


def pack(contents: Mapping[str, bytes]) -> bytes:
    """Pack members as they are."""
    output = io.BytesIO()
    with zipfile.ZipFile(output, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in contents.items():
            packed.writestr(name, content)
    return output.getvalue()


def with_member(name: str, content: bytes = b"", data: bytes | None = None) -> bytes:
    """Add a member, or put another in its place."""
    return pack({**members(data or harmless()), name: content})


def changed(part: str, old: str, new: str, data: bytes | None = None) -> bytes:
    """Change a text in one part, once."""
    contents = members(data or harmless())
    text = contents[part].decode()
    assert old in text, text
    return pack({**contents, part: text.replace(old, new, 1).encode()})


def of_type(kind: str) -> bytes:
    """Make a workbook that declares one more type of content."""
    more = f'<Override PartName="/xl/other.xml" ContentType="{kind}"/></Types>'
    return changed(TYPES, "</Types>", more)


def related(kind: str, target: str, mode: str = "") -> bytes:
    """Make a workbook with one more relationship."""
    outside = f' TargetMode="{mode}"' if mode else ""
    more = f'<Relationship Id="rId99" Type="{_KINDS}/{kind}" Target="{target}"{outside}/></Relationships>'
    return changed(RELATIONS, "</Relationships>", more)


def with_cells(markup: str) -> bytes:
    """Make a workbook whose sheet has this markup in place of its rows."""
    contents = members(harmless())
    text = contents[SHEET].decode()
    start, end = text.index("<sheetData>"), text.index("</sheetData>") + len("</sheetData>")
    return pack({**contents, SHEET: (text[:start] + markup + text[end:]).encode()})


def with_formula(formula: str) -> bytes:
    """Make a workbook with one formula, written as it stands in the file."""
    return with_cells(f'<sheetData><row r="1"><c r="A1"><f>{formula}</f><v>1</v></c></row></sheetData>')


def declaring(part: str, declaration: str, encoding: str = "utf-8") -> bytes:
    """Make a workbook one part of which begins with a declaration."""
    contents = members(harmless())
    text = contents[part].decode()
    body = text[text.index("?>") + 2 :] if text.startswith("<?xml") else text
    head = f'<?xml version="1.0" encoding="{encoding}"?>'
    return pack({**contents, part: f"{head}{declaration}{body}".encode(encoding)})
