"""The owner's copy of the inspection plan: by day of the programme, with what is released and what is still open."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date

from tenderwright.documents.desk import capital
from tenderwright.documents.edition import Block, Column, Edition, Facts, Heading, Inline, Paragraph, Row, Table, inline
from tenderwright.documents.inspection_plan import plan_part
from tenderwright.documents.links_within import links_within
from tenderwright.documents.owner.approvals import register_of as approvals_of
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.parts.inspection_points import told
from tenderwright.documents.parts.openings_register import named
from tenderwright.model.approvals import FLOODING
from tenderwright.planning.approval_words import open_words
from tenderwright.planning.inspection.days import days_of
from tenderwright.planning.inspection.in_words import words_for
from tenderwright.planning.inspection.ordered import inspected_in_dock
from tenderwright.planning.inspection.register import register_of
from tenderwright.planning.inspection.results import Inspected, PointResult, RowResult, misses
from tenderwright.quantities.customs import day, day_of_year

_NOTHING = (
    "No result is recorded yet. In dock, write them under `inspections:` and `openings:` in a file of owner/in-dock/ "
    "and print this plan again."
)


def owners_inspection_plan(desk: OwnerDesk, book: Edition) -> Edition | None:
    """Compose the owner's copy; None where no item asks for anything to be inspected."""
    seen = desk.foresight
    found = inspected_in_dock(desk.package, seen.papers, desk.ledger) if seen is not None else None
    if found is None or not found.points:
        return None
    stands = [*_stands(desk, found), *_by_day(desk, found)]
    parts = (
        plan_part("1", "inspections-by-day", "Inspections by day", stands, landscape=True, audience="owner"),
        plan_part(
            "2", "register-now", "Register of openings", _register(desk, found), landscape=True, audience="owner"
        ),
    )
    title = f"Inspection plan, {desk.tender.ship}: the owner's copy"
    subtitle = "By day of the programme, with what is open"
    made = replace(book, title=title, subtitle=subtitle, parts=links_within(parts), facts=(), sheets={}, tables={})
    return replace(made, record=None)


def _stands(desk: OwnerDesk, found: Inspected) -> list[Block]:
    """Say in a few lines how many are open, and which of them floating waits for."""
    if not found.in_use:
        return [Paragraph(inline(_NOTHING))]
    holds = [one for one in found.points if one.point.code == "H"]
    failed = [one for one in found.points if one.state == "failed"]
    facts = [
        ("Hold points", f"{sum(not one.open for one in holds)} of {len(holds)} released and signed twice"),
        ("Other points", _others(found)),
        ("Failed", "; ".join(words_for(desk.package, one) for one in failed) or "none that is not put right"),
        ("Register", f"{sum(not one.open for one in found.rows)} of {len(found.rows)} rows closed and signed twice"),
        *_plugs(desk, found),
        ("Until she may float", f"{len(found.keeping_from('docking', 'flooding'))} holds and rows are open"),
        *_approvals(desk),
    ]
    if desk.ledger is not None and desk.ledger.last is not None:
        facts.insert(0, ("Papers from the dock", f"tell until {day(desk.ledger.last)}"))
    return [Facts(tuple((name, inline(text)) for name, text in facts))]


def _others(found: Inspected) -> str:
    others = [one for one in found.points if one.point.code != "H"]
    return f"{sum(not one.open for one in others)} of {len(others)} witnessed, tested or read"


def _plugs(desk: OwnerDesk, found: Inspected) -> list[tuple[str, str]]:
    plugs = {one.opening for one in desk.package.openings if one.kind == "docking plug"}
    rows = [one for one in found.rows if one.row.kind == "opening" and one.row.name in plugs]
    out, back = (sum(one.said(key) is not None for one in rows) for key in ("opened", "closed"))
    return [("Docking plugs", f"{len(rows)}: {out} drawn, {back} back in place")] if rows else []


def _approvals(desk: OwnerDesk) -> list[tuple[str, str]]:
    """Say which approvals and conditions floating waits for too, where the owner keeps a register of them."""
    kept = approvals_of(desk)
    return [("Approvals open until then", open_words(kept, FLOODING))] if kept is not None else []


def _by_day(desk: OwnerDesk, found: Inspected) -> list[Block]:
    seen = desk.foresight
    schedule = seen.schedule if seen is not None else None
    days = days_of(found.points, schedule, desk.tender.events)
    blocks: list[Block] = []
    if schedule is None or schedule.arrival is None:
        words = "The owner's programme gives no days, so points stand by item; owner/programme.yaml would give them."
        blocks.append(Paragraph(inline(words)))
    columns = (
        Column("Point", width=14),
        Column("What", width=54),
        Column("Passes", width=62),
        Column("Who", width=38),
        Column("By the programme", width=22),
        Column("How it stands", width=48),
    )
    rows: list[Row] = []
    before: date | None = None
    for one in sorted(found.points, key=lambda each: days[each.point.name][0] or date.max):
        first, last = days[one.point.name]
        if not rows or first != before:
            rows.append(Row((inline(day(first) if first else "No day is known"),), "group"))
            before = first
        until = f"to {day_of_year(last)}" if last is not None and last != first else ""
        rows.append(Row((*told(desk, one.point), inline(until), inline(_state(one)))))
    return [*blocks, Heading("Point by point"), Table(columns, tuple(rows), small=True)]


def _state(one: PointResult) -> str:
    last = one.last
    if last is None:
        return "open"
    words = [f"{capital(one.state)} {day_of_year(last.day)}"]
    if last.where:
        words.append(last.where)
    if last.value is not None:
        missed = misses(one.point, last)
        words.append(f"{last.value}, against {missed}" if missed else str(last.value))
    if one.point.code == "H" or last.yard or last.owner:
        words.append(f"yard {last.yard or '–'}, owner {last.owner or '–'}")
    if last.result == "failed" and last.again is not None:
        words.append(f"again {day_of_year(last.again)}")
    return "; ".join(filter(None, (*words, last.note)))


def _register(desk: OwnerDesk, found: Inspected) -> list[Block]:
    numbers = {row.key: n for n, row in enumerate(register_of(desk.package), start=1)}
    rows = tuple(Row(tuple(_row(desk, one, numbers))) for one in found.rows)
    columns = (
        Column("No.", width=8),
        Column("What, and where", width=78),
        Column("Opened by", width=22),
        *(Column(name, width=18) for name in ("Opened", "Closed", "Tested")),
        Column("Yard", width=26),
        Column("Owner", width=26),
        Column("How it stands", width=28),
    )
    note = "Numbers are those of the yard's copy. Work that is not ordered has no row."
    if not rows:
        return [Paragraph(inline("Nothing of hers is opened by what is ordered."))]
    return [Table(columns, rows, note=inline(note), small=True)]


def _row(desk: OwnerDesk, one: RowResult, numbers: Mapping[tuple[str, str], int]) -> Iterator[Inline]:
    yield inline(str(numbers[one.row.key]))
    yield (*named(desk, one.row), *inline(f"; no. {one.hole}" if one.hole else ""))
    yield inline(", ".join(item.number for item in one.row.opened_by) or "nobody")
    for key in ("opened", "closed", "tested"):
        said = one.said(key)
        yield inline(day_of_year(said) if said is not None else "–")
    yield from (inline(name or "–") for name in _names(one))
    notes: Sequence[str] = [entry.note for entry in one.told if entry.note]
    yield inline("; ".join((one.state, *notes)))


def _names(one: RowResult) -> tuple[str, str]:
    return one.signed_by("yard"), one.signed_by("owner")
