"""Writes tables into a Word document: fixed widths, titles repeated on every page, figures on their points."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from tenderwright.documents.edition import Column, Facts, Row, Table, plain
from tenderwright.writing.decimals import fraction_digits
from tenderwright.writing.prose_tables import ProseTable
from tenderwright.writing.runs import Runs, span_runs, text_runs
from tenderwright.writing.table_cells import row_cells
from tenderwright.writing.word.elements import node, paragraph
from tenderwright.writing.word.inline import InlineWriter

if TYPE_CHECKING:
    from tenderwright.writing.word.bookmarks import Bookmarks
    from tenderwright.writing.word.elements import Node

_ALIGNS = {"left": "left", "right": "right", "decimal": "right", "centre": "center"}
_STYLES = {"normal": "TableText", "subtotal": "TableTotal", "total": "TableTotal", "group": "TableGroup"}
_RULES = {"subtotal": 6, "total": 12}
"""Eighths of a point of the line above a row."""
_MARGINS = 170
"""Twips at the two sides of a cell together, as the table style sets them."""
_TYPE_SIZE = {False: 9.0, True: 7.5}
_DIGIT, _POINT = 0.556, 0.278
"""Widths of a digit and of a point in ems, as in the sans-serif faces that office programs come with."""
_TWIPS = 20
_TERM_SHARE = 0.26
_ROOM = 500
"""Twips of height at least that a row has in which somebody writes by hand."""


@dataclass(frozen=True)
class TableWriter:
    """Writes tables as wide as the text, in twips."""

    inline: InlineWriter
    bookmarks: Bookmarks
    width: int

    def table(self, table: Table) -> Iterator[Node]:
        """Write a table with its caption above and its note below; a paragraph always follows it."""
        suffix = "Small" if table.small else ""
        if table.caption:
            yield paragraph("Caption", *self.inline.nodes(text_runs(table.caption)))
        widths = shares([column.width for column in table.columns], self.width)
        stops = [_stop(table, index, width) for index, width in enumerate(widths)]
        titles = [self._title(column, width, suffix) for column, width in zip(table.columns, widths, strict=True)]
        rows = [self._row(table, row, widths, stops, suffix) for row in table.rows]
        head = node("tr", node("trPr", node("cantSplit"), node("tblHeader")), *titles)
        _set_in_first_cell(head, self.bookmarks, table.anchor)
        yield _table("TenderTable", widths, [head, *rows], table.caption, ruled=table.ruled)
        if table.note:
            _keep_with_next([head, *rows][-1])
            yield paragraph("TableNote", *self.inline.nodes(span_runs(table.note)))
        else:
            yield paragraph("TableEnd")

    def prose_table(self, table: ProseTable) -> Iterator[Node]:
        """Write a table of prose, its columns all of one width."""
        widths = shares([1.0] * len(table.titles), self.width)

        def row(style: str, cells: Sequence[Runs], *properties: Node) -> Node:
            made = (
                _cell(width, paragraph(style, *self.inline.nodes(runs), after=_aligned(align)))
                for width, runs, align in zip(widths, cells, table.aligns, strict=True)
            )
            return node("tr", node("trPr", node("cantSplit"), *properties), *made)

        head = row("TableHeading", table.titles, node("tblHeader"))
        yield _table("TenderTable", widths, [head, *(row("TableText", cells) for cells in table.rows)])
        yield paragraph("TableEnd")

    def facts(self, facts: Facts) -> Iterator[Node]:
        """Write facts as a table of two columns, terms at the left."""
        widths = shares([_TERM_SHARE, 1 - _TERM_SHARE], self.width)
        rows = [
            node(
                "tr",
                node("trPr", node("cantSplit")),
                _cell(widths[0], paragraph("TableHeading", *self.inline.nodes(text_runs(term)))),
                _cell(widths[1], paragraph("TableText", *self.inline.nodes(span_runs(words)))),
            )
            for term, words in facts.pairs
        ]
        if rows:
            _set_in_first_cell(rows[0], self.bookmarks, facts.anchor)
            yield _table("TenderFacts", widths, rows, titled=False)
            yield paragraph("TableEnd")

    def _title(self, column: Column, width: int, suffix: str) -> Node:
        words = self.inline.nodes(text_runs(column.title))
        return _cell(
            width, paragraph(f"TableHeading{suffix}", *words, before=(node("keepNext"),), after=_aligned(column.align))
        )

    def _row(self, table: Table, row: Row, widths: Sequence[int], stops: Sequence[int], suffix: str) -> Node:
        style = f"{_STYLES[row.weight]}{suffix}"
        room = (node("trHeight", val=_ROOM, hRule="atLeast"),) if table.ruled else ()
        properties = node("trPr", node("cantSplit"), *room)
        if row.weight == "group":
            words = self.inline.nodes(span_runs(row.cells[0]))
            made = node("tr", properties, _cell(sum(widths), paragraph(style, *words), span=len(widths)))
        else:
            made = node("tr", properties)
            cells = row_cells(table, row)
            for column, text, width, stop in zip(table.columns, cells, widths, stops, strict=True):
                fits = stop and _whole_width(plain(text), table.small) <= stop
                before, after = (_decimal(stop), ()) if fits else ((), _aligned(column.align))
                words = self.inline.nodes(span_runs(text))
                filled = paragraph(style, *words, before=before, after=after)
                made.append(_cell(width, filled, rule=_RULES.get(row.weight, 0)))
        _set_in_first_cell(made, self.bookmarks, row.anchor)
        return made


def shares(parts: Sequence[float], whole: int) -> list[int]:
    """Share a width out in whole twips, nothing lost."""
    total, edges, sum_so_far = sum(parts), [0], 0.0
    for part in parts:
        sum_so_far += part
        edges.append(round(whole * sum_so_far / total))
    return [right - left for left, right in pairwise(edges)]


def _table(
    style: str,
    widths: Sequence[int],
    rows: list[Node],
    caption: str = "",
    *,
    titled: bool = True,
    ruled: bool = False,
) -> Node:
    look = node(
        "tblLook", firstRow=int(titled), lastRow=0, firstColumn=int(not titled), lastColumn=0, noHBand=1, noVBand=1
    )
    properties = node(
        "tblPr",
        node("tblStyle", val=style),
        node("tblW", w=sum(widths), type="dxa"),
        *((_ruled(),) if ruled else ()),
        node("tblLayout", type="fixed"),
        look,
        *((node("tblCaption", val=caption),) if caption else ()),
    )
    return node("tbl", properties, node("tblGrid", *(node("gridCol", w=width) for width in widths)), *rows)


def _ruled() -> Node:
    """Give lines about every cell, in which somebody writes by hand."""
    sides = ("top", "left", "bottom", "right", "insideH", "insideV")
    return node("tblBorders", *(node(side, val="single", sz=4, space=0, color="777777") for side in sides))


def _cell(width: int, content: Node, *, span: int = 1, rule: int = 0) -> Node:
    properties = node("tcPr", node("tcW", w=width, type="dxa"))
    if span > 1:
        properties.append(node("gridSpan", val=span))
    if rule:
        properties.append(node("tcBorders", node("top", val="single", sz=rule, space=0, color="12405E")))
    return node("tc", properties, content)


def _aligned(align: str) -> tuple[Node, ...]:
    return () if align == "left" else (node("jc", val=_ALIGNS[align]),)


def _decimal(stop: int) -> tuple[Node, ...]:
    return (node("tabs", node("tab", val="decimal", pos=stop)),)


def _stop(table: Table, index: int, width: int) -> int:
    """Give where the points of a column stand, so that its longest fraction ends at the right; 0 for nowhere."""
    if table.columns[index].align != "decimal":
        return 0
    texts = [plain(row_cells(table, row)[index]) for row in table.rows if row.weight != "group"]
    numbers = [text for text in texts if fraction_digits(text) is not None]
    tails = [len(text) - text.index(".") for text in numbers if "." in text]
    if not tails:
        return 0
    tail = (_POINT + (max(tails) - 1) * _DIGIT) * _TYPE_SIZE[table.small] * _TWIPS
    return max(0, width - _MARGINS - round(tail))


def _whole_width(text: str, small: bool) -> float:
    """Give the width of what stands before the point, infinite for what is no number."""
    if fraction_digits(text) is None:
        return float("inf")
    return len(text.partition(".")[0]) * _DIGIT * _TYPE_SIZE[small] * _TWIPS


def _keep_with_next(row: Node) -> None:
    for properties in row.iter("{*}pPr"):
        if properties.find("{*}keepNext") is None:
            properties.insert(1, node("keepNext"))


def _set_in_first_cell(row: Node, bookmarks: Bookmarks, anchor: str) -> None:
    if anchor:
        first = next(row.iter("{*}p"))
        inside = list(first)[1:]
        first.extend(bookmarks.about(anchor, *inside))
