"""The page of a byte is the one that another reader of PDF finds."""

from __future__ import annotations

import io

import pypdf
import pytest

from tenderwright.writing.pdf import Typeset
from tenderwright.writing.pdf_pages import page_at


def _drawn(pdf: bytes) -> dict[int, int]:
    """Give where the drawing of each page begins, as pypdf reads the file."""
    reader = pypdf.PdfReader(io.BytesIO(pdf))
    numbers = [page.raw_get("/Contents").idnum for page in reader.pages]
    return {page: reader.xref[0][number] for page, number in enumerate(numbers, start=1)}


def test_every_page_is_found_by_each_end_of_its_drawing(typeset: Typeset) -> None:
    starts = _drawn(typeset.pdf)
    assert len(starts) == typeset.page_count > 5
    for page, start in starts.items():
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
