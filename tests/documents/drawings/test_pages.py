"""Each sheet with its caption stands on one page of the package's size, at the scale that it states."""

from __future__ import annotations

import pytest

from tenderwright.documents.drawings.framed import ROOMS
from tenderwright.documents.edition import Part
from tenderwright.writing.html import part_html
from tenderwright.writing.typesetting.sheets import SHEETS
from tests.replacing import replace
from tests.writing.sample import sample_edition

from .ship import SHIPS, figures


def test_a_frame_is_as_wide_as_its_page_leaves() -> None:
    for size, room in ROOMS.items():
        page = SHEETS[size, "drawing"]  # type: ignore[index]
        assert 0 <= page.width - page.left - page.right - room.width < 1
        assert page.height - page.top - page.bottom - room.height > 15


@pytest.mark.parametrize("of", SHIPS)
def test_a_sheet_and_its_caption_take_one_page_and_are_not_reduced(of: str) -> None:
    from weasyprint import HTML

    from tenderwright.writing.fetching import build_fetcher

    edition = replace(sample_edition(), page_size="Letter" if of == "Kestrel Bank" else "A4")
    longest = max(figures(of), key=lambda one: len(one.caption))
    for drawn in {figures(of)[0].name: figures(of)[0], longest.name: longest}.values():
        part = Part("sheet", "D1", drawn.title, "drawing", "Drawings", (drawn,), landscape=True, audience="yard")
        page = part_html(edition, part)
        assert "Reduced" not in page
        assert len(HTML(string=page, url_fetcher=build_fetcher()).render().pages) == 1
