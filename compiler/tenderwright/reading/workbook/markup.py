"""Scans one XML part of a workbook before anything else parses it: declarations, depth, cells, merges, formulas."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from xml.parsers import expat

from tenderwright.reading.workbook.refusal import MAX_ROWS, Area, area_of, column_letters, unreadable, unsafe

MAX_DEPTH = 100
MAX_CELLS = 200_000
MAX_SHEET_ROW = 1_048_576
"""The last row that the format has; rows without cells may be declared up to here."""

_ACTIVE = {
    "ddeLink": "a DDE link",
    "oleLink": "an OLE link",
    "externalBook": "a link to another workbook",
    "externalReference": "a link to another workbook",
    "oleObject": "an embedded object",
    "control": "a control",
    "connection": "a data connection",
    "queryTable": "a query table",
}
"""Elements of a workbook that reach out of it or hold something else."""

_SAVED_AGAIN = "programs show one of the two or the other; ask for the form again, saved by a spreadsheet program"

_TEXT = re.compile(r'"(?:[^"]|"")*"')
_NAME = re.compile(r"'(?:[^']|'')*'")
_OTHER_BOOK = re.compile(r"\[[^\[\]]+\][^\[\]!()+*/&=<>^,;]*!")
_CALLS_OUT = re.compile(r"\b(?:CALL|REGISTER(?:\.ID)?|EXEC|RTD|DDE|WEBSERVICE)\s*\(", re.IGNORECASE)


@dataclass
class Scan:
    """What stands in one XML part."""

    cells: int = 0
    """Cells written, and cells covered by merges."""
    merged: list[Area] = field(default_factory=list)


def scan(name: str, content: bytes) -> Scan:
    """Scan one XML part; raises `Refusal` for what may do harm and for what is not well formed."""
    scanner = _Scanner(name)
    try:
        scanner.parser.Parse(content, True)
    except (expat.ExpatError, LookupError, ValueError) as error:
        raise unreadable(f"the part `{name}` of the workbook is not well formed: {error}") from error
    return scanner.found


def formula_reaches_out(formula: str) -> str:
    """Say what a formula reaches out to; empty where it stays within the workbook."""
    bare = _TEXT.sub('""', formula)
    if "|" in _NAME.sub("''", bare):
        return "a DDE link"
    if _OTHER_BOOK.search(bare):
        return "a link to another workbook"
    if _CALLS_OUT.search(_NAME.sub("''", bare)):
        return "a function that calls out of the workbook"
    return ""


class _Scanner:
    def __init__(self, name: str) -> None:
        self.name, self.found = name, Scan()
        self.depth = self.row = self.column = 0
        self.seen: set[tuple[int, int]] = set()
        self.formula: list[str] | None = None
        self.parser = expat.ParserCreate(namespace_separator=" ")
        self.parser.StartDoctypeDeclHandler = self.declared
        self.parser.EntityDeclHandler = self.declared
        self.parser.StartElementHandler = self.start
        self.parser.EndElementHandler = self.end
        self.parser.CharacterDataHandler = self.text

    def declared(self, *_: object) -> None:
        raise unsafe(f"the part `{self.name}` of the workbook declares a document type or entities")

    def start(self, tag: str, attributes: dict[str, str]) -> None:
        element = tag.rpartition(" ")[2]
        self.depth += 1
        if self.depth > MAX_DEPTH:
            raise unsafe(f"the part `{self.name}` of the workbook is nested deeper than {MAX_DEPTH} elements")
        if element in _ACTIVE and "spreadsheetml" in tag:
            raise unsafe(f"the workbook holds {_ACTIVE[element]}")
        if element == "c":
            self.cell(attributes.get("r"))
        elif element == "row":
            self.row = _whole(attributes.get("r", ""), self.row + 1)
            self.column = 0
            if self.row > MAX_SHEET_ROW:
                raise unsafe(f"a sheet has a row {self.row:,}, more than the format knows")
        elif element in ("dimension", "mergeCell"):
            area = area_of(attributes.get("ref", ""))
            if element == "mergeCell":
                self.merge(area)
        elif element == "definedName":
            self.defined(attributes)
        if element in ("f", "definedName"):
            self.formula = []

    def cell(self, address: str | None) -> None:
        self.found.cells += 1
        if self.found.cells > MAX_CELLS:
            raise unsafe(f"the workbook has more than {MAX_CELLS:,} cells")
        if address is None and self.row > MAX_ROWS:
            raise unsafe(f"a sheet has cells in row {self.row:,}; {MAX_ROWS:,} rows are read")
        area = area_of(address) if address is not None else None
        at = (area.top, area.left) if area is not None else (self.row, self.column + 1)
        if at in self.seen:
            where = f"{column_letters(at[1])}{at[0]}"
            raise unsafe(f"the part `{self.name}` of the workbook has two cells of the address {where}", _SAVED_AGAIN)
        self.seen.add(at)
        self.column = at[1]

    def merge(self, area: Area) -> None:
        self.found.cells += area.size
        if self.found.cells > MAX_CELLS:
            raise unsafe(f"merged cells of the workbook cover more than {MAX_CELLS:,} cells")
        self.found.merged.append(area)

    def defined(self, attributes: dict[str, str]) -> None:
        called = attributes.get("name", "").lower().removeprefix("_xlnm.")
        runs = any(attributes.get(key) in ("1", "true") for key in ("vbProcedure", "xlm", "function"))
        if runs or called.startswith(("auto_open", "auto_close", "auto_activate")):
            raise unsafe("the workbook holds macros")

    def text(self, text: str) -> None:
        if self.formula is not None:
            self.formula.append(text)

    def end(self, tag: str) -> None:
        self.depth -= 1
        if self.formula is not None and tag.rpartition(" ")[2] in ("f", "definedName"):
            reached = formula_reaches_out("".join(self.formula))
            if reached:
                raise unsafe(f"the workbook holds {reached}")
            self.formula = None


def _whole(text: str, otherwise: int) -> int:
    if not text:
        return otherwise
    if not text.isascii() or not text.isdigit() or len(text) > 15:
        raise unreadable(f"`{text[:40]}` is not the number of a row")
    return int(text)
