from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from tenderwright.linking.prose import KINDS, _parser, parse_prose, references_in


def found(text: str) -> list[tuple[str, str, int]]:
    return [(kind, name, nth) for kind, name, _, nth in references_in(text)]


@pytest.mark.parametrize(
    ("text", "references"),
    [
        ("See <item:420>.", [("item", "420", 0)]),
        ("See [the forepeak](tank:forepeak).", [("tank", "forepeak", 0)]),
        ("See [it][1].\n\n[1]: clause:hot-work", [("clause", "hot-work", 0)]),
        ("Area <value:coating.underwater-spot.area>", [("value", "coating.underwater-spot.area", 0)]),
        ("- <item:1>\n- <item:2>\n\n> <item:1>", [("item", "1", 0), ("item", "2", 0), ("item", "1", 1)]),
        ("|a|b|\n|-|-|\n|<item:1>|x|", [("item", "1", 0)]),
        ("**<item:1>**", [("item", "1", 0)]),
        ("<https://example.org> <mailto:a@b.c>", []),
        ("[x](other.md) [y](#z)", [("", "other.md", 0), ("", "#z", 0)]),
        ("`<item:1>`", []),
        ("```\n<item:1>\n```", []),
        ("`<item:1>` then <item:1>", [("item", "1", 1)]),
        ("```\n<item:1> <item:10>\n```\n\n<item:1>", [("item", "1", 1)]),
        (r"\<item:1>", []),
        ("<item: 420>", []),
        ("<b>bold</b>", []),
        ("<beam:3>", [("beam", "3", 0)]),
        ("no references", []),
    ],
)
def test_references_are_commonmark_links(text: str, references: list[tuple[str, str, int]]) -> None:
    assert found(text) == references


def test_raw_html_is_text() -> None:
    tokens = parse_prose("a <b>bold</b> word\n\n<div>block</div>")
    assert not [token for token in tokens if token.type.startswith("html")]
    assert not [child for token in tokens for child in token.children or () if child.type.startswith("html")]


@given(st.lists(st.tuples(st.sampled_from(KINDS), st.from_regex(r"[a-z][a-z0-9]{0,5}", fullmatch=True)), max_size=6))
def test_every_reference_written_is_found_in_order(names: list[tuple[str, str]]) -> None:
    text = " and ".join(f"<{kind}:{name}>" for kind, name in names)
    assert [(kind, name) for kind, name, _ in found(text)] == names


@given(st.text())
def test_any_text_is_prose(text: str) -> None:
    for kind, name, words, nth in references_in(text):
        assert words == f"{kind}:{name}"
        assert nth >= 0


@given(st.sampled_from(KINDS), st.from_regex(r"[A-Za-z0-9._-]+", fullmatch=True))
def test_a_reference_is_written_as_commonmark_writes_it(kind: str, name: str) -> None:
    ours, plain, url = _parser(), MarkdownIt("commonmark"), f"{kind}:{name}"
    assert ours.normalizeLink(url) == plain.normalizeLink(url)
    assert ours.normalizeLinkText(url) == plain.normalizeLinkText(url)
