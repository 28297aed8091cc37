"""The page of a byte is the one that another reader of PDF finds."""

from __future__ import annotations

import io

import pypdf
import pytest

from tenderwright.writing.pdf import Typeset
from tenderwright.writing.pdf_pages import page_at


def drawn(pdf: bytes) -> list[tuple[int, int]]:
    """Give each page with where a stream that draws it begins, as pypdf reads the file."""
    reader = pypdf.PdfReader(io.BytesIO(pdf))
    found = []
    for number, page in enumerate(reader.pages, start=1):
        contents = page.raw_get("/Contents")
        found += [
            (number, reader.xref[0][one.idnum]) for one in (contents if isinstance(contents, list) else [contents])
        ]
    return found


def test_every_page_is_found_by_each_end_of_its_drawing(typeset: Typeset) -> None:
    starts = drawn(typeset.pdf)
    assert len(starts) == 2 * typeset.page_count - 1 > 9, "each page has its margins, but for the cover"
    for page, start in starts:
        end = typeset.pdf.index(b"\nendstream", start)
        assert {page_at(typeset.pdf, at) for at in (start, start + 9, (start + end) // 2, end - 1)} == {page}


@pytest.mark.parametrize("at", [0, -1, 10**9])
def test_a_byte_of_no_page(typeset: Typeset, at: int) -> None:
    assert page_at(typeset.pdf, at if at >= 0 else len(typeset.pdf) - 1) is None


def test_a_pdf_of_another_hand_has_no_pages_that_we_know() -> None:
    output = io.BytesIO()
    writer = pypdf.PdfWriter()
    writer.add_blank_page(100, 100)
    writer.write(output)
    assert page_at(output.getvalue(), 40) is None
