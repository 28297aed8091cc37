"""The Markdown of whole editions: every block, every link with its heading, nothing lost."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import replace

import pytest
from markdown_it import MarkdownIt
from markdown_it.token import Token

from tenderwright.documents.edition import (
    Bullets,
    Edition,
    Facts,
    Heading,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
    plain,
)
from tenderwright.writing.errors import WritingError
from tenderwright.writing.markdown.document import markdown_document

from ..every_block import every_block, quantities
from ..sample import cells, draft_edition, prose, sample_edition
from ..starter_edition import starter_edition

_READER = MarkdownIt("commonmark").enable(["table", "strikethrough"])


def _tokens(edition: Edition) -> list[Token]:
    return list(_READER.parse(markdown_document(edition).decode()))


def _text(inline_token: Token) -> str:
    return "".join(" " if "break" in child.type else child.content for child in inline_token.children or ())


def _headings(tokens: list[Token]) -> list[tuple[str, str]]:
    return [(token.tag, _text(tokens[at + 1])) for at, token in enumerate(tokens) if token.type == "heading_open"]


def _places(headings: list[tuple[str, str]]) -> set[str]:
    """Name headings as GitHub does, by the character classes its own slug library lists (common practice)."""
    seen: dict[str, int] = {}
    for _, text in headings:
        kept = [letter for letter in text.lower() if letter in " -_" or unicodedata.category(letter)[0] in "LMN"]
        base = slug = "".join(kept).replace(" ", "-")
        while slug in seen:
            seen[base] += 1
            slug = f"{base}-{seen[base]}"
        seen[slug] = 0
    return set(seen)


def _links(tokens: list[Token]) -> list[str]:
    return [str(child.attrs["href"]) for token in tokens for child in token.children or () if child.type == "link_open"]


@pytest.mark.parametrize("edition", [every_block(), sample_edition(), draft_edition(), starter_edition()])
def test_every_link_leads_to_a_heading_or_the_web(edition: Edition) -> None:
    tokens = _tokens(edition)
    places = _places(_headings(tokens))
    internal = [link for link in _links(tokens) if link.startswith("#")]
    assert internal
    assert {link[1:] for link in internal} - places == set()
    assert all(link.startswith(("#", "https://")) for link in _links(tokens))


@pytest.mark.parametrize("edition", [every_block(), sample_edition(), starter_edition()])
def test_no_words_are_lost(edition: Edition) -> None:
    read = " ".join(" ".join(_text(token) for token in _tokens(edition) if token.type == "inline").split())
    for part in edition.parts:
        for block in part.blocks:
            for words in _words(block):
                assert " ".join(words.split()) in read


def _words(block: object) -> list[str]:
    match block:
        case Table():
            return [block.caption, plain(block.note), *(plain(cell) for row in block.rows for cell in row.cells)]
        case Facts():
            return [text for term, words in block.pairs for text in (term, plain(words))]
        case Bullets():
            return [plain(entry) for entry in block.entries]
        case Paragraph():
            return [plain(block.text)]
        case Heading():
            return [block.text]
    return []


def test_headings_stand_below_each_other() -> None:
    assert _headings(_tokens(every_block())) == [
        ("h1", "Docking of the lighthouse tender Marram"),
        ("h2", "Contents"),
        ("h2", "420 Tanks"),
        ("h3", "Requirements"),
        ("h4", "Hot work"),
        ("h4", "Of the shell"),
        ("h4", "Beside"),
        ("h2", "D-12 Tank plan"),
    ]


def test_a_table_keeps_its_rows_its_columns_and_how_they_line_up() -> None:
    edition = replace(every_block(), parts=(Part("a", "", "A", "front", "", (quantities(),)),))
    tokens = _tokens(edition)
    kinds = [token.type for token in tokens]
    assert (kinds.count("table_open"), kinds.count("tr_open"), kinds.count("th_open")) == (1, 7, 5)
    assert kinds.count("td_open") == 30
    aligns = [token.attrs.get("style") for token in tokens if token.type == "th_open"]
    assert aligns == [None, None, "text-align:right", "text-align:right", "text-align:center"]
    written = markdown_document(edition).decode()
    assert r"| **Measured \| lines** |  |  |  |  |" in written
    assert "|  | **Total** | **1,252.875** | **1,200.00** | **m2** |" in written


def test_a_row_with_too_many_cells_is_refused() -> None:
    table = replace(quantities(), rows=(Row(cells(*"abcdef")),))
    with pytest.raises(WritingError, match="1 cells too many"):
        markdown_document(replace(every_block(), parts=(Part("a", "", "A", "front", "", (table,)),)))


def test_prose_reads_back_as_it_was() -> None:
    written = markdown_document(every_block()).decode()
    for piece in (
        "She was built with **riveted _laps_ and butts**; see the tank plan, nothing and "
        "[the society](<https://example.org/a_(b)?c=1\\&d=2>).\\\n"
        "A second line with `code` and the stern (`stern.png`).",
        "1. Wash.\n\n2. Measure:\n\n   - at frames,\n\n   - between frames;\n\n     and write it down.\n\n3. Report.",
        "> Quoted words of the surveyor.",
        "```\nfr  31  9.5\n```",
        "\n---\n",
        "| Place | mm |\n| --- | ---: |\n| Fr 31 | 9.5 |\n| Fr 32 | 8.1 |",
    ):
        assert piece in written


def test_steps_cautions_drawings_and_neighbouring_lists() -> None:
    written = markdown_document(every_block()).decode()
    for piece in (
        "- **420.1** Open the tank. See plan and [clause](#hot-work).",
        "- **420.2 (HOLD H1)** Wash:\n\n  - at 200 bar;\n  - with fresh water.",
        "> **Before entry**\n>\n> The tank may lack oxygen.\n>\n> **No entry**.",
        "**Tank plan. Scale 1:250.**\n\nPlan of the double bottom tanks. _The drawing itself is in the PDF._",
        "- **Drawing:** D-12\n\n* one\n* gone\n\n- another list",
        "**Strong:** faint and `code`",
        "Read [item 420](#420-tanks), line a.",
    ):
        assert piece in written


def test_the_head_says_what_the_edition_is() -> None:
    head = markdown_document(draft_edition()).decode().partition("## ")[0]
    assert head.startswith("# Docking of the lighthouse tender Marram\n\nSpecification for docking,")
    assert "**CONFIDENTIAL · DRAFT**" in head
    assert "- **Owner:** Harrow Point Lighthouse Tender Trust\n- **Tender:** HP-2026-01" in head
    assert "- **State:** DRAFT, uncommitted changes" in head
    assert re.search(r"^> This is a planning and tender document\.", head, re.MULTILINE)


def test_equal_headings_are_told_apart() -> None:
    blocks = (Heading("Scope", 2, "one"), Heading("Scope", 2, "two"), Paragraph(inline(Span("it", target="two"))))
    edition = replace(every_block(), parts=(Part("a", "", "Scope", "front", "", blocks),))
    assert "[it](#scope-2)" in markdown_document(edition).decode()


def test_a_reference_left_unresolved_is_refused() -> None:
    edition = replace(every_block(), parts=(Part("a", "", "A", "front", "", (prose("See <item:420>."),)),))
    with pytest.raises(WritingError, match="item:420"):
        markdown_document(edition)
