"""What a gift does in the ship's own terms, and what one completes: only what the owner marked for it."""

from __future__ import annotations

from collections.abc import Collection
from decimal import Decimal

from tenderwright.documents.edition import Block, Column, Heading, Row, Span, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.model.funding import Gift
from tenderwright.planning.ladder import Ladder
from tenderwright.pricing.bundle import bundle_of
from tenderwright.pricing.money import up
from tenderwright.quantities.customs import apart, with_currency

SIZES = (50, 500, 5000)
"""The gifts that are told."""
_MOST = 3
"""What a gift of one size does is told in so many ways at most."""


def gifts(desk: OwnerDesk, ladder: Ladder, safe: Collection[str]) -> list[Block]:
    """Say what a gift of each size does; nothing where no unit is marked for it.

    Work that is not safe yet comes first: where there is any, no unit of work that is paid for already is offered.
    """
    scope = desk.foresight.papers.scope if desk.foresight else None
    lines = {line.number: line for line in desk.estimate.lines}
    marked = [one for one in (scope.gifts if scope is not None else ()) if one.line in lines]
    waiting = [one for one in marked if one.line.split(".")[0] not in safe] or marked
    rows = []
    for size in SIZES:
        told = [words for one in waiting if (words := _does(desk, one, ladder, size))]
        if told:
            gift = with_currency(desk.tender.currency, apart(f"{size:,}", "\N{NO-BREAK SPACE}"))
            rows.append(Row((inline(Span(gift, strong=True)), inline("; or ".join(told[-_MOST:])))))
    columns = (Column("A gift of", width=1.4), Column("pays for", width=9))
    return [Heading("What a gift does"), Table(columns, tuple(rows))] if rows else []


def _does(desk: OwnerDesk, gift: Gift, ladder: Ladder, size: int) -> str:
    """Say how many units a gift pays for; nothing where it pays for none, or for more than there are."""
    line = next(one for one in desk.estimate.lines if one.number == gift.line)
    count = int(size / unit_price(desk, gift, ladder))
    if count < 1 or count > line.quantity.number:
        return ""
    return gift.one if count == 1 else f"{apart(f'{count:,}')} {gift.many}"


def unit_price(desk: OwnerDesk, gift: Gift, ladder: Ladder) -> Decimal:
    """Give what a unit comes to with its part of what the work may grow by, rounded up."""
    line = next(one for one in desk.estimate.lines if one.number == gift.line)
    item = line.item.number
    likely, cost = bundle_of(desk.estimate, item).likely, ladder.costs.get(item, Decimal(0))
    share = max(cost / likely, Decimal(1)) if likely > 0 else Decimal(1)
    return max(up(line.rate * share), Decimal(1))
