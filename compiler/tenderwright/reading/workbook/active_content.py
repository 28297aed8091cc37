"""Finds what a workbook could run or reach out to: by the names of its members, their types and their relationships."""

from __future__ import annotations

import re
from collections.abc import Mapping
from xml.etree import ElementTree

from tenderwright.reading.workbook.refusal import unreadable, unsafe

WORKBOOK_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"
_SAVE_AS = "open it in a spreadsheet program, choose File, Save as, and the file type .xlsx (Excel 2007 or later)"
_CONTENT_TYPES = "[Content_Types].xml"
_OTHER_KINDS = {
    "mimetype": "this is an OpenDocument file",
    "xl/workbook.bin": "this is a workbook of the binary kind",
    "word/document.xml": "this is a text document",
}

_ACTIVE = (
    (
        re.compile(r"vba|macro|customUI|dialogsheet", re.IGNORECASE),
        "macros",
    ),
    (re.compile(r"activeX|ctrlProp|(?:/|\.)control(?:$|\+|\.)", re.IGNORECASE), "controls"),
    (re.compile(r"embedding|oleObject|(?:/|\.)package$|attachedToolbars", re.IGNORECASE), "embedded objects"),
    (re.compile(r"externalLink|attachedTemplate|webextension", re.IGNORECASE), "links to other files"),
    (
        re.compile(
            r"(?:^|[/.])connections?(?:$|[+.])|queryTable|customData|(?:^|/)xl/model/|powerPivot", re.IGNORECASE
        ),
        "data connections",
    ),
)
_HINT = "ask for the form again as plain .xlsx, with nothing in it but sheets"


def check_active_content(members: Mapping[str, bytes]) -> None:
    """Refuse a workbook with macros, controls, embedded objects, links or data connections; raises `Refusal`."""
    for name, what in _OTHER_KINDS.items():
        if name in members:
            raise unreadable(what, _SAVE_AS)
    if _CONTENT_TYPES not in members:
        raise unreadable("this is a zip archive, but no workbook")
    for name in members:
        _check(name)
    types = {one.get("ContentType", "") for one in _elements(members, _CONTENT_TYPES)}
    for kind in sorted(types):
        _check(kind)
    if WORKBOOK_TYPE not in types:
        raise unreadable("this is not a workbook of sheets", "open it in a spreadsheet program and save it as .xlsx")
    for name in members:
        if name.lower().endswith(".rels"):
            for one in _elements(members, name):
                _check_relationship(one)


def _check(text: str) -> None:
    for pattern, what in _ACTIVE:
        if pattern.search(text):
            raise unsafe(f"the workbook holds {what}", _HINT)


def _check_relationship(element: ElementTree.Element) -> None:
    """Let nothing lead outside but the links of cells, which are followed only by a person who clicks them."""
    kind = element.get("Type", "")
    if kind.endswith("/hyperlink"):
        return
    _check(kind)
    if element.get("TargetMode", "").lower() == "external":
        raise unsafe("the workbook holds links to other files", _HINT)


def _elements(members: Mapping[str, bytes], name: str) -> list[ElementTree.Element]:
    """Parse a part that has been scanned, so that it declares nothing."""
    return list(ElementTree.fromstring(members[name]))
