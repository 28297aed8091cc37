"""What a cell shows beside its value: runs that are struck out or raised, reading aids, letters that nobody sees."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from tenderwright.reading.workbook.refusal import area_of, column_letters
from tenderwright.reading.workbook.styles import Lettering, child, children, lettering, letterings, local

_STYLES, _STRINGS = "xl/styles.xml", "xl/sharedStrings.xml"


@dataclass(frozen=True)
class SheetLooks:
    """How the cells of one sheet look where that is odd, and which rows and columns nobody sees."""

    odd: Mapping[tuple[int, int], tuple[str, ...]]
    hidden_rows: frozenset[int]
    hidden_columns: tuple[tuple[int, int], ...]
    """The first and the last of each span."""

    def hidden(self, row: int, column: int) -> str:
        """Say which hidden row or column a cell stands in; empty where it is seen."""
        if row in self.hidden_rows:
            return f"row {row}"
        if any(first <= column <= last for first, last in self.hidden_columns):
            return f"column {column_letters(column)}"
        return ""


@dataclass(frozen=True)
class _Text:
    """A text of a cell as its runs."""

    runs: int
    odd: tuple[str, ...]


def sheet_looks(members: Mapping[str, bytes], parts: Mapping[str, str]) -> dict[str, SheetLooks]:
    """Give the looks of each sheet by its title; `parts` says in which part each stands."""
    styles = letterings(_root(members, _STYLES))
    strings = [_text(one) for one in children(_root(members, _STRINGS), "si")]
    return {title: _sheet(_root(members, part), styles, strings) for title, part in parts.items() if part in members}


def _root(members: Mapping[str, bytes], name: str) -> Element | None:
    return ElementTree.fromstring(members[name]) if name in members else None


def _sheet(root: Element | None, styles: list[tuple[Lettering, bool]], strings: list[_Text]) -> SheetLooks:
    odd: dict[tuple[int, int], tuple[str, ...]] = {}
    hidden: set[int] = set()
    number = 0
    for row in children(child(root, "sheetData"), "row"):
        number = int(row.get("r") or number + 1)
        if _is(row, "hidden") or _nothing(row.get("ht")):
            hidden.add(number)
        column = 0
        for cell in children(row, "c"):
            at = area_of(cell.get("r") or f"{column_letters(column + 1)}{number}")
            column = at.left
            told = tuple(_cell(cell, styles, strings))
            if told:
                odd[at.top, at.left] = told
    columns = [one for one in children(child(root, "cols"), "col") if _is(one, "hidden") or _nothing(one.get("width"))]
    spans = tuple((int(one.get("min", "1")), int(one.get("max", "1"))) for one in columns)
    return SheetLooks(odd, frozenset(hidden), spans)


def _is(element: Element, key: str) -> bool:
    return element.get(key, "0") in ("1", "true")


def _nothing(size: str | None) -> bool:
    try:
        return size is not None and float(size) == 0
    except ValueError:
        return False


def _cell(cell: Element, styles: list[tuple[Lettering, bool]], strings: list[_Text]) -> Iterator[str]:
    style = cell.get("s", "0")
    letters, unseen = styles[int(style)] if style.isdigit() and int(style) < len(styles) else (Lettering(), False)
    if letters.told:
        yield f"it is {letters.told}"
    if unseen:
        yield "it is written in the colour of its ground"
    text = None
    if cell.get("t") == "s":
        value = child(cell, "v")
        place = (value.text or "").strip() if value is not None else ""
        text = strings[int(place)] if place.isdigit() and int(place) < len(strings) else None
    elif cell.get("t") == "inlineStr":
        inline = child(cell, "is")
        text = _text(inline) if inline is not None else None
    if text is not None:
        yield from text.odd
        if text.runs > 1 and not text.odd:
            yield "it is in several pieces that are lettered apart"


def _text(string: Element) -> _Text:
    runs = children(string, "r")
    odd = []
    for run in runs:
        letters = lettering(child(run, "rPr"))
        if letters.told:
            odd.append(f"`{_words(run)}` of it is {letters.told}")
    aids = [words for words in map(_words, children(string, "rPh")) if words]
    if aids:
        odd.append(f"above it stands `{' '.join(aids)}`")
    return _Text(len(runs), tuple(odd))


def _words(element: Element) -> str:
    return "".join(one.text or "" for one in element.iter() if local(one.tag) == "t").strip()
