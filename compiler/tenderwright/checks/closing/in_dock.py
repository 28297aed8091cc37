"""The final account says what the papers from the dock say: the same bid, changes, hours and lines, to the cent."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.model.findings import Change
from tenderwright.notices import Notice, Place
from tenderwright.pricing.in_dock.account import RunningAccount, account
from tenderwright.pricing.in_dock.ledger import PricedChange
from tenderwright.pricing.in_dock.pool import pool_balances
from tenderwright.pricing.money import ZERO, cents, written

_BY_MEASURE = ("quantity measured", "work left out")
"""Causes of changes that the papers from the dock hold as measures and as work left out, without a number."""


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report each difference between the findings and the running account; nothing where either has no account."""
    findings, ledger = context.findings, context.ledger
    if ledger is None or ledger.last is None or not findings.prices:
        return
    award = ledger.contract.award
    if findings.bid and findings.bid != award.bid.name:
        yield _differs(
            context.at("bid"), f"the findings rest on bid `{findings.bid}`, and the award is of `{award.bid}`"
        )
    made = account(ledger, max(ledger.last, findings.dates.departed or findings.dates.undocked))
    changes = list(_changes(context, made))
    yield from (notice for _, notice in changes)
    yield from _lines(context, made, {line for line, _ in changes})
    yield from _hours(context, made)


def _differs(at: Place, message: str) -> Notice:
    hints = ("mend the findings or the papers under owner/in-dock/, whichever is wrong",)
    return Notice("account-differs", at, message, hints=hints)


def _changes(context: ClosingContext, made: RunningAccount) -> Iterator[tuple[str, Notice]]:
    """Yield what differs between the two logs of changes, each with the line that it bears on."""
    told = {one.name: one for one in made.ledger.changes if one.signed_by(made.on)}
    named = {change.change for change in context.findings.changes}
    for number, change in enumerate(context.findings.changes):
        own = told.get(change.change)
        at = context.at("changes", number, "change")
        if own is not None:
            why = _unlike(change, own)
            if why:
                yield change.line, _differs(at, f"change {change.change} {why} in the papers from the dock")
        elif change.cause not in _BY_MEASURE:
            message = f"change {change.change} is not signed in the papers from the dock"
            yield change.line, _differs(at, message)
    for name, one in told.items():
        if name not in named:
            message = f"change {name} of {written(one.amount)}, signed in dock, is not in the findings"
            yield one.line.number, _differs(context.source.key_place(("changes",)), message)


def _unlike(change: Change, own: PricedChange) -> str:
    if cents(change.amount) != own.amount:
        return f"comes to {written(cents(change.amount))} here, and to {written(own.amount)}"
    if change.line != own.line.number:
        return f"is to line {change.line} here, and to line {own.line.number}"
    if change.cause != own.order.cause:
        return f"has the cause {change.cause} here, and {own.order.cause}"
    return ""


def _lines(context: ClosingContext, made: RunningAccount, told: set[str]) -> Iterator[Notice]:
    """Yield lines that come to something else, where no change to them is told already."""
    paid = {one.line: cents(one.final) for one in context.findings.prices}
    running = {row.line.number: row.final for row in made.lines}
    for number, one in enumerate(context.findings.prices):
        here = running.get(one.line)
        if here is not None and here != paid[one.line] and one.line not in told:
            final = written(paid[one.line])
            message = f"line {one.line} comes to {final}, and by the papers from the dock to {written(here)}"
            yield _differs(context.at("prices", number, "final"), message)
    for line, amount in running.items():
        if amount != ZERO and line not in paid and line not in told:
            message = f"line {line} has no price, and by the papers from the dock it comes to {written(amount)}"
            yield _differs(context.source.key_place(("prices",)), message)


def _hours(context: ClosingContext, made: RunningAccount) -> Iterator[Notice]:
    ordered = {one.line.number: one.ordered for one in pool_balances(made) if one.line.form == "hours"}
    for number, used in enumerate(context.findings.hours_used):
        hours = used.hours.decimal if used.hours.unit == "h" else Decimal(repr(used.hours.si / 3600.0))
        if used.line in ordered and hours != ordered[used.line]:
            message = f"{used.hours} of line {used.line} are used, and {ordered[used.line]:f} h were ordered in dock"
            yield _differs(context.at("hours_used", number, "hours"), message)
