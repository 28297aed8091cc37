"""How long what stands under a heading of a funder's form is, counted as the funder counts it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from markdown_it.token import Token

from tenderwright.documents.edition import (
    Block,
    Bullets,
    Facts,
    Heading,
    Inline,
    Paragraph,
    Pictures,
    Prose,
    Table,
    each_block,
    plain,
)
from tenderwright.model.profile import LengthLimit

_LETTER_OR_DIGIT = re.compile(r"\w")


def length(title: str, blocks: Iterable[Block], limit: LengthLimit) -> int:
    """Count what stands under a heading, in words or characters.

    A word is what stands between spaces and holds a letter or a digit. Of characters, runs of spaces count as one, and
    so does the end of a paragraph, of a list's entry or of a cell. No source: common practice of word processors.
    """
    texts = [" ".join(text.split()) for text in _texts(title, blocks, limit.counts)]
    if limit.of == "words":
        return sum(1 for text in texts for word in text.split() if _LETTER_OR_DIGIT.search(word))
    if limit.of == "characters without spaces":
        return sum(len(text.replace(" ", "")) for text in texts)
    return len("\n".join(text for text in texts if text))


def _texts(title: str, blocks: Iterable[Block], counts: tuple[str, ...]) -> Iterator[str]:
    """Yield every text that counts: running text always, headings and tables where the funder counts them."""
    for kind, text in [("headings", title), *_pieces(blocks)]:
        if not kind or kind in counts:
            yield text


def _pieces(blocks: Iterable[Block]) -> Iterator[tuple[str, str]]:
    for block in each_block(blocks):
        match block:
            case Heading():
                yield "headings", block.text
            case Paragraph():
                yield ("tables" if block.as_note else ""), plain(block.text)
            case Prose():
                yield from _of_prose(block.tokens)
            case Bullets():
                yield from (("", plain(entry)) for entry in block.entries)
            case Pictures():
                yield from (("", one.words) for one in block.pictures)
            case Facts():
                yield from (("tables", text) for term, words in block.pairs for text in (term, plain(words)))
            case Table():
                yield from (("tables", text) for text in _of_table(block))
            case _:
                raise AssertionError(f"an application has no {type(block).__name__} to count")


def _of_table(table: Table) -> Iterator[str]:
    yield table.caption
    yield from (column.title for column in table.columns)
    cells: list[Inline] = [cell for row in table.rows for cell in row.cells]
    yield from (plain(text) for text in [*cells, table.note])


def _of_prose(tokens: Iterable[Token]) -> Iterator[tuple[str, str]]:
    inside = ""
    for token in tokens:
        if token.type in ("table_open", "heading_open"):
            inside = "tables" if token.type == "table_open" else "headings"
        elif token.type in ("table_close", "heading_close"):
            inside = ""
        elif token.type in ("fence", "code_block"):
            yield inside, token.content
        elif token.type == "inline":
            breaks = ("softbreak", "hardbreak")
            yield inside, "".join(" " if one.type in breaks else one.content for one in token.children or ())
