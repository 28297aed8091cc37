"""What a workbook says beside its cells, wherever that stands: comments, shapes, heads and feet, names, and the rest.

Every part and element is gone through but those known to say nothing of anybody's. So what is not known is told.
"""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from tenderwright.reading.workbook.styles import child, children, local

_SILENT_PARTS = re.compile(
    r"\[Content_Types\]\.xml|xl/(?:styles|sharedStrings|calcChain|metadata)\.xml|xl/theme/.*|xl/printerSettings/.*|"
    r"xl/persons/.*|docProps/(?:app\.xml|thumbnail\..*)|docMetadata/.*|.*\.rels|xl/workbook\.xml"
)
"""Parts of letters, colours, printers and programs; the text in the third is that of the cells."""
_SILENT_IN_BOOK = (
    *("fileVersion", "workbookPr", "workbookProtection", "bookViews", "sheets", "calcPr", "definedNames"),
    *("AlternateContent", "revisionPtr", "fileRecoveryPr"),
)
_SILENT_IN_SHEET = (
    *("sheetPr", "dimension", "sheetViews", "sheetFormatPr", "cols", "sheetData", "sheetCalcPr", "sheetProtection"),
    *("mergeCells", "printOptions", "pageMargins", "pageSetup", "rowBreaks", "colBreaks", "drawing", "legacyDrawing"),
    *("legacyDrawingHF", "tableParts", "phoneticPr", "ignoredErrors", "autoFilter", "sortState", "picture"),
)
_SILENT_PROPERTIES = re.compile(r"MSIP_Label_.*|ContentTypeId|KSO.*|ICV|_dlc_.*|MediaServiceImageTags|WorkbookGuid")
_CORE = ("title", "subject", "description", "keywords", "category", "contentStatus", "identifier")
_SILENT_KEYS = ("uri", "uid", "sqref", "stringRefSyntax")
_PLACES = frozenset(["col", "colOff", "row", "rowOff"])
_SAID_IN = frozenset(["descr", "title", "alt", "name", "comment", "prompt", "tooltip", "display"])
_ADDRESS = re.compile(r"[A-Z]{1,3}\d{1,7}")
_LITERAL = re.compile(r'"((?:[^"]|"")*)"')
_CODES = re.compile(r'&(?:"[^"]*"|K[0-9A-Fa-f]{6}|K\d\d[+-]\d{3}|\d{1,3}|[BIUESXYADTPNFZG])')


@dataclass(frozen=True)
class Said:
    """Words that stand beside the cells."""

    where: str
    """Such as `a comment on Price form!G12`."""
    words: str
    """Empty for a picture or another shape."""


def said_beside(members: Mapping[str, bytes], parts: Mapping[str, str]) -> tuple[Said, ...]:
    """Give all that is said beside the cells; `parts` names the part of each sheet by its title."""
    titles = {part: title for title, part in parts.items()}
    owners = _owners(members, titles)
    found: list[Said] = []
    for name, content in members.items():
        if name in titles:
            found += _sheet(titles[name], ElementTree.fromstring(content))
        elif name == "docProps/core.xml":
            found += _core(ElementTree.fromstring(content))
        elif name == "docProps/custom.xml":
            found += _custom(ElementTree.fromstring(content))
        elif not _SILENT_PARTS.fullmatch(name):
            found += _part(name, content, owners.get(name, ""))
    return (*found, *_book(members), *_links(members))


def _owners(members: Mapping[str, bytes], titles: Mapping[str, str]) -> dict[str, str]:
    """Give by part the title of the sheet that refers to it."""
    found = {}
    for part, title in titles.items():
        for one in _relations(members, part):
            target = posixpath.normpath(posixpath.join("/", posixpath.dirname(part), one.get("Target", "")))
            found[target.lstrip("/")] = title
    return found


def _relations(members: Mapping[str, bytes], part: str) -> list[Element]:
    folder, name = posixpath.split(part)
    content = members.get(posixpath.join(folder, "_rels", f"{name}.rels"))
    return list(ElementTree.fromstring(content)) if content is not None else []


def _words(element: Element) -> list[str]:
    """List all that an element says, in its order: texts, and what shapes are called and described by."""
    found = []
    for one in element.iter():
        if local(one.tag) in _PLACES:
            continue
        found += [words for key, words in one.attrib.items() if local(key) in _SAID_IN and words.strip()]
        found += [text.strip() for text in (one.text,) if text is not None and text.strip()]
        found += [part.tail.strip() for part in one if part.tail is not None and part.tail.strip()]
    return found


def _part(name: str, content: bytes, sheet: str) -> Iterator[Said]:
    on = f" of sheet {sheet}" if sheet else ""
    if name.lower().endswith(".vml"):
        yield from _vml(content.decode("utf-8", "replace"), on)
        return
    if not name.lower().endswith(".xml"):
        yield Said(f"the picture or other thing {name}{on}", "")
        return
    root = ElementTree.fromstring(content)
    own = [one for one in root.iter() if _ADDRESS.fullmatch(one.get("ref", ""))]
    for one in own:
        yield Said(f"a comment on {sheet}!{one.get('ref')}", " ".join(_words(one)))
    if not own:
        yield Said(f"the part {name}{on}", " ".join(_words(root)))


def _vml(text: str, on: str) -> Iterator[Said]:
    """Tell of the shapes of the older kind but those that only hold a comment, whose words are in a part of its own."""
    for shape in re.findall(
        r"<v:(?:shape|rect|oval|line|roundrect)\b.*?</v:(?:shape|rect|oval|line|roundrect)>", text, re.S
    ):
        words = " ".join(
            re.sub(r"<[^>]*>", " ", re.sub(r"<x:ClientData.*?</x:ClientData>", " ", shape, flags=re.S)).split()
        )
        if words or 'ObjectType="Note"' not in shape:
            yield Said(f"a shape{on}", words)


def _core(root: Element) -> Iterator[Said]:
    for one in root:
        if local(one.tag) in _CORE and (one.text or "").strip():
            yield Said(f"the {local(one.tag)} in the properties of the file", (one.text or "").strip())


def _custom(root: Element) -> Iterator[Said]:
    for one in root:
        name = one.get("name", "")
        if not _SILENT_PROPERTIES.fullmatch(name):
            yield Said("the properties of the file", f"{name}: {' '.join(_words(one)[1:])}")


def _book(members: Mapping[str, bytes]) -> Iterator[Said]:
    root = ElementTree.fromstring(members["xl/workbook.xml"]) if "xl/workbook.xml" in members else None
    for one in children(child(root, "definedNames"), "definedName"):
        beside = [words for key, words in one.attrib.items() if key in ("comment", "description", "help", "statusBar")]
        name, refers = one.get("name", ""), (one.text or "").strip()
        if not name.startswith("_xlnm."):
            refers = refers if "!" not in refers or '"' in refers else ""
            yield Said("the names of the workbook", " ".join(filter(None, (name, refers, *beside))))
    for one in children(child(root, "sheets"), "sheet"):
        if one.get("state", "visible") != "visible":
            yield Said("the sheets", f"{one.get('name')} is hidden")
    for other in root if root is not None else ():
        if local(other.tag) not in _SILENT_IN_BOOK and (words := _all(other)):
            yield Said("the workbook", words)


def _links(members: Mapping[str, bytes]) -> Iterator[Said]:
    for name, content in members.items():
        for one in ElementTree.fromstring(content) if name.endswith(".rels") else ():
            if one.get("Type", "").endswith("/hyperlink"):
                yield Said("a link", one.get("Target", "").removeprefix("mailto:"))


def _sheet(title: str, root: Element) -> Iterator[Said]:
    for one in root:
        name = local(one.tag)
        if name == "headerFooter":
            yield from _heads(title, one)
        elif name == "dataValidations":
            yield from _rules(title, one)
        elif name == "hyperlinks":
            for link in one:
                words = " ".join(link.get(key, "") for key in ("tooltip", "location") if link.get(key))
                if words:
                    yield Said(f"a link on {title}!{link.get('ref')}", words)
        elif name not in _SILENT_IN_SHEET and (words := _all(one)):
            yield Said(f"the {_CALLED.get(name, name)} of sheet {title}", words)


_CALLED = {"conditionalFormatting": "conditional formats", "extLst": "additions", "scenarios": "scenarios"}


def _all(element: Element) -> str:
    """Give an element with everything that is written in it, for what has no business on a form."""
    found = [element.get("sqref", "")]
    for one in element.iter():
        found += [f"{local(key)} {words}" for key, words in one.attrib.items() if local(key) not in _SILENT_KEYS]
        found.append((one.text or "").strip())
    return " ".join(filter(None, found))


def _heads(title: str, element: Element) -> Iterator[Said]:
    for one in element:
        for piece in re.split(r"&[LCR]", one.text or ""):
            words = " ".join(_CODES.sub(" ", piece.replace("&&", "\0")).replace("\0", "&").split())
            if words:
                yield Said(f"the head or foot of sheet {title}", words)


def _rules(title: str, element: Element) -> Iterator[Said]:
    for rule in element:
        where = f"the rule for {title}!{rule.get('sqref', '').partition(' ')[0]}"
        for key in ("promptTitle", "prompt", "errorTitle", "error"):
            if rule.get(key, "").strip():
                yield Said(where, rule.get(key, "").strip())
        for one in rule.iter():
            for words in _LITERAL.findall(one.text or ""):
                if words.strip():
                    yield Said(where, words.strip())
