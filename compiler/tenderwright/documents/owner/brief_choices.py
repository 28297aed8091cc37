"""What each next amount does, what is to be decided by when, and what follows where nothing is done, for trustees."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date, timedelta

from tenderwright.calculations.ship.interval import After, docking_interval, years_ahead
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import capital, joined
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Inline, Paragraph, Row, Span, Table, inline
from tenderwright.documents.owner.approvals import how_many, register_of
from tenderwright.documents.owner.brief_money import plain_cells, rounded, sources_of, thing
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.funding import HAND, asked, secured
from tenderwright.model.item import Item
from tenderwright.planning.ladder import Ladder, Rung
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals
from tenderwright.quantities.quantity import Quantity

_NAMED = 4
"""Pieces of work that a rung names; the rest are counted."""
_PUT_OFF = 6
"""Pieces of work of which it is told what follows if they are put off."""
_DAY = 86400.0
_MARKS = re.compile(r"\b(?:Fr|strake) \w")
"""What only an engineer reads."""


def choices(desk: OwnerDesk) -> list[Block]:
    """Say what each next amount of money would do, the surest first."""
    words = "What each next amount does"
    ladder = asked(desk)
    if ladder is None:
        lacking = "owner/funding.yaml (the sources)" if not sources_of(desk) else ""
        wanting = joined([one for one in (lacking, "owner/scope.yaml (what each piece of work is worth)") if one])
        return [Heading(words), Paragraph(inline(f"Not known: it needs {wanting}."))]
    rows = [_rung_row(desk, rung, ladder) for rung in (*ladder.rungs, *ladder.steps)]
    columns = (
        Column("All money so far", "right", 1.5),
        Column("With", width=3.4),
        Column("What it does", width=7.6),
    )
    return [Heading(words, anchor="next-amounts"), Table(columns, tuple(rows))]


def _rung_row(desk: OwnerDesk, rung: Rung, ladder: Ladder) -> Row:
    about = rounded(desk)
    made_by = desk.source_of(rung)
    if made_by is None:
        source = HAND if rung is ladder.rungs[0] else f"{about.money(rung.more)} more, free to use"
    else:
        likely = desk.quantity(made_by.likelihood)
        source = f"{made_by.name}: {about.money(rung.more)}, {made_by.status}"
        source += f" ({likely})" if likely and made_by.status not in ("in hand", "promised") else ""
    return Row(plain_cells(about.figure(rung.money), source, _does(desk, rung, ladder)))


def _does(desk: OwnerDesk, rung: Rung, ladder: Ladder) -> str:
    about = rounded(desk)
    if rung.missing:
        return (
            f"Not yet enough for what must be done ({about.money(ladder.must_cost)}): {about.money(rung.missing)} of "
            "money that may pay for it is missing."
        )
    over = rung is ladder.rungs[-1] and rung.left > about.unit
    left = f" Of all the money {about.money(rung.left)} then finds no work that it may pay for." if over else ""
    priced = {one.item.number for one in desk.estimate.items}
    added = sorted((n for n in rung.added if n in priced), key=lambda n: -ladder.costs.get(n, 0))
    if not added:
        return f"Adds no work: nothing more is left that it may pay for.{left}"
    first = not any(one.items for one in ladder.rungs[: ladder.rungs.index(rung)]) if rung in ladder.rungs else False
    must = [number for number in added if number in ladder.must]
    others = [number for number in added if number not in ladder.must]
    told = [f"everything that must be done ({len(must)} pieces)"] if first and must else []
    told += [thing(desk.package.item_by_name[number]) for number in (others if told else added)[:_NAMED]]
    rest = len(others if first and must else added) - _NAMED
    told += [f"{rest} more"] if rest > 0 else []
    return f"{'Pays for' if first else 'Adds'}: {'; '.join(told)}.{left}"


def decisions(desk: OwnerDesk) -> list[Block]:
    """List the days by which something is decided, or after which a choice is gone."""
    rows = [Row(plain_cells(day(when), what)) for when, what in sorted(_days(desk))]
    title, approvals = Heading("What is to be decided, and by when"), Paragraph(inline(how_many(register_of(desk))))
    if not rows:
        return [title, Paragraph(inline("Not known: package.yaml gives no days yet.")), approvals]
    return [title, Table((Column("Day", width=2), Column("What", width=10)), tuple(rows)), approvals]


def _days(desk: OwnerDesk) -> list[tuple[date, str]]:
    dates, plan, about = desk.tender.dates, desk.tender.programme, rounded(desk)
    found: list[tuple[date, str]] = []
    if dates.closing is not None:
        found.append((dates.closing, "Bids come in."))
    if dates.award is not None:
        found.append((dates.award, f"Award: which yard, and which work. {_sure(desk)}"))
    if dates.closing is not None and dates.valid is not None:
        open_for = timedelta(seconds=dates.valid.si)
        if open_for < date.max - dates.closing:
            words = "Bids lapse; after this day the yards may ask other prices."
            found.append((dates.closing + open_for, words))
    for source in sources_of(desk):
        if source.decided is not None and source.status not in ("in hand", "promised"):
            found.append((source.decided, f"{source.name} decides on {about.money(source.amount)}."))
        if source.spend_by is not None:
            found.append((source.spend_by, f"Last day on which the money of {source.name} may be spent."))
    if plan is not None:
        found.append((plan.docking, "She goes on blocks."))
        found.append((plan.undocking, "She is to be afloat again; each day more is paid for."))
    schedule = desk.foresight.schedule if desk.foresight else None
    for one in schedule.activities if schedule is not None else ():
        if one.node.kind == "decision" and one.begins is not None:
            answer = one.node.item.decision.within if one.node.item and one.node.item.decision else None
            within = f" within {_in_days(answer)}" if answer is not None else ""
            found.append((one.begins, f"{one.node.title}: needed{within}, or she waits on the blocks."))
    return found


def _sure(desk: OwnerDesk) -> str:
    """Say what the money in hand and promised pays for."""
    ladder = asked(desk)
    if ladder is None:
        return "What money can be counted on by then is to be known."
    rung, priced = secured(desk, ladder), {one.item.number for one in desk.estimate.items}
    if rung is None:
        return "Money in hand and promised does not yet pay for what must be done."
    count = sum(number in priced for number in rung.items)
    return f"Money in hand and promised pays for {count} of {len(priced)} pieces of work."


def _in_days(time: Quantity) -> str:
    days = time.si / _DAY
    return f"{decimals(days, 1).removesuffix('.0')} {'day' if days == 1 else 'days'}"


def if_nothing(desk: OwnerDesk) -> list[Block]:
    """Say what follows where nothing is done: how long she has gone, what wastes, and what each putting off means."""
    told = [words for words in (_afloat(desk), _plates(desk)) if words]
    put_off = _put_off(desk)
    blocks: list[Block] = [Heading("If nothing is done")]
    if not told and not put_off:
        words = "Not known: it needs thickness readings, or items that say what putting off means (deferral)."
        return [*blocks, Paragraph(inline(words))]
    if not put_off:
        told.append("What putting off single pieces of work would mean is not written in the items (deferral).")
    blocks += [Paragraph(inline(" ".join(told)))] if told else []
    return [*blocks, Bullets(tuple(put_off))] if put_off else blocks


def _afloat(desk: OwnerDesk) -> str:
    found = desk.calculated.outcome(docking_interval)
    if isinstance(found, Absent) or not found.between:
        return ""
    return f"She will have been afloat for {decimals(found.between[-1], 0)} years when she is docked."


def _plates(desk: OwnerDesk) -> str:
    """Tell of the plates that are past their limit now, and of those that will be."""
    values = desk.record.values
    if "shell.plates.now" not in values:
        return ""
    now = round(float(values["shell.plates.now"].si)) + round(float(values["shell.plates.next"].si))
    ahead = desk.calculated.outcome(years_ahead)
    words = f"{now} of her plates are past their limit now or will be before the next docking"
    later = [] if isinstance(ahead, Absent) else [_past(one) for one in ahead if one.plates]
    return f"{words}. Of the others, {joined(later)}." if later else f"{words}."


def _past(after: After) -> str:
    return f"{len(after.plates or ())} will be within {after.years} years"


def _put_off(desk: OwnerDesk) -> list[Inline]:
    """Give what follows where single pieces of work are put off, the gravest first."""
    papers = desk.foresight.papers if desk.foresight else None
    worths = papers.scope.items if papers is not None and papers.scope is not None else {}
    costs = {one.item.number: one.loaded for one in desk.estimate.items}

    def graver(item: Item) -> tuple[int, int]:
        worth = worths.get(item.number)
        return (worth.risk + worth.safety if worth else 0, int(costs[item.number]))

    items = [one for one in desk.package.items if one.deferral and not one.withdrawn and one.number in costs]
    items = [one for one in items if not _MARKS.search(_put_off_words(desk, one))]
    chosen = sorted(_spread(sorted(items, key=graver, reverse=True)), key=lambda one: one.item)
    told: list[Inline] = []
    for item in chosen:
        told.append((Span(f"{capital(thing(item))}: ", strong=True), Span(capital(_put_off_words(desk, item)))))
    return told


def _put_off_words(desk: OwnerDesk, item: Item) -> str:
    return desk.plain(item.deferral).replace("\n", " ") if item.deferral else ""


def _spread(items: Sequence[Item]) -> list[Item]:
    """Take the first of them, no more than two of one hundred of numbers."""
    taken: list[Item] = []
    for item in items:
        if len(taken) < _PUT_OFF and sum(one.item // 100 == item.item // 100 for one in taken) < 2:
            taken.append(item)
    return taken
