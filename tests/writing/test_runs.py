"""Runs: spans and parsed prose alike, tables of prose, rows filled up."""

from __future__ import annotations

import pytest
from markdown_it import MarkdownIt
from markdown_it.token import Token
from markdown_it.tree import SyntaxTreeNode

from tenderwright.documents.edition import Row, Span, inline
from tenderwright.writing.errors import WritingError
from tenderwright.writing.prose_tables import prose_table
from tenderwright.writing.runs import Run, merged, plain_runs, span_runs, text_runs, token_runs
from tenderwright.writing.table_cells import row_cells

from .every_block import quantities
from .sample import cells

_PARSER = MarkdownIt("commonmark", {"html": False}).enable("table")


def _children(text: str) -> list[Token]:
    return _PARSER.parse(text)[1].children or []


def test_spans_and_prose_give_the_same_runs() -> None:
    spans = span_runs(
        inline("See ", Span("item", target="item-1"), " and ", Span("not", strong=True), Span("c", code=True))
    )
    assert token_runs(_children("See [item](#item-1) and **not**`c`")) == spans
    assert spans == (
        Run("See "),
        Run("item", target="item-1"),
        Run(" and "),
        Run("not", strong=True),
        Run("c", code=True),
    )


def test_stress_is_nested_and_lines_break_only_where_told() -> None:
    assert token_runs(_children("a\nb\\\nc **d *e***")) == (
        Run("a b\nc "),
        Run("d ", strong=True),
        Run("e", strong=True, emphasis=True),
    )
    assert text_runs("a\n\t b\u00a0c") == (Run("a b\u00a0c"),)


def test_web_addresses_and_pictures() -> None:
    assert token_runs(_children("<https://example.org/>")) == (
        Run("https://example.org/", address="https://example.org/"),
    )
    assert token_runs(_children("![The *old*\nstern](a.png)")) == (
        Run("The old stern ("),
        Run("a.png", code=True),
        Run(")"),
    )


@pytest.mark.parametrize("text", ["[a](item:420)", "[a](file.txt)"])
def test_a_link_to_neither_anchor_nor_web_is_refused(text: str) -> None:
    with pytest.raises(WritingError, match="neither an anchor nor a web address"):
        token_runs(_PARSER.parse(text)[1].children or [])


def test_what_is_not_known_is_refused() -> None:
    with pytest.raises(WritingError, match="s_open"):
        token_runs([Token("s_open", "s", 1)])
    with pytest.raises(WritingError, match="math"):
        token_runs([Token("math", "", 0)])


def test_equal_neighbours_are_joined_and_empty_runs_left_out() -> None:
    assert merged([Run("a"), Run(""), Run("b"), Run("", strong=True), Run("c", faint=True)]) == (
        Run("ab"),
        Run("c", faint=True),
    )
    assert plain_runs((Run("a"), Run("b"))) == "ab"


def test_a_table_of_prose() -> None:
    tree = SyntaxTreeNode(_PARSER.parse("| A | *b* | c |\n|---|--:|:-:|\n| 1 | 2 | |\n"))
    table = prose_table(tree.children[0])
    assert table.titles == ((Run("A"),), (Run("b", emphasis=True),), (Run("c"),))
    assert table.aligns == ("left", "right", "centre")
    assert table.rows == (((Run("1"),), (Run("2"),), ()),)


def test_rows_are_filled_up_and_never_cut() -> None:
    table = quantities()
    assert row_cells(table, Row(cells("a"))) == (inline("a"), (), (), (), ())
    with pytest.raises(WritingError, match="2 cells too many"):
        row_cells(table, Row(cells(*"abcdefg")))
