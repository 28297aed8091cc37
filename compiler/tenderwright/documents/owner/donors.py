"""The donors' page: what is safe, what the next gift does, what still waits; only what the owner marked for it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.drawings.donor_bar import KINDS, donor_bar
from tenderwright.documents.drawings.donor_ship import donor_ship
from tenderwright.documents.edition import Block, Bullets, Edition, Heading, Inline, Paragraph, Part, Span, inline
from tenderwright.documents.owner.brief_money import money_of, needed, rounded
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.funding import asked, secured
from tenderwright.documents.owner.gifts import gifts
from tenderwright.model.funding import FundingSource, Scope
from tenderwright.planning.ladder import Ladder
from tenderwright.pricing.money import up
from tenderwright.quantities.customs import apart, with_currency

SAFE = "Safe already"


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
    sure = secured(desk, ladder)
    safe = [number for number in public if sure is not None and number in sure.items]
    hoped = [number for number in public if number not in safe and number in ladder.rungs[-1].items]
    waiting = [number for number in public if number not in safe and number not in hoped]
    thanks = _named("With thanks to", _given(papers.funding.sources, ladder, secure=True))
    asked_of = _named("Asked of", _given(papers.funding.sources, ladder, secure=False))
    blocks: list[Block] = [
        Paragraph(inline(_opening(desk))),
        *_how_far(desk, papers.scope, (len(safe), len(hoped), len(waiting))),
        *gifts(desk, ladder, sure.items if sure is not None else ()),
        *_list(desk, "What the next gifts will do", asked_of, hoped, ladder),
        *_list(desk, "Still waiting for somebody", "", waiting, ladder),
        *_list(desk, SAFE, thanks, safe, ladder),
        Paragraph(
            inline(
                "Figures are estimates before tender, rounded up, and include what the work may grow by. "
                f"Whoever wishes to help writes to {desk.tender.owner.contact or desk.tender.owner.name}."
            )
        ),
    ]
    part = Part(
        "donors", "", f"Help us bring {desk.tender.ship} through", "donors", "", tuple(blocks), audience="public"
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


def _how_far(desk: OwnerDesk, scope: Scope, pieces: tuple[int, int, int]) -> list[Block]:
    """Draw and say how far the docking is paid for: by its money where that may be told, else by pieces of work."""
    about, whole = rounded(desk), about_whole(desk)
    if not scope.publish_total or whole <= 0:
        return [donor_bar(desk.tender.ship, *pieces)]
    safe = min(about(money_of(desk, "in hand", "promised")), whole)
    hoped = min(about(money_of(desk, "applied for", "hoped for")), whole - safe)
    shares = [int(100 * part / whole) for part in (safe, hoped)]
    wanted = 100 - sum(shares) if whole - safe - hoped else 0
    shares[1] += 100 - sum(shares) - wanted if hoped else 0
    shares[0] = 100 - shares[1] - wanted
    told = list(zip(KINDS, (*shares, wanted), strict=True))
    drawn = desk.calculated.outcome(hull_outline)
    ship = desk.tender.ship
    picture = donor_bar(ship, *pieces) if isinstance(drawn, Absent) else donor_ship(ship, drawn.form, told)
    words = f"The docking comes to {about.money(whole)}. {about.money(safe)} is safe"
    if whole == safe:
        return [picture, Paragraph(inline(f"{words}: all of it."))]
    words += f", and {about.money(whole - safe)} is still wanted."
    if hoped:
        part = f"{about.money(hoped)} of that" if whole - safe - hoped else "all of that"
        words += f" Others have been asked for {part}, and may yet say no."
    return [picture, Paragraph(inline(words))]


def about_whole(desk: OwnerDesk) -> Decimal:
    """Give what the docking comes to, rounded: the sum to have in hand."""
    return rounded(desk)(needed(desk))


def _list(desk: OwnerDesk, title: str, words: str, numbers: list[str], ladder: Ladder) -> list[Block]:
    scope = desk.foresight.papers.scope if desk.foresight else None
    if not numbers or scope is None:
        return []
    entries: list[Inline] = []
    for number in numbers:
        worth = scope.items[number]
        spans = [Span(worth.public)]
        cost = ladder.costs.get(number)
        if worth.publish_cost and cost is not None and cost > 0:
            rounded_up = up(cost, 100)
            figure = with_currency(desk.tender.currency, apart(f"{rounded_up:,.0f}")).replace(" ", "\N{NO-BREAK SPACE}")
            spans.append(Span(f" {figure}", strong=True))
            spans += [Span(" does all of it.")] if title != SAFE else []
        entries.append(tuple(spans))
    return [Heading(title), *([Paragraph(inline(words))] if words else []), Bullets(tuple(entries))]
