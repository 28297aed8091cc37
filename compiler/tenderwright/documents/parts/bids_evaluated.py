"""How the evaluated price of each bid is made up, and where each bid ranks in every case."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from tenderwright.documents.desk import Desk, capital, joined
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Part, Row, Table, inline
from tenderwright.documents.parts.bids_words import DASH, GROUP, money
from tenderwright.documents.parts.front import rule_of_award
from tenderwright.pricing.bids.compare import BidComparison, CaseRanks
from tenderwright.pricing.money import written


def bids_evaluated(desk: Desk, comparison: BidComparison) -> Part:
    """Compose the part; the sum of each column is the evaluated price to the cent."""
    blocks: list[Block] = [
        _build_up(comparison),
        *_days(comparison),
        Heading("Rank in every case" if comparison.whole else "What is known, in every case"),
        _cases(comparison),
        Heading("The rule as published"),
        *rule_of_award(desk),
        *_beyond_the_rule(desk, comparison),
    ]
    title = "Evaluated prices"
    landscape = len(comparison.bids) > 4
    return Part("bids-evaluated", "", title, "schedule", GROUP, tuple(blocks), landscape=landscape)


def bid_columns(comparison: BidComparison, width: float = 1.5) -> tuple[Column, ...]:
    """Give a column of amounts for each bid."""
    return tuple(Column(bid.label, "decimal", width) for bid in comparison.bids)


def _build_up(comparison: BidComparison) -> Table:
    titles: dict[str, str] = {}
    for bid in comparison.bids:
        titles |= {one.name: one.title for one in bid.components}
    order = [*"ABCDEFGH", "lines", "exclusions", "choices", "beyond", "days", "towing", "travel"]
    rows = [
        Row((inline("As read"), *(inline(money(bid.corrected.total_read)) for bid in comparison.bids))),
        Row((inline("Corrected"), *(inline(money(bid.corrected.total)) for bid in comparison.bids)), "subtotal"),
        Row((inline("Parts of the evaluated price"),), "group"),
    ]
    for name in sorted(titles, key=order.index):
        amounts = [next((one.amount for one in bid.components if one.name == name), None) for bid in comparison.bids]
        label = f"{name} {titles[name]}" if len(name) == 1 else titles[name]
        rows.append(Row((inline(label), *(inline(money(amount)) for amount in amounts))))
    title = "Evaluated price" if comparison.whole else "Sum of what is known"
    rows.append(Row((inline(title), *_amounts([bid.total for bid in comparison.bids])), "total"))
    if comparison.whole:
        rows.append(Row((inline("Rank"), *(inline(str(comparison.ranks[bid.name])) for bid in comparison.bids))))
    note = inline(
        f"{comparison.currency}. Sections as on the price form; credits below nothing, provisional sums the same for "
        "all. The parts add up to the evaluated price to the cent; a dash is no part of it."
    )
    return Table((Column("", width=2.6), *bid_columns(comparison)), tuple(rows), note=note, small=True)


def _amounts(amounts: Sequence[Decimal]) -> tuple[Inline, ...]:
    return tuple(inline(written(amount)) for amount in amounts)


def _days(comparison: BidComparison) -> list[Block]:
    rows = []
    for bid in comparison.bids:
        if bid.days is not None:
            rate = money(bid.days.rate)
            cells = [bid.label, "The owner's days", bid.days.note, rate, written(bid.days.amount)]
            rows.append(Row(tuple(inline(cell or DASH) for cell in cells)))
        for one in bid.place:
            cells = [bid.label, one.title, one.note, DASH, written(one.amount)]
            rows.append(Row(tuple(inline(cell or DASH) for cell in cells)))
    columns = (
        Column("Bid", width=2),
        Column("Cost of the place", width=1.6),
        Column("From", width=3.4),
        Column("A day", "decimal", 1),
        Column("Amount", "decimal", 1.4),
    )
    return [Heading("Days, towing and travel"), Table(columns, tuple(rows), small=True)] if rows else []


def _cases(comparison: BidComparison) -> Table:
    rows = []
    for entry in comparison.cases:
        cells = [_case(entry, bid.name) for bid in comparison.bids]
        rows.append(Row((inline(entry.case.title), *(inline(cell) for cell in cells))))
    ranked = "The rank stands in brackets. " if comparison.whole else "No bid is ranked: the comparison is not whole. "
    note = inline(
        f"{ranked}Base prices leave out contingent work, the hours pool, and the costs of the "
        "place. At P50 and P80 every quantity that is open is taken at its own P50 or P80, all at once: plate by the "
        "survey's own draws, other quantities by the owner's least, tendered and most as a PERT quantity; lump sums "
        "and quantities without a range stay as tendered."
    )
    columns = (Column("Case", width=2.6), *(Column(bid.label, "right", 1.5) for bid in comparison.bids))
    return Table(columns, tuple(rows), note=note, small=True)


def _case(entry: CaseRanks, name: str) -> str:
    rank = f" ({entry.ranks[name]})" if name in entry.ranks else ""
    return f"{written(entry.totals[name])}{rank}"


def _beyond_the_rule(desk: Desk, comparison: BidComparison) -> list[Block]:
    """Say where the owner's own papers count otherwise than the rule as published."""
    stated = any(one.stated is not None for bid in comparison.bids for one in bid.adders)
    published = desk.tender.award.day_cost
    own = [
        bid.label
        for bid in comparison.bids
        if bid.days is not None and (bid.days.rate is None or bid.days.rate != published)
    ]
    words = []
    if stated:
        words.append("some of what is left out is priced by the owner and not by the rule")
    if own:
        words.append(f"the days of {joined(own)} are not counted at the day cost published")
    if not words:
        return []
    text = f"{capital('; '.join(words))}. What was not published ought not to decide."
    return [Paragraph(inline(text))]
