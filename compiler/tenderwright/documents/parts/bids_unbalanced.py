"""Unbalanced lines: which lie far from the others, who asks much early, and whether it may matter."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.parts.bids_lines import estimate_off
from tenderwright.documents.parts.bids_summary import doubt_sentences
from tenderwright.documents.parts.bids_words import DASH, GROUP, percent, quantity, rate
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.pricing.bids.unbalance import LineRatio


def bids_unbalanced(desk: Desk, comparison: BidComparison) -> Part:
    """Compose the part."""
    blocks: list[Block] = [Paragraph(inline(_WORDS)), _early(comparison)]
    for bid in comparison.bids:
        blocks += [Heading(bid.label), Paragraph(inline(_verdict(bid, comparison))), *_lines(bid, comparison)]
    blocks += estimate_off(comparison)
    return Part("bids-unbalanced", "", "Unbalanced lines", "schedule", GROUP, tuple(blocks))


_WORDS = (
    "A bid is mathematically unbalanced where some lines lie far below and others far above the usual price, or where "
    "early work carries more than its share; materially, where there is besides a reasonable doubt that it would be "
    "the lowest in the end (23 CFR 635.102; FAR 52.214-10(e)). The screens are half and twice the median and the "
    "estimate, and one and a half times the usual share of early work (common practice, no source). They find what to "
    "look at; a bid is refused, or not, by the owner alone, with the reason in writing."
)


def _early(comparison: BidComparison) -> Table:
    rows = []
    for bid in comparison.bids:
        found = comparison.unbalance[bid.name]
        mark = "more than its share" if found.front_loaded else "usual"
        cells = [bid.label, percent(found.early), percent(found.early_usual), mark if found.early_usual else DASH]
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    if comparison.early_of_estimate is not None:
        cells = ["The owner's estimate", percent(comparison.early_of_estimate), DASH, DASH]
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Bid", width=3),
        Column("Docking and services, of base", "right", 2),
        Column("Usual", "right", 1),
        Column("Screen", width=2),
    )
    return Table(columns, tuple(rows), caption="Share of work that is paid early", small=True)


def _verdict(bid: EvaluatedBid, comparison: BidComparison) -> str:
    found = comparison.unbalance[bid.name]
    if found.materially:
        return " ".join(doubt_sentences(bid, comparison))
    if found.mathematically:
        return (
            "Mathematically unbalanced by the screens; no plausible quantity, P20 to P80, "
            "makes it dearer than a bid that it leads."
        )
    if found.low or found.high:
        return "Some lines lie far off, all on one side; by the screens it is not unbalanced."
    return "No line lies far off."


def _lines(bid: EvaluatedBid, comparison: BidComparison) -> list[Block]:
    found = comparison.unbalance[bid.name]
    rows = [_row(one, "low") for one in found.low] + [_row(one, "high") for one in found.high]
    columns = (
        Column("Line", width=0.8),
        Column("What", width=3.6),
        Column("Quantity", "right", 1.3),
        Column("Rate", "right", 1.3),
        Column("Of median", "right", 0.9),
        Column("Of estimate", "right", 0.9),
        Column("", width=0.6),
    )
    return [Table(columns, tuple(rows), small=True)] if rows else []


def _row(one: LineRatio, mark: str) -> Row:
    count = DASH if one.line.form == "lump" else quantity(one.line.quantity, one.line.unit)
    ratios = [f"{ratio:.2f}" if ratio is not None else DASH for ratio in (one.to_median, one.to_estimate)]
    cells = [one.line.number, f"{one.line.title}: {one.line.text}", count, rate(one.rate), *ratios, mark]
    return Row(tuple(inline(cell) for cell in cells))
