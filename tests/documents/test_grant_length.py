"""What stands under a heading is counted as the funder counts it."""

from __future__ import annotations

import pytest

from tenderwright.documents.edition import Block, Bullets, Column, Facts, Heading, Paragraph, Prose, Row, Table, inline
from tenderwright.documents.grant_length import length
from tenderwright.linking.prose import parse_prose
from tenderwright.model.profile import LengthLimit
from tests.planning.applications import HERE

WRITTEN = "One *two*\nthree – four.\n\n## Five\n\n| six | seven |\n|---|---|\n| 8 | 9 |\n\n- ten"
TABLE = Table((Column("Day"), Column("What")), (Row((inline("1 May"), inline("Docked"))),), note=inline("A note."))
BLOCKS: list[Block] = [
    Prose(parse_prose(WRITTEN)),
    Heading("Milestones"),
    TABLE,
    Facts((("Ship", inline("Marram")),)),
    Paragraph(inline("In all.")),
    Bullets((inline("one"), inline("other"))),
]


def counted(of: str, *counts: str) -> int:
    return length("The need", BLOCKS, LengthLimit(most=1, of=of, counts=counts, here=HERE))


@pytest.mark.parametrize(
    ("counts", "words"), [((), 9), (("headings",), 13), (("tables",), 22), (("headings", "tables"), 26)]
)
def test_headings_and_tables_count_where_the_funder_counts_them(counts: tuple[str, ...], words: int) -> None:
    assert counted("words", *counts) == words


def test_characters_are_those_that_a_form_would_count() -> None:
    texts = ["One two three – four.", "ten", "In all.", "one", "other"]
    assert counted("characters") == len("\n".join(texts))
    assert counted("characters without spaces") == len("".join(texts).replace(" ", ""))
