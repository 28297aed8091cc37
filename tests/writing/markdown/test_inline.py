"""Inline Markdown: what is written reads back as the very same text, with the same stress and links."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from markdown_it.token import Token

from tenderwright.writing.markdown.inline import cell, heading, paragraph
from tenderwright.writing.markdown.layout import Listing, quoted, stacked
from tenderwright.writing.runs import Run, merged, plain_runs, text_runs, token_runs

_READER = MarkdownIt("commonmark").enable(["table", "strikethrough"])
"""Reads raw HTML as well, so that a tag left unescaped would be lost from the text."""

_TRICKY = st.sampled_from("\\`*_[]{}()<>#+-.!|&;~$=:\"'/@^ \u00a0\u20031a²é£—x")
_TEXT = st.text(_TRICKY | st.characters(exclude_categories=("Cc", "Cs")), max_size=24)
_PHRASES = st.sampled_from(
    ["1. a", "10) b", "+ c", "- d", "# e", "## f ##", "> g", "---", "***", "===", "```", "~~~", "<b>", "&amp;", "&#35;",
     "![x](y)", "[a]: b", "| a |", "a_b_c", "_a_", "<https://a.example>", "* x", "\\", "~~z~~", "$1 and $2", "R&D"]
)  # fmt: skip
TEXTS = st.lists(_TEXT | _PHRASES, max_size=4).map("".join)


def _inlines(markdown: str) -> list[Token]:
    return [token for token in _READER.parse(markdown) if token.type == "inline"]


def _words(token: Token) -> str:
    assert {child.type for child in token.children or ()} <= {"text"}
    return token.content and "".join(child.content for child in token.children or ())


def _expected(text: str) -> str:
    return plain_runs(text_runs(text)).strip(" ")


@given(TEXTS)
@example("a ## ")
def test_text_reads_back_from_a_paragraph_a_heading_an_entry_and_a_quotation(text: str) -> None:
    runs, expected = text_runs(text), _expected(text)
    for written in (
        paragraph(runs, {}),
        f"## {heading(runs, {})}",
        stacked([Listing(((paragraph(runs, {}),),))]),
        quoted([paragraph(runs, {})]),
    ):
        read = _inlines(written)
        assert [_words(token) for token in read if token.content] == ([expected] if expected else [])


@given(TEXTS, TEXTS)
def test_text_reads_back_from_cells(left: str, right: str) -> None:
    table = f"| a | b |\n| --- | --- |\n| {cell(text_runs(left), {})} | {cell(text_runs(right), {})} |"
    assert [_words(token) for token in _inlines(table)] == ["a", "b", _expected(left), _expected(right)]


_LINES = st.lists(TEXTS.map(lambda text: plain_runs(text_runs(text))), max_size=2)
_RUN = st.builds(
    Run,
    _LINES.map("\n".join),
    strong=st.booleans(),
    emphasis=st.booleans(),
    code=st.booleans(),
    target=st.sampled_from(["", "", "there", "gone"]),
    address=st.just(""),
)


def _letters(runs: tuple[Run, ...]) -> list[tuple[str, bool, bool, bool, str]]:
    return [
        (letter, run.strong, run.emphasis, run.code, run.target)
        for run in runs
        for letter in run.text
        if not letter.isspace()
    ]


def _kept(run: Run) -> Run:
    """Drop a link that leads nowhere; code in a link that holds a bracket is text."""
    target = run.target.removeprefix("gone")
    return replace(run, target=target, code=run.code and not (target and "]" in run.text))


@given(st.lists(_RUN, max_size=5))
@example([Run("0", emphasis=True), Run("0_0"), Run("0", emphasis=True, code=True)])
def test_stress_code_and_links_read_back(given_runs: list[Run]) -> None:
    runs = merged(replace(run, text=run.text.replace("\n", " ")) if run.code else run for run in given_runs)
    read = [run for token in _inlines(paragraph(runs, {"there": "there"})) for run in token_runs(token.children or ())]
    kept = merged(_kept(run) for run in runs)
    assert _letters(tuple(read)) == _letters(kept)
    assert plain_runs(tuple(read)).split() == plain_runs(kept).split()


@pytest.mark.parametrize(
    ("runs", "written"),
    [
        ((Run("Note: ", strong=True), Run("see there")), "**Note:** see there"),
        ((Run("fo"), Run("(o)", strong=True)), "f&#111;**(o)**"),
        ((Run("look!"), Run("there", target="there")), r"look\![there](#there)"),
        ((Run("See ", target="gone"), Run("item", target="gone")), "See item"),
        ((Run("https://example.org/a_b", address="https://example.org/a_b"),), "<https://example.org/a_b>"),
        ((Run("it", address="https://example.org/a(b"),), "[it](<https://example.org/a(b>)"),
        ((Run("a ` b", code=True),), "``a ` b``"),
        ((Run("1. June\n2. July"),), "1\\. June\\\n2\\. July"),
        ((Run("a < b, cc_dd, 3.5 - 2 & more"),), "a < b, cc_dd, 3.5 - 2 & more"),
    ],
)
def test_what_is_written(runs: tuple[Run, ...], written: str) -> None:
    assert paragraph(runs, {"there": "there"}) == written
