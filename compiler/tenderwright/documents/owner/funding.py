"""The funding ladder: what the money buys, rung by rung, who pays for it, and what further money would add."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from tenderwright.documents.desk import joined
from tenderwright.documents.drawings.funding_ladder import RungMark, funding_ladder
from tenderwright.documents.edition import (
    Block,
    Bullets,
    Column,
    DataTable,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.parts.notes import notes_on
from tenderwright.model.funding import FundingSource, Scope
from tenderwright.planning.belongs import bottom_first, together
from tenderwright.planning.ladder import Ladder, Rung
from tenderwright.planning.scope import available, in_hand, score
from tenderwright.planning.trials import GENERAL
from tenderwright.pricing.money import in_currency, written
from tenderwright.quantities.customs import apart

HAND = "Money in hand"


def funding(desk: OwnerDesk) -> Part | None:
    """Compose the ladder at the confidence that the owner asks for, then the other, then the sources; None without."""
    ladder, scope = asked(desk), _scope(desk)
    if ladder is None or scope is None:
        return None
    other = next(one for name, one in sorted(_ladders(desk).items()) if name != ladder.confidence)
    blocks: list[Block] = [
        Paragraph(inline(summary(desk, ladder))),
        picture(desk, ladder),
        Heading(f"Rung by rung at {ladder.confidence}"),
        _rungs(desk, ladder),
        *_added(desk, ladder),
        *_undone(desk, ladder),
        *_steps(desk, ladder),
        Heading("Who pays"),
        _payers(desk, ladder),
        *notes_on(desk, [(source.name, source.notes) for source in _sources(desk)]),
        Heading(f"The same at {other.confidence}"),
        _rungs(desk, other),
        Heading("How the choice is made"),
        *_how(desk, scope, ladder),
        _worths(desk, scope, ladder),
    ]
    return Part("funding", "", "What the money buys", "schedule", "Owner's papers", tuple(blocks))


def asked(desk: OwnerDesk) -> Ladder | None:
    """Give the ladder at the confidence at which the owner asks for money."""
    scope = _scope(desk)
    return _ladders(desk).get(scope.confidence) if scope is not None else None


def _scope(desk: OwnerDesk) -> Scope | None:
    return desk.foresight.papers.scope if desk.foresight else None


def _ladders(desk: OwnerDesk) -> dict[str, Ladder]:
    return dict(desk.foresight.ladders) if desk.foresight else {}


def secured(desk: OwnerDesk, ladder: Ladder) -> Rung | None:
    """Give the highest rung that stands on money in hand or promised alone, where it buys anything."""
    made_by = ((rung, desk.source_of(rung)) for rung in ladder.rungs if rung.items)
    found = [rung for rung, source in made_by if source is None or source.status in SECURED_STATUSES]
    return found[-1] if found else None


SECURED_STATUSES = ("in hand", "promised")


def name_of(source: FundingSource | None) -> str:
    """Name a rung by the source that makes it."""
    return HAND if source is None else f"{source.name}, {source.status or 'no status'}"


def summary(desk: OwnerDesk, ladder: Ladder) -> str:
    """Say in a few sentences what a trustee wants to know."""
    currency = desk.tender.currency
    first = ladder.rungs[0]
    told = [f"What must be done comes to {in_currency(currency, ladder.must_cost)} at {ladder.confidence}."]
    if not first.missing:
        told.append(f"The money in hand, {in_currency(currency, first.money)}, pays for it.")
    elif first.money < ladder.must_cost:
        told.append(
            f"The money in hand, {in_currency(currency, first.money)}, falls {written(first.missing)} short of it."
        )
    else:
        told.append(
            f"There is {in_currency(currency, first.money)} in hand, but not all of it is free to pay for that: "
            f"{in_currency(currency, first.missing)} is missing."
        )
    closing = next((rung for rung in ladder.rungs if rung.items), None)
    source = desk.source_of(closing) if closing is not None and closing is not first else None
    if source is not None:
        told.append(f"{source.name} closes that gap.")
    sure = secured(desk, ladder)
    if sure is not None:
        told.append(
            f"With all that is in hand or promised, {len(_priced(desk, sure.items))} of {len(_priced(desk, None))} "
            f"priced items can be bought, for {in_currency(currency, sure.cost)}."
        )
    last = ladder.rungs[-1]
    left = [item for item in _priced(desk, None) if item not in last.items]
    told.append("If all the money came, everything could be bought." if not left else _left_out(desk, left, last))
    return " ".join(told)


def _left_out(desk: OwnerDesk, left: Sequence[str], last: Rung) -> str:
    """Say what even all the sources leave out, and which of it only because it is not done beside what is bought."""
    scope = _scope(desk)
    named = []
    for number in left:
        excluded = scope.items[number].excludes if scope is not None and number in scope.items else ()
        beside = [reference.name for reference in excluded if reference.name in last.items]
        why = f" (not done beside {joined(beside)})" if beside else ""
        named.append(f"{number} {desk.package.item_by_name[number].title}{why}")
    return f"If all the money came, {_count(len(left), 'item')} would still be left out: {joined(named)}."


def _count(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def _priced(desk: OwnerDesk, numbers: Sequence[str] | None) -> list[str]:
    priced = [one.item.number for one in desk.estimate.items]
    return priced if numbers is None else [number for number in priced if number in set(numbers)]


def picture(desk: OwnerDesk, ladder: Ladder) -> Block:
    """Draw the rungs of the sources."""
    marks, pieces = [], []
    held = [source for source in _sources(desk) if in_hand(source)]
    for index, rung in enumerate(ladder.rungs):
        source = desk.source_of(rung)
        pieces += [(s.status, available(s)) for s in ([source] if source else held)]
        titles = [desk.package.item_by_name[number].title for number in _priced(desk, rung.added)]
        if rung.missing:
            adds = f"buys nothing yet: {in_currency(desk.tender.currency, rung.missing)} missing for what must be done"
        elif titles:
            adds = f"buys {_count(len(titles), 'item')}{' more' if index else ''}: {'; '.join(titles)}"
        else:
            adds = "adds nothing that it may pay for"
        marks.append(RungMark(f"{index + 1}  {name_of(source)}", adds, tuple(pieces), rung.cost))
    return funding_ladder(desk.tender.ship, desk.tender.tender.number, desk.tender.currency, marks, ladder.confidence)


def _sources(desk: OwnerDesk) -> tuple[FundingSource, ...]:
    papers = desk.foresight.papers if desk.foresight else None
    return papers.funding.sources if papers is not None and papers.funding is not None else ()


def _rungs(desk: OwnerDesk, ladder: Ladder) -> Table:
    rows = []
    for index, rung in enumerate(ladder.rungs):
        bought = str(len(_priced(desk, rung.items))) if rung.items else "–"
        worth = f"{100 * rung.value / ladder.whole:.0f} %" if ladder.whole else "–"
        rows.append(
            Row(
                (
                    inline(str(index + 1)),
                    inline(name_of(desk.source_of(rung))),
                    inline(written(rung.more)),
                    inline(written(rung.money)),
                    inline(bought),
                    inline(written(rung.cost) if rung.items else "–"),
                    inline(written(rung.simulated) if rung.items else "–"),
                    inline(worth if rung.items else "–"),
                )
            )
        )
    columns = (
        Column("", width=0.4),
        Column("With", width=3.2),
        Column("Brings", "decimal", 1.5),
        Column("Money up to here", "decimal", 1.6),
        Column("Items", "right", 0.7),
        Column("They cost", "decimal", 1.6),
        Column("In trials", "decimal", 1.6),
        Column("Worth", "right", 0.8),
    )
    note = inline(
        f"{desk.tender.currency}. They cost: the items' parts of the whole at {ladder.confidence}, which the choice is "
        f"made by. In trials: {ladder.confidence} of their own sum. Worth: share of the worth of all items."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _added(desk: OwnerDesk, ladder: Ladder) -> list[Block]:
    entries: list[Inline] = []
    for index, rung in enumerate(ladder.rungs):
        priced = _priced(desk, rung.added)
        if not priced:
            continue
        entries.append((Span(f"Rung {index + 1}: ", strong=True), *_items(desk, priced, ladder)))
    return [Heading("What each rung buys"), Bullets(tuple(entries))] if entries else []


def _undone(desk: OwnerDesk, ladder: Ladder) -> list[Block]:
    """Say what each rung leaves undone, and where what follows from that is told."""
    entries: list[Inline] = []
    for index, rung in enumerate(ladder.rungs):
        left = [number for number in _priced(desk, None) if number not in rung.items]
        if rung.items and left:
            entries.append((Span(f"Rung {index + 1}: ", strong=True), *_items(desk, left, ladder)))
    if not entries:
        return []
    words = "What follows where it is put off stands in each item."
    return [Heading("What each rung leaves undone"), Paragraph(inline(words)), Bullets(tuple(entries))]


def _items(desk: OwnerDesk, numbers: Sequence[str], ladder: Ladder) -> Inline:
    spans: list[Span] = []
    for number in numbers:
        cost = ladder.costs.get(number, Decimal(0))
        spans += [Span("; ")] if spans else []
        told = apart(f"{cost:,.0f}").replace("-", "−")
        spans += [desk.item_ref(number), Span(f" {desk.package.item_by_name[number].title} ({told})")]
    return tuple(spans)


def _steps(desk: OwnerDesk, ladder: Ladder) -> list[Block]:
    if not ladder.steps:
        return []
    entries = [
        (
            Span(f"{in_currency(desk.tender.currency, step.money - ladder.rungs[-1].money)}: ", strong=True),
            *_items(desk, _priced(desk, step.added), ladder),
        )
        for step in ladder.steps
    ]
    words = "Beyond all the sources, each next amount without restriction that buys something more, counted in all:"
    return [Heading("What further money would add"), Paragraph(inline(words)), Bullets(tuple(entries))]


def _payers(desk: OwnerDesk, ladder: Ladder) -> Table:
    """Set out what each source pays at each rung, and what it leaves."""
    sources = _sources(desk)
    rungs = [rung for rung in ladder.rungs if rung.items]
    rows = []
    for source in sources:
        cells = [inline(source.name), inline(written(available(source)))]
        cells += [inline(written(rung.drawn[source.source]) if source.source in rung.drawn else "–") for rung in rungs]
        rows.append(Row(tuple(cells)))
    totals = [sum(rung.drawn.values(), Decimal(0)) for rung in rungs]
    whole = sum((available(source) for source in sources), Decimal(0))
    rows.append(Row((inline("All"), inline(written(whole)), *(inline(written(each)) for each in totals)), "total"))
    columns = (
        Column("Source", width=2.6),
        Column("Brings", "decimal", 1.4),
        *(Column(f"Rung {ladder.rungs.index(rung) + 1}", "decimal", 1.4) for rung in rungs),
    )
    kept = [f"{source.name}: {written(source.kept_back)}" for source in sources if source.kept_back]
    note = inline(f"Kept back and not counted: {joined(kept)}.") if kept else ()
    return Table(columns, tuple(rows), note=note, small=True)


def _held_together(desk: OwnerDesk, scope: Scope) -> list[str]:
    """Say what is one choice, so that no rung leaves her worse than she came, and what comes before the topsides."""
    words = []
    pairs = {(one.item, one.other) for one in together(desk.package)}
    both = sorted({tuple(sorted(pair)) for pair in pairs if (pair[1], pair[0]) in pairs})
    if both:
        named = joined([f"items {one} and {other}" for one, other in both])
        words.append(f"No rung leaves her worse than she came: {named} work on one surface, and are one choice.")
    first: dict[str, list[str]] = {}
    for one in bottom_first(desk.package, scope):
        first.setdefault(one.item, []).append(one.other)
    for top, bottom in sorted(first.items()):
        words.append(f"Bottom and anodes come before the topsides: item {top} is bought with {joined(bottom)} only.")
    for number, worth in sorted(scope.items.items()):
        if worth.before_bottom:
            words.append(f"Item {number} may come before bottom and anodes: {worth.before_bottom}.")
    return words


def _how(desk: OwnerDesk, scope: Scope, ladder: Ladder) -> list[Block]:
    weights = scope.weights
    proven = all(rung.proven for rung in (*ladder.rungs, *ladder.steps))
    lost = max((rung.given_up for rung in ladder.rungs), default=0)
    words = [
        f"Each item is scored from 0 to 5 for the risk if it is put off (times {weights.risk}), for what it preserves "
        f"(times {weights.preservation}) and for safety (times {weights.safety}). At each rung the items of the "
        "greatest worth are chosen that the money may pay for, with all that they need and nothing that they exclude; "
        "of equal choices the cheaper. What is bought stays bought on the rungs above.",
        *_held_together(desk, scope),
        "The solver proved for each choice that there is no better one."
        if proven
        else "For some of the choices the solver could not prove that there is none better.",
        f"Keeping what was bought gives up at most {lost} points of {ladder.whole} against a free choice at the same "
        "money."
        if lost
        else "Keeping what was bought gives up nothing against a free choice at the same money.",
        "Services that several items need (staging, waste, fire watch) are bought with the first that needs them. "
        "A cost is its item's mean and its share of what the whole adds between its mean and the confidence asked for; "
        "the risks of no item are paid first. The scores are the owner's judgement: change them a little and see "
        "whether the choice stays.",
    ]
    return [Paragraph(inline(each)) for each in words]


def _worths(desk: OwnerDesk, scope: Scope, ladder: Ladder) -> Table:
    first = {item: index + 1 for index, rung in reversed(list(enumerate(ladder.rungs))) for item in rung.added}
    rows = []
    for number in _priced(desk, None):
        worth = scope.items.get(number)
        scores = (worth.risk, worth.preservation, worth.safety) if worth else (0, 0, 0)
        rows.append(
            Row(
                (
                    (desk.item_ref(number), Span(f" {desk.package.item_by_name[number].title}")),
                    *(inline(str(each)) for each in scores),
                    inline(str(score(worth, scope))),
                    inline("must" if number in ladder.must else ""),
                    inline(written(ladder.costs[number])),
                    inline(str(first[number]) if number in first else "–"),
                )
            )
        )
    if GENERAL in ladder.costs:
        blank = inline("")
        general = inline(written(ladder.costs[GENERAL]))
        rows.append(Row((inline("Risks of no item"), blank, blank, blank, blank, inline("must"), general, blank)))
    columns = (
        Column("Item", width=4.2),
        Column("Risk", "right", 0.6),
        Column("Pres.", "right", 0.6),
        Column("Safety", "right", 0.7),
        Column("Worth", "right", 0.7),
        Column("", width=0.7),
        Column("Costs", "decimal", 1.5),
        Column("Rung", "right", 0.6),
    )
    return Table(columns, tuple(rows), caption=f"Worth and cost of each item at {ladder.confidence}", small=True)


def ladder_table(desk: OwnerDesk) -> DataTable | None:
    """Give the rungs of both ladders as figures."""
    found = _ladders(desk)
    if not found:
        return None
    money = tuple(f"{what}_{desk.tender.currency}" for what in ("brings", "money", "missing", "cost", "in_trials"))
    header = ("confidence", "rung", "source", "status", *money, "worth_points", "items", "added")
    rows = [
        (
            name,
            index + 1,
            rung.source or ("in-hand" if index < len(ladder.rungs) else "further"),
            source.status if (source := desk.source_of(rung)) else "",
            rung.more,
            rung.money,
            rung.missing,
            rung.cost,
            rung.simulated,
            rung.value,
            " ".join(rung.items),
            " ".join(rung.added),
        )
        for name, ladder in sorted(found.items())
        for index, rung in enumerate((*ladder.rungs, *ladder.steps))
    ]
    return DataTable(header, tuple(rows))
