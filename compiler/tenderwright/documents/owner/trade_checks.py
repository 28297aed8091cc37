"""What the trade checks found, and what is still to be written in the owner's papers."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.checks.context import Unjudged
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.owner.prices_by_item import OWNER
from tenderwright.documents.parts.to_be_written import to_be_written
from tenderwright.notices import Notice
from tenderwright.notices.codes import CHECK_CODES, CODES, OWNER_CHECK_CODES
from tenderwright.shapes.todos import Todo


def trade_checks(notices: Sequence[Notice], unjudged: Sequence[Unjudged]) -> Part:
    """Compose what the trade checks found and what they could not judge, and after it the rules that found nothing."""
    rows, quiet = [], []
    for title, codes in (("The tender", CHECK_CODES), ("The owner's papers", OWNER_CHECK_CODES)):
        told = {code: words for code in codes if (words := _told(code, notices, unjudged))}
        rows += [Row((inline(title),), "group")] if told else []
        rows += [Row((inline(CODES[code].title), inline(words))) for code, words in told.items()]
        rules = "; ".join(CODES[code].title for code in codes if code not in told)
        quiet.append(inline(Span(f"{title}: ", strong=True), f"{rules or 'none'}."))
    blocks: list[Block] = [
        Paragraph(
            inline(
                "Rules of the trade by which the package was checked. "
                "A rule that finds nothing does not prove that nothing is wrong."
            )
        ),
        Heading("Found, or not judged"),
        Table((Column("Rule", width=3), Column("Found", width=5)), tuple(rows))
        if rows
        else Paragraph(inline("Nothing.")),
        Heading("Rules that found nothing"),
        *map(Paragraph, quiet),
    ]
    return Part("trade-checks", "", "Trade checks", "data", OWNER, tuple(blocks), caution=True)


def _told(code: str, notices: Sequence[Notice], unjudged: Sequence[Unjudged]) -> str:
    words = [f"{one.place}: {one.message}" for one in notices if one.code == code]
    words += [f"not judged, or only in part: {one.why}" for one in unjudged if one.code == code]
    return "; ".join(words)


def owners_to_be_written(todos: Sequence[Todo]) -> list[Part]:
    """Compose the part that says what is open in the owner's papers; none where nothing is."""
    blocks = to_be_written(todos)[1:]
    title = "Still to be written in the owner's papers"
    return [Part("to-be-written", "", title, "data", OWNER, tuple(blocks))] if blocks else []
