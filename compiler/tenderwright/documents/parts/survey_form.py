"""What the survey forms are made of: ruled tables to fill, a head to sign, and where the result is typed in."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.documents.edition import Block, Column, Inline, Paragraph, Row, Span, Table, inline

Cells = Sequence[str]


def form(columns: Sequence[tuple[str, float]], rows: Sequence[Cells], note: str = "") -> list[Block]:
    """Give a table to fill by hand, columns with their widths and rows as far as they are known, under its note."""
    table = Table(
        tuple(Column(title, width=width) for title, width in columns),
        tuple(Row(tuple(inline(cell) for cell in row)) for row in rows),
        ruled=True,
    )
    return [*([Paragraph(inline(note))] if note else []), table]


def blank(rows: int, columns: int) -> list[Cells]:
    """Give empty rows."""
    return [("",) * columns] * rows


def padded(known: Sequence[str], columns: int) -> Cells:
    """Give a row whose first cells are known, and the others empty."""
    return (*known, *("",) * (columns - len(known)))


def entered(file: str, more: str = "") -> str:
    """Say into which file the result is typed."""
    return f"Type the result into {file}" + (f"; {more}." if more else ".")


def form_head(*asked: str) -> list[Block]:
    """Give the line that says who surveyed, when and with what."""
    titles = ("Day", "Begun, ended", *asked, "Signed")
    return form([(title, 1.0) for title in titles], blank(1, len(titles)))


def caution(words: str) -> Paragraph:
    """Give the caution that stands above a form."""
    text: Inline = inline(Span("Caution. ", strong=True), words)
    return Paragraph(text)
