"""Quantities at which the ranking changes: a sentence for each, and a drawing of the one that decides most."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.drawings.bid_sensitivity import bid_sensitivity
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.parts.bids_words import GROUP, break_even_sentence, passed_quantity, percent, quantity
from tenderwright.pricing.bids.break_even import BreakEven
from tenderwright.pricing.bids.compare import BidComparison

_LIKELY = 0.05
"""From which chance on a quantity has a sentence of its own."""


def bids_break_even(desk: Desk, comparison: BidComparison) -> Part:
    """Compose the part."""
    if not comparison.whole:
        words = "Not worked out: the comparison is not whole, so that there is no ranking for a quantity to change."
        return Part("bids-break-even", "", "What quantities decide", "schedule", GROUP, (Paragraph(inline(words)),))
    likely = [one for one in comparison.break_evens if one.chance >= _LIKELY]
    blocks: list[Block] = [Paragraph(inline(_WORDS))]
    figure = bid_sensitivity(comparison)
    if figure is not None:
        blocks.append(figure)
    if likely:
        blocks.append(Bullets(tuple(inline(break_even_sentence(one, comparison)) for one in likely)))
    elif comparison.break_evens:
        blocks.append(Paragraph(inline("Each of the quantities below is passed in less than one case of twenty.")))
    else:
        blocks.append(Paragraph(inline("No quantity within its possible range changes the ranking of two bids.")))
    if comparison.break_evens:
        blocks += [Heading("All such quantities"), _table(comparison)]
    return Part("bids-break-even", "", "What quantities decide", "schedule", GROUP, tuple(blocks))


_WORDS = (
    "A bid with a low lump sum and a high rate is overtaken once enough of the work is found. For every two bids and "
    "every line whose quantity is open, the quantity at which both cost the same is the difference of the rest over "
    "the difference of the rates. Those that lie in the possible range are given, with how likely it is that the "
    "quantity is beyond; one line is changed at a time, all else as tendered. The chance of plate is that of the "
    "survey's own draws; of other lines, that of the owner's least, tendered and most as a PERT quantity."
)


def _table(comparison: BidComparison) -> Table:
    rows = tuple(Row(tuple(inline(cell) for cell in _cells(one, comparison))) for one in comparison.break_evens)
    columns = (
        Column("Line", width=0.8),
        Column("Lower as tendered", width=2.2),
        Column("Lower beyond", width=2.2),
        Column("Tendered", "right", 1.3),
        Column("Break-even", "right", 1.8),
        Column("Chance", "right", 0.9),
        Column("By", width=0.9),
    )
    return Table(columns, rows, small=True)


def _cells(one: BreakEven, comparison: BidComparison) -> list[str]:
    unit = one.line.unit or comparison.currency
    side = "more than" if one.more else "less than"
    return [
        one.line.number,
        comparison.bid(one.ahead).label,
        comparison.bid(one.behind).label,
        quantity(one.line.quantity, unit),
        f"{side} {passed_quantity(one, comparison.currency)}",
        percent(one.chance),
        {"survey": "survey", "owner": "owner", "none": ""}[one.line.spread.source],
    ]
