"""Arithmetic of the bids: what was written, by which rule it is corrected, and what the bidder is asked."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.parts.bids_words import DASH, GROUP
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.pricing.bids.corrected import Correction
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.pricing.money import written

_COLUMNS = (
    Column("What", width=1.5),
    Column("Rule", width=2.8),
    Column("As written", "decimal", 1.5),
    Column("By the rule", "decimal", 1.5),
    Column("Counts", "decimal", 1.5),
    Column("The bidder", width=1.9),
)


def bids_corrections(desk: Desk, comparison: BidComparison) -> Part:
    """Compose the part."""
    blocks: list[Block] = [Paragraph(inline(_rule(comparison)))]
    for bid in comparison.bids:
        blocks += [Heading(bid.label), *_bid(bid)]
    return Part("bids-corrections", "", "Arithmetic", "schedule", GROUP, tuple(blocks))


def _rule(comparison: BidComparison) -> str:
    if comparison.rule == "total absolute":
        return (
            "In this tender the total is absolute: nothing is corrected, and a wrong sum disqualifies. What is wrong "
            "is listed; the figures as written count."
        )
    return (
        "In this tender the unit price governs: quantity times rate counts rather than the amount in the row, lines "
        "rather than their sub-total, sub-totals rather than the total. What looks like a slip of the decimal point is "
        "not corrected: the amount as written counts until the bidder has confirmed the rate. "
        "The bid as returned is never changed."
    )


def _bid(bid: EvaluatedBid) -> list[Block]:
    found = [*bid.corrected.corrections, *bid.corrected.disqualifying]
    if not found:
        return [Paragraph(inline("Every figure follows from its parts."))]
    wrong = bool(bid.corrected.disqualifying)
    return [Table(_COLUMNS, tuple(_row(one, wrong=wrong) for one in found), small=True)]


def _row(one: Correction, *, wrong: bool) -> Row:
    counts = one.after if one.used and not wrong else one.before
    asked = "to confirm" if one.asks else one.note or DASH
    if wrong:
        asked = "disqualifies" if one.own else DASH
    rule = f"{one.rule}: {one.note}" if one.kind == "decimal slip" else one.rule
    cells = [one.what, rule, written(one.before), written(one.after), written(counts), asked]
    return Row(tuple(inline(cell) for cell in cells))
