"""What the bids leave out, assume or offer instead, and what is added for it."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.parts.bids_words import DASH, GROUP
from tenderwright.pricing.bids.adders import Lift, PricedAdder
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.pricing.money import written


def bids_exclusions(desk: Desk, comparison: BidComparison) -> Part:
    """Compose the part."""
    blocks: list[Block] = [Paragraph(inline(_WORDS))]
    for bid in comparison.bids:
        blocks += [Heading(bid.label), *_bid(bid, comparison)]
    return Part("bids-exclusions", "", "Exclusions, lines not answered, and remarks", "schedule", GROUP, tuple(blocks))


_WORDS = (
    "Bids are compared on the same work: an exclusion, and the lines of an item that are left empty or not bid, are "
    "priced by the rule of the tender. What the owner states goes before it. Remarks, assumptions and alternatives "
    "change no price; each is settled by the owner, or priced like an exclusion. Where a bid prices the work all the "
    "same, only the difference is added. A credit that is not offered stands at nothing. Every figure here is an "
    "addition for comparison, and not a price of the bidder's."
)


def _bid(bid: EvaluatedBid, comparison: BidComparison) -> list[Block]:
    blocks: list[Block] = []
    rows = [_adder(one, bid, comparison) for one in bid.adders]
    if rows:
        amounts = (inline("Added in all"), inline(""), inline(written(bid.added)), inline(""))
        columns = (
            Column("Left out", width=3.2),
            Column("Lines", width=1),
            Column("Added", "decimal", 1.4),
            Column("From", width=3.2),
        )
        blocks.append(Table(columns, (*rows, Row(amounts, "total")), small=True))
    told = [(one.text, one.kind, one.lines, "not yet: the owner prices it") for one in bid.unsettled]
    told += [
        (one.text, one.kind, one.lines, ": ".join(filter(None, (one.by, one.why))) or "not yet: the owner settles it")
        for one in bid.remarks
    ]
    if told:
        kinds = (
            Column("What the bid says", width=3.6),
            Column("Kind", width=1.1),
            Column("Lines", width=1),
            Column("Settled", width=3.1),
        )
        rows = [
            Row((inline(text), inline(kind), inline(", ".join(lines) or DASH), inline(state)))
            for text, kind, lines, state in told
        ]
        blocks.append(Table(kinds, tuple(rows), small=True))
    return blocks or [Paragraph(inline("Nothing is left out, as far as the bid says."))]


def _adder(one: PricedAdder, bid: EvaluatedBid, comparison: BidComparison) -> Row:
    amount = one.amount({}, comparison.cases[0].case.sections)
    sources = list(dict.fromkeys(_source(lift, comparison) for lift in one.lifts))
    words = ["stated by the owner"] if one.stated is not None else sources
    if one.nobody:
        words.append(f"nobody prices {', '.join(one.nobody)}")
    if one.why:
        words.append(one.why)
    cells = [one.what, ", ".join(one.lines) or DASH, written(amount), "; ".join(words) or DASH]
    return Row(tuple(inline(cell) for cell in cells))


def _source(lift: Lift, comparison: BidComparison) -> str:
    return f"highest figure, of {comparison.bid(lift.of).label}" if lift.of else "the owner's estimate"
