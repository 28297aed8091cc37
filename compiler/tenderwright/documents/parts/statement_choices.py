"""What the owner has to decide, by when, and what can still be put off."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Row, Span, Table, inline
from tenderwright.documents.statement_desk import StatementDesk, cut
from tenderwright.planning.in_dock.put_off import PutOff
from tenderwright.pricing.in_dock.ledger import PricedChange
from tenderwright.pricing.in_dock.reports import PricedReport
from tenderwright.pricing.money import total, written
from tenderwright.quantities.customs import day_of_year
from tenderwright.quantities.display import decimals

MOST = 5
"""How many items that can be put off stand on the page; the rest stand in the table beside it."""
DASH = "–"


def decisions(desk: StatementDesk) -> list[Block]:
    """Compose the decisions wanted, the most pressing first, then changes that wait for a signature."""
    made = desk.standing.account
    rows = [*(_report(desk, one) for one in made.waiting), *(_change(one) for one in made.unsigned)]
    if not rows:
        return []
    columns = (
        Column("No.", width=0.8),
        Column("What was found or is to be changed", width=6.2),
        Column(f"Price, {desk.currency}", "decimal", 1.2),
        Column("Days", "right", 0.6),
        Column("Answer by", width=2),
    )
    return [Heading("Decisions needed"), Table(columns, tuple(rows), small=True)]


def _report(desk: StatementDesk, one: PricedReport) -> Row:
    on = desk.standing.on
    item = f"Item {one.item.number}, " if one.item is not None else ""
    where = cut(one.report.where, 48)
    price = written(one.price.amount) if one.price is not None else "not priced"
    late = one.overdue(on)
    answer: Inline
    if one.state(on) == "accepted":
        answer = (Span("accepted; order to be written"),)
    elif one.due is None:
        answer = (Span("no hour given"),)
    else:
        hour = f", {one.due:%H:%M}" if (one.due.hour, one.due.minute) != (23, 59) else ""
        answer = (Span(f"{day_of_year(one.due)}{hour}"),)
        answer += (Span(f" overdue {late} d", strong=True),) if late else ()
    what = inline(Span(f"{item}{where}: "), Span(desk.brief(one.report.found, 110)))
    return Row((inline(one.name), what, inline(price), inline(str(one.report.days or DASH)), answer))


def _change(one: PricedChange) -> Row:
    what = f"Item {one.item.number}: {cut(one.order.what, 110)}"
    cells = (one.name, what, written(one.amount), str(one.order.days or DASH), "to be signed")
    return Row(tuple(inline(cell) for cell in cells))


def choices(desk: StatementDesk) -> list[Block]:
    """Compose what can still be put off, the greatest saving first."""
    standing = desk.standing
    if standing.days.undocked is not None:
        return []
    heading = Heading("What can still be put off")
    if not standing.scoped:
        words = "owner/scope.yaml does not say what must be done, so nothing is offered here."
        return [heading, Paragraph(inline(words))]
    if not standing.put_off:
        words = "Nothing: all that is left has begun, must be done, or is needed by other work."
        return [heading, Paragraph(inline(words))]
    columns = (
        Column("Item", width=2.4),
        Column(f"Saves, {desk.currency}", "decimal", 1.1),
        Column("Days", "right", 0.55),
        Column("What follows", width=6),
    )
    rows = tuple(_row(desk, one) for one in standing.put_off[:MOST])
    return [heading, Table(columns, rows, small=True, note=inline(_note(standing.put_off)))]


def _row(desk: StatementDesk, one: PutOff) -> Row:
    days = DASH if one.days is None or one.days < 0.05 else decimals(one.days, 1)
    cells = (f"{one.item.number} {cut(one.item.title, 30)}", written(one.saving), days, follows(desk, one, 76))
    return Row(tuple(inline(cell) for cell in cells))


def follows(desk: Desk, one: PutOff, most: int) -> str:
    """Say what follows from putting an item off: in its own words, and which other items that touches."""
    told = [f"Nothing else then needs {_items(one.frees)}."] if one.frees else []
    told += [f"{_items(one.opens).capitalize()} could be done instead."] if one.opens else []
    if one.item.deferral is not None:
        room = max(most - sum(len(words) + 1 for words in told), most // 3)
        told.insert(0, cut(desk.plain(one.item.deferral).replace("\n", " "), room))
    return " ".join(told) or "Its item does not say."


def _items(numbers: tuple[str, ...]) -> str:
    return f"item{'s' if len(numbers) > 1 else ''} {', '.join(numbers)}"


def _note(found: tuple[PutOff, ...]) -> str:
    rest = found[MOST:]
    more = ""
    if rest:
        saving = written(total([one.saving for one in rest]))
        more = f" {len(rest)} more, together {saving}, stand in statement-lines.csv."
    days = (
        " Days are those by which the critical path of what is left grows shorter." if found[0].days is not None else ""
    )
    return (
        f"By itself each, at the rates of the bid, while it has not begun; material already bought is paid.{days}{more}"
    )


def due_words(one: PricedReport) -> str:
    """Write the hour of an answer for a table of data."""
    return f"{one.due:%Y-%m-%d %H:%M}" if one.due is not None else ""
