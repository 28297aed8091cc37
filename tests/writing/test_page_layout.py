"""The laid-out pages: nothing runs off the page or out of its cell, heads stay with what follows."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from tenderwright.documents.edition import (
    Block,
    Column,
    Facts,
    Figure,
    Heading,
    Paragraph,
    Part,
    Row,
    Span,
    Step,
    Steps,
    Table,
    inline,
)
from tenderwright.writing.fetching import build_fetcher, no_complaints
from tenderwright.writing.html import part_html

from .sample import cells, draft_edition, prose, sample_edition, tank_plan

_LONG = "Quantityofplatingmeasuredbyultrasoundbetweenframes" * 4
_TOLERANCE = 0.6
"""CSS pixels; a glyph may overhang its advance by a hair."""


def _lay_out(part: Part, edition: Any = None) -> Any:
    from weasyprint import HTML
    from weasyprint.text.fonts import FontConfiguration

    page = part_html(replace(edition or sample_edition(0), parts=(part,)), part)
    with no_complaints("layout"):
        return HTML(string=page, url_fetcher=build_fetcher()).render(font_config=FontConfiguration())


def _boxes(box: Any, cell: Any = None) -> Iterator[tuple[Any, Any]]:
    """Yield every text box with the table cell around it."""
    name = type(box).__name__
    if name == "TextBox":
        yield box, cell
    for child in getattr(box, "children", ()):
        yield from _boxes(child, box if name == "TableCellBox" else cell)


def _overflows(document: Any) -> list[str]:
    found = []
    for page in document.pages:
        for text, cell in _boxes(page._page_box):
            right = text.position_x + text.width
            if text.position_x < -_TOLERANCE or right > page.width + _TOLERANCE:
                found.append(f"off the page: {text.text}")
            if cell is not None and right > cell.position_x + cell.border_width() + _TOLERANCE:
                found.append(f"out of its cell: {text.text}")
            if text.position_y + text.height > page.height:
                found.append(f"below the page: {text.text}")
    return found


def _torture(landscape: bool) -> Part:
    columns = tuple(Column(f"Heading{index} {_LONG[:30]}", "decimal" if index % 2 else "left") for index in range(9))
    table = Table(columns, (Row(cells(*[_LONG] * 9)), Row(cells(*["1,234,567.125"] * 9))), small=True)
    link = Span("https://example.org/" + "x" * 300, target="torture")
    step = Step("420.12", "torture-1", prose(_LONG * 3 + "\n\n`" + "y" * 300 + "`\n\n    " + "z" * 300), "WITNESS W12")
    blocks: tuple[Block, ...] = (Heading(_LONG), Paragraph(inline(link)), table, Steps((step,)))
    return Part("torture", "420", f"Title {_LONG}", "item", "Work items", blocks, landscape=landscape, caution=True)


@pytest.mark.parametrize("landscape", [False, True])
def test_long_words_and_addresses_stay_on_the_page_and_in_their_cells(landscape: bool) -> None:
    assert _overflows(_lay_out(_torture(landscape))) == []
    assert _overflows(_lay_out(_torture(landscape), draft_edition())) == []


@pytest.mark.parametrize("anchor", ["frames", "item-420", "general-requirements", "cover"])
def test_no_text_of_the_sample_is_clipped(anchor: str) -> None:
    edition = sample_edition()
    part = next(part for part in edition.parts if part.anchor == anchor)
    assert _overflows(_lay_out_alone(edition, part)) == []


def _lay_out_alone(edition: Any, part: Part) -> Any:
    from weasyprint import HTML

    return HTML(string=part_html(edition, part), url_fetcher=build_fetcher()).render()


def test_a_heading_never_ends_a_page() -> None:
    filler: tuple[Block, ...] = tuple(Paragraph(inline(f"Paragraph {index}.")) for index in range(30))
    for extra in range(12):
        blocks: tuple[Block, ...] = (
            *filler,
            *filler[:extra],
            Heading("Last heading"),
            Paragraph(inline("After it. " * 40)),
        )
        document = _lay_out(Part("a", "1", "Title", "front", "", blocks))
        for page in document.pages:
            texts = [text.text for text, _ in _boxes(page._page_box)]
            if "Last heading" in texts:
                assert any("After it." in text for text in texts)


def test_a_long_table_repeats_its_head_and_breaks_no_row() -> None:
    rows = tuple(Row(cells(f"row {index}", "Two lines of words. " * 9)) for index in range(40))
    table = Table((Column("Short head"), Column("Other")), rows)
    document = _lay_out(Part("a", "1", "Title", "data", "", (table,)))
    assert len(document.pages) > 1
    whole = None
    for page in document.pages:
        texts = [text for text, _ in _boxes(page._page_box)]
        assert sum(text.text == "Short head" for text in texts) == 1
        rows_here = sum(text.text.startswith("row ") for text in texts)
        lines = sum("Two lines" in text.text or "lines of" in text.text for text in texts)
        whole = whole or lines / rows_here
        assert lines == whole * rows_here


def test_no_row_of_a_table_stands_alone_on_a_page() -> None:
    for above in range(30, 36):
        filler = tuple(Paragraph(inline(f"Paragraph {index}.")) for index in range(above))
        rows = tuple(Row(cells(f"row {index}", "Words.")) for index in range(6))
        table = Table((Column("Short head"), Column("Other")), rows)
        facts = Facts(tuple((f"row {index}", inline("Words.")) for index in range(6)))
        for block in (table, facts):
            document = _lay_out(Part("a", "1", "Title", "data", "", (*filler, Heading("Last heading"), block)))
            for page in document.pages:
                texts = [text.text for text, _ in _boxes(page._page_box)]
                assert sum(text.startswith("row ") for text in texts) != 1
                assert ("Last heading" in texts) <= ("row 1" in texts)


def test_decimal_points_of_a_column_stand_under_each_other() -> None:
    table = Table(
        (Column("Item"), Column("Value", "decimal")),
        tuple(Row(cells("x", value)) for value in ("1.5", "1,240", "0.375", "-3.25", "86")),
    )
    document = _lay_out(Part("a", "1", "Title", "data", "", (table,)))
    ends = []
    for text, cell in _boxes(document.pages[0]._page_box):
        if cell is not None and text.text in ("1,240", "86"):
            ends.append(text.position_x + text.width)
    assert len(ends) == 2
    assert ends[0] == pytest.approx(ends[1])


def test_a_figure_that_fits_keeps_its_size_and_a_wide_one_fills_the_measure() -> None:
    millimetre = 96 / 25.4
    for drawn, expected in ((160.0, 160.0), (240.0, 165.0)):
        figure = Figure("plan", tank_plan(drawn), "Caption", "Words")
        page = _lay_out(Part("a", "1", "Title", "drawing", "", (figure,))).pages[0]
        (drawing,) = [box for box in page._page_box.descendants() if type(box).__name__ == "BlockReplacedBox"]
        assert drawing.width / millimetre == pytest.approx(expected, abs=0.1)
        assert drawing.height / drawing.width == pytest.approx(0.3, abs=0.001)
        words = " ".join(text.text for text, _ in _boxes(page._page_box))
        assert ("Reduced to fit" in words) == (drawn > 165)
