"""Parts are fitted to their pages: none ends on a page of left-overs, none is made small for nothing."""

from __future__ import annotations

import io
from dataclasses import replace

import pikepdf
import pytest

from tenderwright.documents.edition import Block, Edition, Figure, Heading, Paragraph, Part, inline
from tenderwright.writing.html import part_html
from tenderwright.writing.typesetting.fit import CLOSE, LEAST
from tenderwright.writing.typesetting.setter import PartSetter
from tenderwright.writing.typesetting.sheets import SHEETS, form_of, sheet_class, sheet_named

from .sample import sample_edition, tank_plan

_SHEET = SHEETS["A4", ""]
_POINT = 72 / 25.4
_LINES = Paragraph(inline("A line of the part that is long enough to be broken in two by the measure. " * 2))


def _edition(part: Part, size: str = "A4") -> Edition:
    return replace(sample_edition(0), parts=(part,), page_size=size)


@pytest.fixture(scope="module")
def setter() -> PartSetter:
    return PartSetter()


def _set(
    setter: PartSetter, paragraphs: int, *, kind: str = "front", figure: bool = False, size: str = "A4"
) -> pikepdf.Pdf:
    drawn: tuple[Block, ...] = (Figure("plan", tank_plan(), "Caption", "Words"),) if figure else ()
    part = Part("a", "1", "Title", kind, "", (*drawn, *[_LINES] * paragraphs))  # type: ignore[arg-type]
    return pikepdf.open(io.BytesIO(setter.set("a", part_html(_edition(part, size), part, with_style=False))))


def _sizes(pdf: pikepdf.Pdf) -> set[float]:
    """Give the scales in which the pages are painted, of the typesetter's own."""
    return {float(page.Contents.read_bytes().split(b"\n")[2].split()[0]) / 0.75 for page in pdf.pages}


def _lines(page: pikepdf.Page) -> int:
    return page.Contents.read_bytes().count(b"Tm\n")


def _counts(setter: PartSetter, **how: str | bool) -> list[list[int]]:
    """Give the lines on each page of parts that grow from one page to more than two."""
    return [[_lines(page) for page in _set(setter, n, **how).pages] for n in range(22, 36)]  # type: ignore[arg-type]


def test_no_part_ends_on_a_page_of_left_overs(setter: PartSetter) -> None:
    counts = _counts(setter)
    assert {len(pages) for pages in counts} == {1, 2}
    assert min(pages[-1] / max(pages) for pages in counts) > LEAST - 0.05


def test_a_part_is_set_smaller_only_where_that_saves_a_page(setter: PartSetter) -> None:
    for paragraphs in range(22, 36):
        pdf = _set(setter, paragraphs)
        (size,) = _sizes(pdf)
        assert size == pytest.approx(1.0) or (size == pytest.approx(CLOSE) and len(pdf.pages) == 1)


def test_a_page_set_smaller_is_as_large_as_the_others(setter: PartSetter) -> None:
    close = next(pdf for n in range(22, 36) if _sizes(pdf := _set(setter, n)) != {1.0})
    sides = [float(side) for side in close.pages[0].MediaBox]
    assert sides == pytest.approx([0, 0, _SHEET.width * _POINT, _SHEET.height * _POINT], abs=0.01)


def test_what_is_drawn_to_scale_keeps_its_size(setter: PartSetter) -> None:
    for paragraphs in range(16, 30):
        (size,) = _sizes(_set(setter, paragraphs, figure=True))
        assert size == pytest.approx(1.0)


def test_what_is_laid_out_by_hand_stays_as_it_is(setter: PartSetter) -> None:
    counts = [[_lines(page) for page in _set(setter, n, kind="drawing").pages] for n in range(22, 36)]
    assert min(pages[-1] / max(pages) for pages in counts if len(pages) > 1) < LEAST - 0.1


def test_every_sheet_is_found_by_its_name() -> None:
    for (size, form), sheet in SHEETS.items():
        assert sheet_named(sheet_class(size, form)) == sheet
    assert form_of("cover", False) == "cover"
    assert form_of("data", True) == "landscape"


@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_the_same_part_is_set_the_same(setter: PartSetter, size: str) -> None:
    blocks = (Heading("Here"), *[_LINES] * 27)
    part = Part("a", "1", "Title", "front", "", blocks)
    page = part_html(_edition(part, size), part, with_style=False)
    assert setter.set("a", page) == PartSetter().set("a", page)
