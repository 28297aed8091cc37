"""The lines of a statement for a spreadsheet: what makes the forecast, to the cent, and what does not count."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from tenderwright.documents.edition import DataTable
from tenderwright.documents.parts.statement_choices import due_words, follows
from tenderwright.documents.statement_desk import StatementDesk
from tenderwright.model.in_dock import WAITING, ConditionReport
from tenderwright.pricing.in_dock.account import LineAccount, RunningAccount
from tenderwright.pricing.in_dock.days_beyond import DaysBeyond
from tenderwright.pricing.in_dock.ledger import PricedChange
from tenderwright.pricing.in_dock.ordered import Price
from tenderwright.pricing.in_dock.reports import PricedReport
from tenderwright.pricing.money import ZERO

HEADER = (
    "kind",
    "number",
    "item",
    "text",
    "cause",
    "priced by",
    "quantity",
    "unit",
    "currency",
    "amount",
    "in forecast",
    "days",
    "state",
    "answer by",
    "note",
)
Cell = str | int | Decimal | None


def statement_lines(desk: StatementDesk) -> DataTable:
    """List contract lines, measures, work left out, changes, reports and what can be put off.

    The column `in forecast` adds up to the forecast; what does not count in it has nothing there.
    """
    made = desk.standing.account
    rows: list[tuple[Cell, ...]] = []
    for line in made.lines:
        rows += _line(desk, line)
    if made.ledger.contract.beyond:
        beyond = made.ledger.contract.beyond
        rows.append(_row("contract", "", "", "The total as written, beyond its lines", amount=beyond, counted=beyond))
    rows += [_change(desk, one) for one in made.ledger.changes if one.order.day <= made.on]
    rows += [_report(desk, one) for one in made.ledger.reports if one.report.day <= made.on]
    for kind, words, days in (
        ("further days", "Further days that changes bring, not ordered yet", made.further),
        ("days short", "Days that the work is short of", made.short),
    ):
        if days is not None:
            rows += _beyond(made, kind, words, days)
    for one in desk.standing.put_off:
        note = follows(desk, one, 2000)
        title = one.item.title
        rows.append(_row("can be put off", "", one.item.number, title, amount=-one.saving, counted=ZERO, note=note))
    at = HEADER.index("currency")
    return DataTable(HEADER, tuple((*row[:at], desk.tender.currency, *row[at:]) for row in rows))


def _beyond(made: RunningAccount, kind: str, words: str, one: DaysBeyond) -> Iterator[tuple[Cell, ...]]:
    contract = made.ledger.contract
    for number, (days, amount) in one.lines.items():
        line = contract.lines[number]
        text = words if number == contract.days_line else f"{words}: {line.text}"
        yield _row(kind, number, line.item.number, text, quantity=days, unit=line.unit, amount=amount, counted=amount)
    if contract.days_line not in one.lines:
        note = "not priced: the contract has no rate for a further day"
        yield _row(kind, contract.days_line, "", words, quantity=one.days, unit="d", note=note)


def _row(
    kind: str,
    number: str,
    item: str,
    text: str,
    *,
    cause: str = "",
    way: str = "",
    quantity: Decimal | None = None,
    unit: str = "",
    amount: Decimal | None = None,
    counted: Decimal = ZERO,
    days: int | None = None,
    state: str = "",
    answer_by: str = "",
    note: str = "",
) -> tuple[Cell, ...]:
    return kind, number, item, text, cause, way, quantity, unit, amount, counted, days, state, answer_by, note


def _line(desk: StatementDesk, one: LineAccount) -> Iterator[tuple[Cell, ...]]:
    line = one.line
    at = (line.number, line.item.number)
    state = "" if line.inside else "paid as it is ordered"
    back = desk.standing.account.ledger.back(desk.standing.on).get(line.number)
    quantity = line.tendered if line.unit else None
    yield _row(
        "contract",
        *at,
        line.text,
        quantity=quantity,
        unit=line.unit,
        amount=line.amount,
        counted=line.amount,
        state=state,
        note=f"in the contract again since {back.day}, by {back.by}: {back.why}" if back is not None else "",
    )
    if one.measured is not None:
        amount = one.remeasured
        yield _row("measured", *at, line.text, quantity=one.measured, unit=line.unit, amount=amount, counted=amount)
    out = desk.standing.account.ledger.out(desk.standing.on).get(line.number)
    if out is not None:
        put_off = (out.work.name, out.day) in desk.standing.account.ledger.deferred
        amount, kind = one.left_out, "put off" if put_off else "left out"
        state = f"by {out.by}, {out.day.isoformat()}"
        note = f"{out.why}; to be done: {out.until}" if out.until else out.why
        yield _row(kind, *at, line.text, amount=amount, counted=amount, state=state, note=note)


def _change(desk: StatementDesk, one: PricedChange) -> tuple[Cell, ...]:
    order, signed = one.order, one.signed_by(desk.standing.on)
    state = f"signed by {order.by}, {order.signed}" if signed else "to be signed"
    quantity, unit = _quantity(one.price, one.line.unit)
    note = f"line {one.line.number}" + (f"; answers {order.condition}" if order.condition is not None else "")
    return _row(
        "change",
        one.name,
        one.item.number,
        order.what,
        cause=order.cause,
        way=one.price.way,
        quantity=quantity,
        unit=unit,
        amount=one.amount,
        counted=one.amount,
        days=order.days,
        state=state,
        note=f"{note}; {order.no_rate_fits}" if order.no_rate_fits else note,
    )


def _quantity(price: Price, unit: str) -> tuple[Decimal | None, str]:
    if price.way == "unit rate":
        return price.quantity, unit
    return (price.hours, "h") if price.hours else (None, "")


def _found(desk: StatementDesk, report: ConditionReport) -> str:
    """Say where what was found, why it came about, and what the yard recommends."""
    told = f"{report.where}: {desk.plain(report.found)}"
    told += f" Cause: {desk.plain(report.cause)}" if report.cause else ""
    told += f" The yard recommends: {desk.plain(report.repair)}" if report.repair else ""
    return told.replace("\n", " ")


def _report(desk: StatementDesk, one: PricedReport) -> tuple[Cell, ...]:
    made, report = desk.standing.account, one.report
    state = one.state(made.on)
    counts = one in made.waiting
    answers = [change.name for change in made.ledger.answers(one, made.on)]
    if state != WAITING:
        state = f"{state} {report.decided}" + (f" by {report.by}" if report.by is not None else "")
    late = one.overdue(made.on)
    quantity, unit = (
        _quantity(one.price, made.ledger.contract.lines[report.line.name].unit)
        if (one.price is not None and report.line is not None)
        else (None, "")
    )
    return _row(
        "condition found",
        one.name,
        one.item.number if one.item is not None else "",
        _found(desk, report),
        way=one.price.way if one.price is not None else "",
        quantity=quantity,
        unit=unit,
        amount=one.price.amount if one.price is not None else None,
        counted=one.price.amount if counts and one.price is not None else ZERO,
        days=report.days,
        state=f"{state}, overdue {late} d" if late else state,
        answer_by=due_words(one),
        note=f"answered by {', '.join(answers)}" if answers else report.note,
    )
