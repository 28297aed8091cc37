"""What award and papers from the dock tell of the account: prices, changes, reports, hours, and work put off."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from tenderwright.model.build import Prose
from tenderwright.pricing.in_dock.account import LineAccount, RunningAccount
from tenderwright.pricing.in_dock.pool import pool_balances
from tenderwright.pricing.in_dock.reports import PricedReport
from tenderwright.reading.scalars import Todo

TODO = Todo("todo")
Entry = dict[str, Any]


def account_entries(made: RunningAccount) -> Entry:
    """Give every part of the findings that the running account fills."""
    contract = made.ledger.contract
    rows = [row for row in made.lines if row.line.amount or row.final]
    return {
        "conditions_found": [_condition(made, one) for one in made.ledger.reports if one.report.day <= made.on],
        "changes": [*_signed(made), *_measured(rows, made), *_left_out(rows, made)],
        "hours_used": [
            {"line": one.line.number, "hours": f"{_plain(one.ordered)} h"}
            for one in pool_balances(made)
            if one.line.form == "hours" and one.ordered
        ],
        "currency": contract.currency,
        "publish_prices": False,
        "bid": contract.award.bid.name,
        "prices": [_price(row, made) for row in rows],
        "totals": {"contract": TODO, "changes": TODO, "final": TODO},
        "scrap": [
            {"what": row.line.text, "mass": _quantity(row) or TODO, "credit": row.line.number}
            for row in rows
            if row.line.kind == "credit"
        ],
    }


def put_off_entries(made: RunningAccount) -> list[Entry]:
    """Give the work put off: lines deferred, and reports whose repair was."""
    found: list[Entry] = []
    told: set[int] = set()
    for number, out in made.ledger.out(made.on).items():
        if (out.work.name, out.day) not in made.ledger.deferred or id(out) in told:
            continue
        told.add(id(out))
        line = made.ledger.contract.lines[number]
        what = line.item.title if out.work.name == line.item.number else f"{line.item.title}: {line.text}"
        entry = {"what": what, "condition": TODO, "why": out.why, "by": out.until, "item": line.item.number}
        found.append(_kept(entry))
    for one in made.ledger.reports:
        if one.state(made.on) == "deferred":
            report = one.report
            item = one.item.number if one.item is not None else ""
            what = _text(report.repair) if report.repair is not None else TODO
            entry = {"what": what, "where": report.where, "condition": _text(report.found)}
            found.append(_kept({**entry, "why": report.note or TODO, "by": TODO, "item": item}))
    return found


def not_measured(made: RunningAccount) -> list[str]:
    """Name the lines in the contract that are paid as measured and that no paper measures."""
    return [row.line.number for row in made.lines if _is_open(row) and row.final]


def _is_open(row: LineAccount) -> bool:
    line = row.line
    return line.inside and line.kind == "measured" and bool(line.unit) and row.measured is None and not row.left_out


def _condition(made: RunningAccount, one: PricedReport) -> Entry:
    report, state = one.report, one.state(made.on)
    answers = made.ledger.answers(one, made.on)
    by = f" by {report.by}" if report.by is not None else ""
    note = f". {report.note}" if report.note else ""
    entry: Entry = {
        "report": one.name,
        "day": report.day,
        "item": one.item.number if one.item is not None else "",
        "where": report.where,
        "extent": report.extent,
        "found": _text(report.found),
        "cause": _text(report.cause),
        "repair": _text(report.repair),
        "decision": TODO if state == "waiting" else f"{state.capitalize()}{by}{note}",
        "decided": report.decided if state != "waiting" else TODO,
    }
    if state == "accepted":
        entry["done"] = "; ".join(change.order.what for change in answers) or TODO
    return _kept(entry)


def _signed(made: RunningAccount) -> Iterator[Entry]:
    for one in made.ledger.changes:
        if one.signed_by(made.on):
            order = one.order
            yield _kept(
                {
                    "change": one.name,
                    "day": order.signed,
                    "line": one.line.number,
                    "cause": order.cause,
                    "what": order.what,
                    "amount": one.amount,
                    "days": order.days,
                    "condition": order.condition.name if order.condition is not None else "",
                }
            )


def _measured(rows: list[LineAccount], made: RunningAccount) -> Iterator[Entry]:
    days = {one.line.number: one.day for one in made.ledger.measured if one.day <= made.on}
    for row in rows:
        if row.remeasured:
            number = row.line.number
            what = (
                f"{_quantity(row)} measured" if row.measured is not None else "follows the lines that it is a part of"
            )
            yield {
                "change": f"measured-{number}",
                "day": days.get(number, made.on),
                "line": number,
                "cause": "quantity measured",
                "what": what,
                "amount": row.remeasured,
            }


def _left_out(rows: list[LineAccount], made: RunningAccount) -> Iterator[Entry]:
    out = made.ledger.out(made.on)
    for row in rows:
        if row.left_out:
            number = row.line.number
            yield {
                "change": f"left-out-{number}",
                "day": out[number].day,
                "line": number,
                "cause": "work left out",
                "what": out[number].why,
                "amount": row.left_out,
            }


def _price(row: LineAccount, made: RunningAccount) -> Entry:
    quantity: str | Todo = _quantity(row) or _ordered(row, made)
    entry = {
        "line": row.line.number,
        "quantity": TODO if _is_open(row) else quantity,
        "contract": row.line.amount,
        "changes": row.final - row.line.amount,
        "final": row.final,
    }
    return _kept(entry)


def _quantity(row: LineAccount) -> str:
    return f"{_plain(row.measured)} {row.line.unit}" if row.measured is not None else ""


def _ordered(row: LineAccount, made: RunningAccount) -> str:
    """Give what was ordered of a line that the contract does not hold, in its unit."""
    if row.line.inside or not row.line.unit:
        return ""
    prices = [one.price for one in made.ledger.changes if one.line.number == row.line.number and one.signed_by(made.on)]
    whole = sum((one.quantity + one.hours for one in prices), Decimal(0))
    return f"{_plain(whole)} {row.line.unit}" if whole else ""


def _plain(number: Decimal) -> str:
    return format(number.normalize(), "f")


def _text(prose: Prose | None) -> str:
    return prose.text.strip() if prose is not None else ""


def _kept(entry: Entry) -> Entry:
    return {key: value for key, value in entry.items() if value not in ("", 0, None) or key in _FIGURES}


_FIGURES = ("contract", "changes", "final", "amount")
