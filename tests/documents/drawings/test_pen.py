"""The pen writes SVG that any reader takes, and the same each time."""

from __future__ import annotations

import math
from importlib.resources import files
from xml.etree import ElementTree

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.documents.drawings import pen

from .ship import figures, texts


@pytest.mark.parametrize(
    ("value", "written"),
    [(0.0, "0"), (-0.001, "0"), (12.0, "12"), (12.345, "12.35"), (0.1 + 0.2, "0.3"), (-4.5, "-4.5"), (100.0, "100")],
)
def test_numbers_have_two_decimals_and_no_needless_zeros(value: float, written: str) -> None:
    assert pen.number(value) == written


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_a_number_that_is_not_finite_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="cannot hold"):
        pen.number(value)


@given(st.text())
def test_any_text_is_escaped_into_well_formed_svg(content: str) -> None:
    ElementTree.fromstring(pen.text((1, 2), content))
    ElementTree.fromstring(pen.element("g", {"class": content}))


def test_text_reads_back_as_written() -> None:
    assert ElementTree.fromstring(pen.text((0, 0), '<b> & "x" \x07')).text == '<b> & "x" '


def test_widths_are_on_the_wide_side_of_the_face_that_is_printed() -> None:
    """Source Sans sets every text of the drawings narrower than reckoned; its own advance widths say how wide."""
    faces = {bold: _face("Semibold" if bold else "Regular") for bold in (False, True)}
    for drawn in figures():
        for text in texts(drawn):
            regular = pen.text_width(text.content, text.size)
            bold = text.right - text.left > regular + 1e-6
            widths, per_em = faces[bold]
            set_ = sum(widths.get(ord(letter), per_em * 0.5) for letter in text.content) / per_em * text.size
            assert set_ <= text.right - text.left + 0.05, text


def _face(cut: str) -> tuple[dict[int, float], float]:
    source = files("font_source_sans_pro") / "files" / f"SourceSansPro-{cut}.ttf"
    with source.open("rb") as stream, TTFont(stream) as font:
        metrics = font["hmtx"].metrics
        return {code: metrics[name][0] for code, name in font.getBestCmap().items()}, font["head"].unitsPerEm


@given(st.text(alphabet="abc ,.10", max_size=40), st.floats(5, 60))
def test_shortened_text_fits_its_room(content: str, room: float) -> None:
    assert pen.text_width(pen.shortened(content, pen.SMALL, room), pen.SMALL) <= room
