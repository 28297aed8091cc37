"""The hold and witness points, tests and reports of an item, one row each."""

from __future__ import annotations

from tenderwright.documents.desk import Desk, capital, joined
from tenderwright.documents.edition import Block, Column, Heading, Row, Span, Table, inline
from tenderwright.documents.parts.item_lines import MARGIN
from tenderwright.model.item import Item
from tenderwright.model.item_points import Hold, Report, Test
from tenderwright.quantities.customs import day


def item_points(desk: Desk, item: Item) -> list[Block]:
    """Compose the table of what is held, tested and handed over."""
    holds = [_hold(desk, item, hold) for hold in item.holds]
    tests = [_test(desk, test) for test in item.tests]
    reports = [_report(desk, report) for report in item.reports]
    points = "hold points" if all(hold.kind == "hold" for hold in item.holds) else "hold and witness points"
    named = [name for name, rows in ((points, holds), ("tests", tests), ("reports", reports)) if rows]
    if not named:
        return []
    columns = (
        Column("Point", width=MARGIN),
        Column("What", width=55),
        Column("Who and notice, or when", width=43),
        Column("Passes, and form", width=56.4),
    )
    return [Heading(capital(joined(named)), 3), Table(columns, (*holds, *tests, *reports))]


def _hold(desk: Desk, item: Item, hold: Hold) -> Row:
    record = [f". Record: {hold.record[:1].lower()}{hold.record[1:]}"] if hold.record else []
    return Row(
        (
            inline(Span(hold.hold, strong=True), f" {hold.kind}"),
            inline(capital(hold.at)),
            inline(f"{capital(joined(list(hold.by)))}, {desk.quantity(hold.notice)} notice"),
            (*desk.words(hold.accept), *inline(*record)),
        ),
        anchor=f"item-{item.number}-{hold.hold.lower()}",
    )


def _test(desk: Desk, test: Test) -> Row:
    what, when = inline(capital(test.test)), inline(capital(test.when) or "–")
    return Row((inline(Span("Test", strong=True)), what, when, desk.words(test.accept)))


def _report(desk: Desk, report: Report) -> Row:
    due = f"{capital(str(report.due))} ({day(report.due.on(desk.tender.events))})"
    cells = (Span("Report", strong=True), capital(report.report), due, report.copies or "–")
    return Row(tuple(inline(cell) for cell in cells))
