"""Parse the CommonMark of a package and find the references in it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache, lru_cache
from urllib.parse import unquote

from markdown_it import MarkdownIt
from markdown_it.token import Token

from tenderwright.reading.source import whole_words

KINDS = (
    "item",
    "tank",
    "opening",
    "zone",
    "scheme",
    "strake",
    "anode",
    "appendage",
    "shaft",
    "drawing",
    "facility",
    "clause",
    "docking",
    "part",
    "frame",
    "value",
)
"""What prose may refer to, as the scheme of a link: `<item:420>`, `[the forepeak](tank:forepeak)`."""

_NAMED = re.compile(rf"(?:{'|'.join(KINDS)}):[A-Za-z0-9._-]+")
"""A reference that no page writes otherwise."""

WEB = ("http", "https", "mailto")
"""The schemes of links that lead out of the package."""


class _Parser(MarkdownIt):
    """CommonMark, quicker with what prose refers to: `item:420` is taken apart and put together again by no rule."""

    def normalizeLink(self, url: str) -> str:
        """Give a link as it is written into a page."""
        return url if _NAMED.fullmatch(url) else super().normalizeLink(url)

    def normalizeLinkText(self, link: str) -> str:
        """Give the words shown for a link that has none of its own."""
        return link if _NAMED.fullmatch(link) else super().normalizeLinkText(link)


@cache
def _parser() -> MarkdownIt:
    return _Parser("commonmark", {"html": False}).enable("table")


@lru_cache(maxsize=16384)
def parse_prose(text: str) -> tuple[Token, ...]:
    """Parse CommonMark (with tables, without raw HTML) into tokens; do not change what comes back."""
    return tuple(_parser().parse(text))


def references_in(text: str) -> Iterator[tuple[str, str, str, int]]:
    """Yield kind, name, the words as written, and which occurrence of those words, for each reference.

    A link that names no kind, such as one to a file or a heading, has the kind "".
    """
    if "<" not in text and "](" not in text and "]:" not in text:
        return
    seen: dict[str, int] = {}
    code: list[str] = []
    for token in parse_prose(text):
        if token.type in ("fence", "code_block"):
            code.append(token.content)
        for child in token.children or ():
            if child.type == "code_inline":
                code.append(child.content)
            if child.type != "link_open":
                continue
            href = unquote(str(child.attrs.get("href", "")))
            kind, colon, name = href.partition(":")
            if kind in WEB and colon:
                continue
            if not colon:
                kind, name = "", href
            nth = seen.get(href, 0)
            seen[href] = nth + 1
            yield kind, name, href, nth + sum(_times(href, shown) for shown in code)


def _times(words: str, text: str) -> int:
    """Count the words in code, which shows a reference without making it."""
    return sum(1 for _ in whole_words(text, words))
