"""The donors' page: what is safe, what the next gift does, what still waits; only what the owner marked for it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import ROUND_CEILING, Decimal

from tenderwright.documents.drawings.donor_bar import donor_bar
from tenderwright.documents.edition import Block, Bullets, Edition, Heading, Inline, Paragraph, Part, Span, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.funding import asked, secured
from tenderwright.model.funding import FundingSource, Scope
from tenderwright.planning.ladder import Ladder
from tenderwright.quantities.customs import apart

HUNDRED = Decimal(100)


def donor_sheet(desk: OwnerDesk, edition: Edition) -> Edition | None:
    """Compose the donors' page; None without a ladder or without a sentence that may be published.

    It names a source only by its public name, an item only by its public sentence, and a cost only where it may stand.
    """
    ladder = asked(desk)
    papers = desk.foresight.papers if desk.foresight else None
    if ladder is None or papers is None or papers.scope is None or papers.funding is None:
        return None
    public = [number for number, worth in papers.scope.items.items() if worth.public]
    if not public:
        return None
    sure = secured(ladder)
    safe = [number for number in public if sure is not None and number in sure.items]
    hoped = [number for number in public if number not in safe and number in ladder.rungs[-1].items]
    waiting = [number for number in public if number not in safe and number not in hoped]
    currency = desk.tender.currency
    blocks: list[Block] = [
        Paragraph(inline(_opening(desk))),
        donor_bar(desk.tender.ship, len(safe), len(hoped), len(waiting)),
        *_list(
            "Safe already",
            _named("With thanks to", _given(papers.funding.sources, ladder, secure=True)),
            safe,
            papers.scope,
            ladder,
            currency,
        ),
        *_list(
            "What the next gifts will do",
            _named("Asked of", _given(papers.funding.sources, ladder, secure=False)),
            hoped,
            papers.scope,
            ladder,
            currency,
        ),
        *_list("Still waiting for somebody", "", waiting, papers.scope, ladder, currency),
        Paragraph(
            inline(
                "Figures are estimates before tender, rounded up, and include what the work may grow by. "
                f"Whoever wishes to help writes to {desk.tender.owner.contact or desk.tender.owner.name}."
            )
        ),
    ]
    part = Part(
        "donors", "1", f"Help us bring {desk.tender.ship} through", "data", "Donors", tuple(blocks), audience="public"
    )
    return replace(
        edition,
        title=f"{desk.tender.ship} goes into dock",
        subtitle=desk.tender.owner.name,
        parts=(part,),
        facts=(),
        sheets={},
        tables={},
        record=None,
        audience="public",
        confidential=False,
    )


def _opening(desk: OwnerDesk) -> str:
    programme = desk.tender.programme
    when, days = "", ""
    if programme is not None:
        when = f"In {programme.docking:%B %Y} "
        days = f", for {programme.dock_days or (programme.undocking - programme.docking).days} days"
    return (
        f"{when}{desk.tender.ship} is to be lifted out of the water{days}. What we can mend in that "
        "time depends on what we can pay for: a ship cannot wait on the blocks."
    )


def _given(sources: Sequence[FundingSource], ladder: Ladder, *, secure: bool) -> list[str]:
    statuses = ("in hand", "promised")
    drawn = ladder.rungs[-1].drawn
    return [one.public for one in sources if one.public and one.source in drawn and (one.status in statuses) is secure]


def _named(lead: str, names: list[str]) -> str:
    return f"{lead}: {'; '.join(names)}." if names else ""


def _list(title: str, words: str, numbers: list[str], scope: Scope, ladder: Ladder, currency: str) -> list[Block]:
    if not numbers:
        return []
    entries: list[Inline] = []
    for number in numbers:
        worth = scope.items[number]
        spans = [Span(worth.public)]
        cost = ladder.costs.get(number)
        if worth.publish_cost and cost is not None and cost > 0:
            rounded = (cost / HUNDRED).to_integral_value(ROUND_CEILING) * HUNDRED
            figure = apart(f"{rounded:,.0f}")
            spans.append(Span(f" {currency}\N{NO-BREAK SPACE}{figure}", strong=True))
        entries.append(tuple(spans))
    return [Heading(title), *([Paragraph(inline(words))] if words else []), Bullets(tuple(entries))]
