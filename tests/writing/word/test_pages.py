"""Pages and tables of Word documents: paper, heads and feet, widths, titles repeated, figures on their points."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from docx.enum.section import WD_ORIENTATION
from docx.enum.text import WD_ALIGN_PARAGRAPH, WD_TAB_ALIGNMENT
from docx.oxml.ns import qn
from docx.oxml.parser import parse_xml
from docx.shared import Mm, Twips
from docx.table import Table as WordTable

from tenderwright.documents.edition import Edition
from tenderwright.writing.word.document import word_document
from tenderwright.writing.word.tables import shares
from tests.programs import convert, lacking

from ..every_block import every_block
from ..sample import draft_edition, sample_edition
from ..starter_edition import starter_edition
from .opened import TIMESTAMP, opened, parts_of, small

_ORDERS = {
    "pPr": "pStyle keepNext keepLines pageBreakBefore framePr widowControl numPr suppressLineNumbers pBdr shd tabs "
    "suppressAutoHyphens kinsoku wordWrap overflowPunct topLinePunct autoSpaceDE autoSpaceDN bidi adjustRightInd "
    "snapToGrid spacing ind contextualSpacing mirrorIndents suppressOverlap jc textDirection textAlignment "
    "textboxTightWrap outlineLvl divId cnfStyle rPr sectPr pPrChange",
    "rPr": "rStyle rFonts b bCs i iCs caps smallCaps strike dstrike outline shadow emboss imprint noProof snapToGrid "
    "vanish webHidden color spacing w kern position sz szCs highlight u effect bdr shd fitText vertAlign rtl cs em "
    "lang eastAsianLayout specVanish oMath",
    "tblPr": "tblStyle tblpPr tblOverlap bidiVisual tblStyleRowBandSize tblStyleColBandSize tblW jc tblCellSpacing "
    "tblInd tblBorders shd tblLayout tblCellMar tblLook tblCaption tblDescription",
    "tcPr": "cnfStyle tcW gridSpan hMerge vMerge tcBorders shd noWrap tcMar textDirection tcFitText vAlign hideMark",
    "sectPr": "headerReference footerReference footnotePr endnotePr type pgSz pgMar paperSrc pgBorders lnNumType "
    "pgNumType cols formProt vAlign noEndnote titlePg textDirection bidi rtlGutter docGrid",
    "style": "name aliases basedOn next link autoRedefine hidden uiPriority semiHidden unhideWhenUsed qFormat locked "
    "personal personalCompose personalReply rsid pPr rPr tblPr trPr tcPr tblStylePr",
    "lvl": "start numFmt lvlRestart pStyle isLgl suff lvlText lvlPicBulletId legacy lvlJc pPr rPr",
}
"""The order of children in these elements (ECMA-376-1, annex A, the schema wml.xsd), which Word insists on."""


@pytest.mark.parametrize(
    "edition", [every_block(), draft_edition(), starter_edition()], ids=["blocks", "draft", "starter"]
)
def test_properties_stand_in_the_order_of_the_schema(edition: Edition) -> None:
    for name, content in parts_of(word_document(edition, TIMESTAMP)).items():
        if name.startswith("word/") and name.endswith(".xml"):
            root = parse_xml(content)
            for kind, order in _ORDERS.items():
                places = {qn(f"w:{child}"): place for place, child in enumerate(order.split())}
                for found in root.iter(qn(f"w:{kind}")):
                    standing = [places[child.tag] for child in found]
                    assert standing == sorted(standing), [child.tag for child in found]


def test_sections_take_the_paper_and_turn_it_for_wide_parts() -> None:
    sections = list(small().sections)
    assert [section.orientation for section in sections] == [WD_ORIENTATION.PORTRAIT] * 3 + [WD_ORIENTATION.LANDSCAPE]
    widths = [round(section.page_width.mm) for section in sections if section.page_width is not None]
    assert widths == [210, 210, 210, 297]
    letter = opened(draft_edition()).sections[0]
    assert letter.page_width is not None
    assert letter.page_width.inches == pytest.approx(8.5, abs=0.001)
    assert letter.page_height is not None
    assert letter.page_height.inches == pytest.approx(11, abs=0.001)


def test_heads_and_feet_say_what_the_document_is() -> None:
    cover, contents, item, drawing = small().sections
    assert cover.different_first_page_header_footer
    assert not contents.different_first_page_header_footer
    for section in (contents, item, drawing):
        assert section.header.paragraphs[0].text == "HP-2026-01 · Docking of the lighthouse tender Marram"
        foot = section.footer.paragraphs[-1]
        assert foot.text.startswith("Commit 1a2b3c4\tPage ")
        fields = [found.get(qn("w:instr")) for found in foot._p.iter(qn("w:fldSimple"))]
        assert fields == ["PAGE", "NUMPAGES"]
        stop = foot.paragraph_format.tab_stops[0]
        assert stop.position == pytest.approx(_text_width(section), abs=Twips(2))
    cautions = ["planning and tender document" in section.footer.paragraphs[0].text for section in small().sections]
    assert cautions == [False, False, True, False]


def test_a_confidential_draft_says_so_on_every_page() -> None:
    for section in opened(draft_edition()).sections:
        assert section.header.paragraphs[0].text.endswith("\tCONFIDENTIAL · DRAFT")


def _text_width(section: Any) -> int:
    return int(section.page_width - section.left_margin - section.right_margin)


def _quantities() -> WordTable:
    return next(table for table in small().tables if table.cell(0, 0).text == "Line")


def test_titles_of_a_table_are_repeated_and_rows_do_not_break() -> None:
    table = _quantities()
    assert [row._tr.trPr is not None and row._tr.trPr.find(qn("w:tblHeader")) is not None for row in table.rows] == [
        True,
        *[False] * 6,
    ]
    assert all(row._tr.trPr is not None and row._tr.trPr.find(qn("w:cantSplit")) is not None for row in table.rows)
    assert table.style is not None
    assert table.style.name == "Tender Table"
    look = table._tbl.tblPr.find(qn("w:tblLook"))
    assert look is not None
    assert look.get(qn("w:firstRow")) == "1"
    alternative = table._tbl.tblPr.find(qn("w:tblCaption"))
    assert alternative is not None
    assert alternative.get(qn("w:val")) == "Quantities of item 420"


def test_columns_take_their_share_of_the_text() -> None:
    table = _quantities()
    widths = [column.width for column in table.columns]
    assert None not in widths
    assert sum(width or 0 for width in widths) == pytest.approx(Mm(170), abs=Twips(2))
    assert [round((width or 0) / Mm(170) * 6.3, 2) for width in widths] == [0.7, 3.0, 1.0, 1.0, 0.6]
    assert table.rows[1].cells[0]._tc.grid_span == 5


@pytest.mark.parametrize(("parts", "whole"), [([1.0, 1.0, 1.0], 100), ([0.7, 3.1, 0.35], 9638), ([2.0], 7)])
def test_shares_lose_nothing(parts: list[float], whole: int) -> None:
    shared = shares(parts, whole)
    assert sum(shared) == whole
    assert all(abs(share - whole * part / sum(parts)) <= 1 for share, part in zip(shared, parts, strict=True))


def test_figures_stand_on_their_points_and_words_at_the_right() -> None:
    table = _quantities()
    figures = [table.cell(row, 2).paragraphs[0] for row in (2, 3, 4)]
    stops = [figure.paragraph_format.tab_stops[0] for figure in figures]
    assert {stop.alignment for stop in stops} == {WD_TAB_ALIGNMENT.DECIMAL}
    assert len({stop.position for stop in stops}) == 1
    assert stops[0].position < table.columns[2].width
    assert table.cell(3, 3).paragraphs[0].alignment == WD_ALIGN_PARAGRAPH.RIGHT
    assert table.cell(0, 2).paragraphs[0].alignment == WD_ALIGN_PARAGRAPH.RIGHT
    assert table.cell(2, 4).paragraphs[0].alignment == WD_ALIGN_PARAGRAPH.CENTER


def test_a_table_is_followed_by_a_paragraph() -> None:
    """Word joins tables that touch, and needs a paragraph at the end."""
    for edition in (every_block(), sample_edition(2)):
        for table in opened(edition).tables:
            following = table._tbl.getnext()
            assert following is not None
            assert following.tag == qn("w:p")


def _pages_of(folder: Path, source: Path) -> list[str] | None:
    """Convert with LibreOffice and read the pages; none where its writer of texts is not installed."""
    (made,) = convert([source], "pdf", folder, folder / "profile")
    if not made.exists():
        return None
    text = subprocess.run(["pdftotext", "-layout", made, "-"], check=True, capture_output=True, text=True).stdout
    return text.split("\f")[:-1]


@pytest.fixture(scope="module")
def office(tmp_path_factory: pytest.TempPathFactory) -> Callable[[bytes], list[str]]:
    folder = tmp_path_factory.mktemp("office")
    plain = folder / "plain.rtf"
    plain.write_text(r"{\rtf1 words}", "ascii")
    if _pages_of(folder, plain) is None:
        lacking("the Writer of LibreOffice")

    def pages(made: bytes) -> list[str]:
        source = folder / "edition.docx"
        source.write_bytes(made)
        read = _pages_of(folder, source)
        assert read is not None
        return read

    return pages


@pytest.mark.needs("soffice", "pdftotext")
def test_libreoffice_sets_every_part_on_its_pages(office: Callable[[bytes], list[str]]) -> None:
    pages = [" ".join(page.split()) for page in office(word_document(every_block(), TIMESTAMP))]
    cover, contents, *items, drawing = pages
    assert "Docking of the lighthouse tender Marram" in cover
    assert "Page" not in cover
    assert "Contents 420 Tanks D-12 Tank plan" in contents
    assert f"Commit 1a2b3c4 Page 2 of {len(pages)}" in contents
    assert "420 Tanks" in items[0]
    assert "This is a planning and tender document" in items[-1]
    assert "420.2 HOLD H1 Wash: – at 200 bar;" in " ".join(items)
    assert "1. Wash. 2. Measure: – at frames, – between frames; and write it down. 3. Report." in " ".join(items)
    assert "D-12 Tank plan Drawings Tank plan. Scale 1:250. Plan of the double bottom" in drawing
    assert f"Page {len(pages)} of {len(pages)}" in drawing
