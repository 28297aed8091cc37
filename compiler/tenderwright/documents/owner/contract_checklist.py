"""The owner's checklist of the contract: gaps first, what may be lost at the worst moment, and each matter answered."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from decimal import Decimal

from tenderwright.calculations.cost.exposure import Moment
from tenderwright.documents.desk import capital, joined
from tenderwright.documents.edition import (
    Block,
    Column,
    Edition,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.links_within import links_within
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.model.matters import LEFT_OUT, NOT_SETTLED
from tenderwright.planning.contract_matters import Answered, answered
from tenderwright.planning.exposure import Exposure, exposure
from tenderwright.pricing.money import Rounding, rounding
from tenderwright.quantities.customs import day

STEM = "contract-checklist"
_NO_ADVICE = (
    "This list gives no legal advice: it shows what a contract for ship repair usually settles. A lawyer of the yard's "
    "place and the owner's broker read the agreement before it is signed."
)


def contract_checklist(desk: OwnerDesk, book: Edition) -> Edition | None:
    """Compose the checklist as a paper of its own; None where the package has no contract."""
    contract = desk.package.contract
    if contract is None:
        return None
    found = answered(contract, desk.tender)
    gaps, others = [one for one in found if one.gap], [one for one in found if not one.gap]
    blocks: list[Block] = [
        Paragraph(inline(f"{_counted(found)} {_NO_ADVICE}")),
        *_gaps(desk, gaps),
        *_exposure(desk),
        Heading("What is answered"),
        _answers(desk, others),
    ]
    title = f"The contract for {desk.tender.ship}: what is settled, and what is not"
    part = Part(STEM, "", title, "brief", "", tuple(blocks), caution=False)
    return replace(
        book,
        subtitle="Checklist of the contract",
        parts=links_within((part,)),
        facts=(),
        sheets={},
        tables={},
        record=None,
    )


def _counted(found: Sequence[Answered]) -> str:
    states = Counter(one.state for one in found)
    return f"{len(found)} matters: {joined([f'{count} {state}' for state, count in states.items()])}."


def _gaps(desk: OwnerDesk, gaps: Sequence[Answered]) -> list[Block]:
    if not gaps:
        return [
            Heading("Gaps"),
            Paragraph(inline("None: every matter of the list is settled, or left out on purpose.")),
        ]
    rows = tuple(
        Row((inline(one.matter.title), inline(capital(one.state)), _takes(desk, one), _usual(one))) for one in gaps
    )
    columns = (
        Column("Gap", width=1.7),
        Column("State", width=1),
        Column("What it takes to settle it", width=3.6),
        Column("What is usual", width=3.6),
    )
    return [Heading("Gaps"), Table(columns, rows, small=True)]


def _takes(desk: OwnerDesk, one: Answered) -> Inline:
    data = inline(f"{one.data}. ") if one.data else ()
    if one.said is not None and one.said.answer == NOT_SETTLED:
        return (*data, *desk.words(one.said.words))
    return data or inline(f"{capital(one.matter.takes)}.")


def _usual(one: Answered) -> Inline:
    """Say what is usual, and by whose word where that is not common practice alone."""
    source = f" ({one.matter.source})" if one.matter.source else ""
    return inline(one.matter.usual, Span(f"{source}.", faint=True))


def _answers(desk: OwnerDesk, others: Sequence[Answered]) -> Table:
    rows = tuple(Row((inline(one.matter.title), _answer(desk, one), _usual(one))) for one in others)
    columns = (Column("Matter", width=1.5), Column("Answer", width=4), Column("What is usual", width=3.6))
    note = inline("What is usual is common practice, no source, but where another source is named.")
    return Table(columns, rows, note=note, small=True)


def _answer(desk: OwnerDesk, one: Answered) -> Inline:
    """Give the answer of the data, the words, and the clause that holds it."""
    parts: list[Inline] = [inline(Span("Left out.", strong=True))] if one.state == LEFT_OUT else []
    parts += [inline(f"{one.data}.")] if one.data else []
    if one.said is not None:
        parts.append(desk.words(one.said.words))
        if one.said.clause is not None:
            parts.append(inline(Span(f"Clause {desk.clause_number(one.said.clause.name)}.", faint=True)))
    spaced = [span for part in parts for span in (*inline(" "), *part)]
    return tuple(spaced[1:])


def _exposure(desk: OwnerDesk) -> list[Block]:
    """Say what may be lost at the worst moment, payment by payment."""
    title = Heading("What may be lost, where the yard fails")
    seen = desk.foresight
    found = (
        exposure(desk.package, seen.papers, desk.estimate, seen.schedule)
        if seen is not None
        else "it needs the owner's estimate"
    )
    if isinstance(found, str):
        return [title, Paragraph(inline(f"Not calculated: {found}."))]
    return [title, Paragraph(inline(_in_words(desk, found))), _moments(desk, found), *_bases(desk)]


def _bases(desk: OwnerDesk) -> list[Block]:
    """Say where the sums are from that it costs to take her away."""
    taken = desk.foresight.papers.taken_away if desk.foresight is not None else None
    if taken is None:
        return []
    bases = (("To refloat her", taken.refloat_basis), ("To tow her", taken.tow_basis))
    told = " ".join(f"{what}: {basis}." for what, basis in bases if basis)
    return [Paragraph(inline(told), as_note=True)] if told else []


def _in_words(desk: OwnerDesk, found: Exposure) -> str:
    worst, ahead, leaving = found.worst, found.ahead, found.leaving
    rounded = _rounded(desk, found)

    def money(amount: float | Decimal) -> str:
        return rounded.money(Decimal(repr(amount)) if isinstance(amount, float) else amount)

    words = (
        f"At most {money(worst.exposure)}, on {_day(worst)}: {money(worst.paid)} paid, less {money(worst.aboard)} of "
        f"work aboard and {money(worst.secured)} secured, and {money(worst.leaving)} to take her away. That is "
        f"{money(leaving.refloat)} to refloat her, {money(leaving.tow)} to tow her and {money(leaving.rent)} of dock "
        "until she can float."
    )
    if ahead.exposure > 0:
        words += (
            f" Payments run furthest ahead of the work on {_day(ahead)}, services counted, by {money(ahead.exposure)}: "
            "a later stage, or a guarantee kept until then, would lower both."
        )
    return words


def _moments(desk: OwnerDesk, found: Exposure) -> Table:
    told = {on.toordinal(): stage for stage, on in found.reached}
    if int(found.worst.day) not in told:
        told[int(found.worst.day)] = "The worst moment"
    rows, rounded = [], _rounded(desk, found)
    for ordinal in sorted(told):
        on = date.fromordinal(ordinal)
        one = found.at(on)
        figures = (one.paid, one.aboard, one.secured, one.leaving, one.exposure)
        strong = ordinal == int(found.worst.day)
        cells = (inline(rounded.figure(Decimal(repr(float(value))))) for value in figures)
        rows.append(Row((inline(Span(told[ordinal], strong=strong)), inline(day(on)), *cells)))
    columns = (
        Column("Once paid", width=3.2),
        Column("Day", width=1.6),
        Column("Paid", "decimal", 1.2),
        Column("Aboard", "decimal", 1.2),
        Column("Secured", "decimal", 1.2),
        Column("To take her away", "decimal", 1.4),
        Column("May be lost", "decimal", 1.2),
    )
    note = inline(
        f"{desk.tender.currency}, by the owner's estimate of {rounded.money(found.price)} and the likely days of the "
        "programme; an item that it does not hold is done when its phase ends. Paid on the day on which a stage is "
        "reached. Aboard is what an item comes to once all of it is done, with its part of the services. Securities "
        "count where they are paid on demand, until they are given back. Derived, and on the safe side."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _day(one: Moment) -> str:
    return day(date.fromordinal(int(one.day)))


def _rounded(desk: OwnerDesk, found: Exposure) -> Rounding:
    return rounding(desk.tender.currency, [found.leaving.total])
