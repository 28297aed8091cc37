"""The page of approvals for trustees: what is wanted, from whom, by when to ask, how far it is and what it holds up."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tenderwright.documents.desk import capital, joined
from tenderwright.documents.edition import (
    Block,
    Bullets,
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
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.planning.approval_words import by_state, gate_words, holds_up, in_state, missed_words, work_of
from tenderwright.planning.approvals import GRANTED, NOT_NEEDED, TO_ASK, Asked, Register, Standing, register
from tenderwright.quantities.customs import day

NO_SOURCE = "common practice, no source"
NO_REGISTER = (
    "Which consents and permissions hold up the docking is not known: no register is kept, owner/approvals.yaml. "
    "The command `tenderwright add approvals` writes its form."
)


def register_of(desk: OwnerDesk) -> Register | None:
    """Give the register with its days; None where the owner keeps none."""
    seen = desk.foresight
    return register(seen.papers, desk.package, seen.schedule) if seen is not None else None


def approvals_sheet(desk: OwnerDesk, book: Edition) -> Edition | None:
    """Compose the page as a paper of its own; None where the owner keeps no register."""
    kept = register_of(desk)
    if kept is None:
        return None
    takes = _Takes()
    late = [one for one in kept.standings if at_fault(one)]
    still = [one for one in kept.standings if one.open and one not in late]
    given = [one for one in kept.standings if one.state == GRANTED and one not in late]
    blocks: list[Block] = [
        Paragraph(inline(_in_short(kept))),
        *_listed("Late, missed or run out", late, takes),
        *_listed("Still to be given, by the day to ask for it", still, takes),
        *takes.note(),
        *_conditions(kept),
        *_given(given),
        *_not_needed(kept),
    ]
    title = f"Approvals for {desk.tender.ship}: what waits for whom"
    part = Part("approvals", "", title, "brief", "", tuple(blocks), caution=True)
    sheet = replace(book, subtitle="Approvals", parts=(part,), facts=(), sheets={}, tables={}, record=None)
    return replace(sheet, for_screen=True)


def at_fault(one: Standing) -> bool:
    """Tell whether an approval is late, was missed or runs out too early, or a condition of it was not met in time."""
    missed = bool(one.missed) and not one.approval.afterwards
    return bool(one.late or missed or one.outlived) or any(asked.unmet for asked in one.conditions)


def how_many(kept: Register | None) -> str:
    """Say how many approvals there are and how far they are; where none are kept, what it would take."""
    if kept is None:
        return NO_REGISTER
    counted = joined([f"{len(found)} {state}" for state, found in by_state(kept).items()])
    until = f", as recorded up to {day(kept.judged)}" if kept.judged is not None else ""
    late = [one.approval.title for one in kept.standings if at_fault(one)]
    faults = f"Late, missed or run out: {joined(late)}." if late else "Nothing is late."
    days = [one.ask_by for one in kept.standings if one.state == TO_ASK and not one.late and one.ask_by is not None]
    ask = f" The next has to be asked for by {day(min(days))}." if days else ""
    return f"Approvals{until}: {counted}. {faults}{ask}"


def _in_short(kept: Register) -> str:
    return (
        f"{how_many(kept)} "
        "The day to ask is the day on which an approval is wanted, less the time that the answer takes. "
        "This page plans and lists; it is not law, and the authority decides."
    )


def beside_the_work(desk: OwnerDesk) -> list[Block]:
    """List beside the programme what is still to be given or met, by the day on which it is wanted."""
    kept = register_of(desk)
    title = Heading("Approvals that hold up the work")
    rows = []
    for one in kept.standings if kept is not None else ():
        if one.open and one.next is not None:
            ask = f"; last day to ask {day(one.ask_by)}" if one.state == TO_ASK and one.ask_by is not None else ""
            rows.append((one.next, one.approval.title, f"{in_state(one)}{ask}"))
        open_ = [asked for asked in one.conditions if one.holds and asked.condition.met is None]
        rows += [(asked.event, one.approval.title, f"condition: {asked.condition.what}") for asked in open_]
    rows.sort(key=lambda row: (row[0].day is None, str(row[0].day)))
    columns = (Column("Before", width=4), Column("Approval", width=5), Column("How far it is", width=8))
    cells = [Row((inline(capital(gate_words(event))), inline(what), inline(capital(far)))) for event, what, far in rows]
    table = [Table(columns, tuple(cells), small=True)] if cells else []
    return [title, Paragraph(inline(how_many(kept))), *table]


class _Takes:
    """How long answers take, each with a letter for who says so."""

    def __init__(self) -> None:
        self.sources: list[str] = []

    def cell(self, one: Standing) -> str:
        if one.lead is None:
            return "not known"
        source = one.approval.lead_source or NO_SOURCE
        if source not in self.sources:
            self.sources.append(source)
        return f"{one.lead} d ({_letter(self.sources.index(source))})"

    def note(self) -> list[Block]:
        told = [f"({_letter(number)}) {source}" for number, source in enumerate(self.sources)]
        return [Paragraph(inline(f"How long an answer takes, by: {'; '.join(told)}."), as_note=True)] if told else []


def _letter(number: int) -> str:
    return chr(ord("a") + number) if number < 26 else str(number + 1)


def _listed(title: str, standings: Sequence[Standing], takes: _Takes) -> list[Block]:
    if not standings:
        return []
    columns = (
        Column("Ask by", width=2.2),
        Column("What, and from whom", width=6.0),
        Column("What it holds up", width=4.2),
        Column("Takes", width=1.4),
        Column("How far it is", width=4.0),
    )
    return [Heading(title), Table(columns, tuple(_row(one, takes) for one in standings), small=True)]


def _row(one: Standing, takes: _Takes) -> Row:
    return Row(
        (
            inline(day(one.ask_by)),
            _named(one),
            inline(capital(holds_up(one))),
            inline(takes.cell(one)),
            _state(one),
        )
    )


def _named(one: Standing) -> Inline:
    """Name an approval, on whose side it stands, the items that it is about, who gives it, and what else was said."""
    about = ", ".join(said for said in (one.approval.kind, work_of(one)) if said)
    notes = " ".join(one.approval.notes.text.split()) if one.approval.notes is not None else ""
    return inline(
        Span(one.approval.title, strong=True), f" ({about}). {one.approval.given_by}", f". {notes}" if notes else ""
    )


def _given(standings: Sequence[Standing]) -> list[Block]:
    """List what was given, by its day; who gave it and the paper stand in the table of the register."""
    if not standings:
        return []
    told = sorted(standings, key=lambda one: str(one.approval.granted))
    return [Heading("Given"), Bullets(tuple(inline(_given_words(one)) for one in told), abreast=True)]


def _given_words(one: Standing) -> str:
    until = f", until {day(one.approval.expires)}" if one.approval.expires is not None else ""
    after = f". {one.approval.afterwards}" if one.approval.afterwards else ""
    return f"{one.approval.title}: {day(one.approval.granted)}{until}{after}"


def _paper(one: Standing) -> str:
    return one.approval.paper.removeprefix("owner/documents/")


def _state(one: Standing) -> Inline:
    """Say how far it is; what is wrong first, and what was said of it afterwards."""
    wrong = [one.late] if one.late else []
    wrong += [f"done before it was given: {missed_words(one)}"] if one.missed and not one.approval.afterwards else []
    if one.outlived is not None:
        wrong.append(f"runs out on {day(one.approval.expires)}, before {gate_words(one.outlived)}")
    first = f"{capital('; '.join(wrong))}. " if wrong else ""
    paper = f". {_paper(one)}" if one.approval.paper else ""
    return inline(Span(first, strong=True), capital(in_state(one)), paper)


def _conditions(kept: Register) -> list[Block]:
    """List the conditions that are open, those that came too late first."""
    found = [(one, asked) for one in kept.standings for asked in one.conditions if one.state != NOT_NEEDED]
    shown = [(one, asked) for one, asked in found if asked.condition.met is None or asked.unmet]
    if not shown:
        return []
    shown.sort(key=lambda pair: (not pair[1].unmet, pair[1].event.day is None, str(pair[1].event.day)))
    columns = (
        Column("To be met before", width=5),
        Column("Condition", width=7.6),
        Column("Of", width=5.4),
    )
    rows = [
        Row(
            (
                inline(capital(gate_words(asked.event))),
                inline(Span(_too_late(asked), strong=True), asked.condition.what),
                inline(one.approval.title),
            )
        )
        for one, asked in shown
    ]
    return [Heading("Conditions still to be met"), Table(columns, tuple(rows), small=True)]


def _too_late(asked: Asked) -> str:
    """Say that a condition was not met in time; nothing where there is still time."""
    met, paper = asked.condition.met, asked.condition.paper
    if not asked.unmet:
        return ""
    return f"Not met in time{f', but on {day(met)}' if met is not None else ''}{f' ({paper})' if paper else ''}. "


def _not_needed(kept: Register) -> list[Block]:
    told = [
        f"{one.approval.title}: {said.why} ({said.by}, {day(said.day)})"
        for one in kept.standings
        if (said := one.approval.not_needed) is not None
    ]
    return [Heading("Not needed"), Bullets(tuple(inline(words) for words in told))] if told else []
