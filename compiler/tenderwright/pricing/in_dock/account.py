"""The running account: what the contract comes to on a day, with what is ordered, and with what still waits."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from decimal import Decimal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.model.in_dock import WAITING, LeftOut
from tenderwright.pricing.final_account import CauseRow
from tenderwright.pricing.in_dock.contract import ContractLine
from tenderwright.pricing.in_dock.days_beyond import DaysBeyond, days_beyond
from tenderwright.pricing.in_dock.ledger import Ledger, PricedChange, Remeasure
from tenderwright.pricing.in_dock.reports import PricedReport
from tenderwright.pricing.money import ZERO, cents, total


class LineAccount(Struct, frozen=True):
    """What one line comes to on a day."""

    line: ContractLine
    left_out: Decimal
    """What leaving it out takes off the contract, below nothing, with what is paid for it all the same."""
    changes: Decimal
    """Signed changes to it."""
    remeasured: Decimal
    """What its measured quantity adds to contract and changes, or takes off."""
    measured: Decimal | None = None
    """All that was done by it, in its unit."""

    @property
    def final(self) -> Decimal:
        """Give what it comes to."""
        return total([self.line.amount, self.left_out, self.changes, self.remeasured])


class RunningAccount(Struct, frozen=True):
    """How the money of a docking stands on a day."""

    on: date
    ledger: Ledger
    lines: tuple[LineAccount, ...]
    causes: tuple[CauseRow, ...]
    """Signed changes by cause, the greatest first."""
    unsigned: tuple[PricedChange, ...]
    """Changes that wait for a signature."""
    waiting: tuple[PricedReport, ...]
    """Reports that wait for an answer, or were accepted and have no change yet; in order of the hour for the answer."""
    further: DaysBeyond | None = None
    """Days that changes and reports bring and nobody has ordered."""
    short: DaysBeyond | None = None
    """Days that the work is short of beside those."""

    @property
    def contract(self) -> Decimal:
        """Give the contract as awarded."""
        return self.ledger.contract.amount

    @property
    def changes(self) -> Decimal:
        """Give the signed changes."""
        return total([one.changes for one in self.lines])

    @property
    def left_out(self) -> Decimal:
        """Give what left out work takes off, below nothing."""
        return total([one.left_out for one in self.lines])

    @property
    def remeasured(self) -> Decimal:
        """Give what measured quantities add or take off."""
        return total([one.remeasured for one in self.lines])

    @property
    def ordered(self) -> Decimal:
        """Give what is ordered so far: contract + signed changes + measured quantities - what is left out."""
        return total([self.ledger.contract.beyond, *(one.final for one in self.lines)])

    @property
    def to_be_signed(self) -> Decimal:
        """Give the changes that wait for a signature."""
        return total([one.amount for one in self.unsigned])

    @property
    def to_be_answered(self) -> Decimal:
        """Give the reports that wait, at their price; one without a price adds nothing and is counted in `unpriced`."""
        return total([one.price.amount for one in self.waiting if one.price is not None])

    @property
    def unpriced(self) -> int:
        """Count the reports that wait and have no price yet."""
        return sum(1 for one in self.waiting if one.price is None)

    @property
    def forecast(self) -> Decimal:
        """Give the forecast: all that is ordered, all that waits as if it were accepted, and the days beyond."""
        return total([self.ordered, self.to_be_signed, self.to_be_answered, *(one.amount for one in self.beyond)])

    @property
    def beyond(self) -> tuple[DaysBeyond, ...]:
        """Give the days beyond those tendered that are not ordered: those brought, and those short."""
        return tuple(one for one in (self.further, self.short) if one is not None)

    @property
    def contingency_left(self) -> Decimal:
        """Give what would be left of the contingency; below nothing where the forecast goes beyond it."""
        return self.ledger.contract.contingency - (self.forecast - self.contract)

    @property
    def by_item(self) -> Mapping[str, Decimal]:
        """Share the forecast out by item; reports that name none stand under an empty name."""
        found: dict[str, Decimal] = {}

        def add(item: str, amount: Decimal) -> None:
            found[item] = found.get(item, ZERO) + amount

        add("", self.ledger.contract.beyond)
        for row in self.lines:
            add(row.line.item.number, total([row.line.amount, row.left_out, row.remeasured]))
        for change in self.ledger.changes:
            if change.order.day <= self.on:
                add(change.item.number, change.amount)
        for report in self.waiting:
            if report.price is not None:
                add(report.item.number if report.item is not None else "", report.price.amount)
        for beyond in self.beyond:
            for line, (_, amount) in beyond.lines.items():
                add(self.ledger.contract.lines[line].item.number, amount)
        return found


def account(ledger: Ledger, on: date) -> RunningAccount:
    """Give the running account of a day: only what was written, signed, measured or decided by then counts."""
    changes = [one for one in ledger.changes if one.order.day <= on]
    signed = [one for one in changes if one.signed_by(on)]
    unsigned = tuple(one for one in changes if not one.signed_by(on))
    answered = {one.order.condition.name for one in changes if one.order.condition is not None}
    waiting = [one for one in ledger.reports if one.state(on) in (WAITING, "accepted") and one.name not in answered]
    waiting.sort(key=lambda one: (one.due is None, str(one.due), one.report.day, one.name))
    out = ledger.out(on)
    measured = {one.line.number: one for one in ledger.measured if one.day <= on}  # the latest of each line
    lines = {
        number: _line(line, [one for one in signed if one.line.number == number], measured.get(number), out)
        for number, line in ledger.contract.lines.items()
    }
    for number, row in lines.items():
        if row.line.follows and number not in out:
            lines[number] = _percentage(row, total([lines[one].final for one in row.line.corrected.line.of]))
    made = RunningAccount(
        on=on,
        ledger=ledger,
        lines=tuple(lines.values()),
        causes=tuple(_causes(signed)),
        unsigned=unsigned,
        waiting=tuple(waiting),
    )
    return with_days_beyond(made, 0)


def with_days_beyond(made: RunningAccount, short: int) -> RunningAccount:
    """Price the days beyond those tendered, and those that the work is short of."""
    changes = [one for one in made.ledger.changes if one.order.day <= made.on]
    brought = sum(one.order.days for one in changes) + sum(one.report.days for one in made.waiting)
    contract = made.ledger.contract
    rows = {row.line.number: row for row in made.lines}
    covered = {
        number: _covered(rows[number], changes, made.waiting)
        for number in (contract.days_line, *contract.day_lines)
        if number in rows
    }
    further, late = days_beyond(contract, brought, short, covered)
    return replace(made, further=further, short=late)


def _line(
    line: ContractLine, changes: Sequence[PricedChange], measured: Remeasure | None, out: Mapping[str, LeftOut]
) -> LineAccount:
    """Give the account of a line.

    A measured quantity is all that was done by the line: it stands for the contract and for the changes by its rate
    that were signed until it was measured, and what they come to otherwise is the difference.
    """
    left_out, remeasured = ZERO, ZERO
    if line.number in out:
        left_out = -line.amount
    if measured is not None:
        counted = [one for one in changes if _by_rate(one) and (one.order.signed or one.order.day) <= measured.day]
        stands = total([line.amount, left_out, *(one.amount for one in counted)])
        remeasured = line.at(measured.quantity) - stands
    paid = out[line.number].paid if line.number in out else None
    return LineAccount(
        line=line,
        left_out=left_out + (cents(paid) if paid is not None and _first_of(line, out) else ZERO),
        changes=total([one.amount for one in changes]),
        remeasured=remeasured,
        measured=measured.quantity if measured is not None else None,
    )


def _percentage(row: LineAccount, whole: Decimal) -> LineAccount:
    """Give the account of a percentage: it follows what its lines come to in the end, changes to itself on top."""
    return replace(row, remeasured=row.line.more(whole) - row.line.amount)


def _by_rate(change: PricedChange) -> bool:
    return change.price.way in ("unit rate", "hours pool") and not change.price.materials


def _first_of(line: ContractLine, out: Mapping[str, LeftOut]) -> bool:
    """Tell whether a line is the first of those left out together, which bears what is paid for them all the same."""
    event = out[line.number]
    return next(number for number, one in out.items() if one is event) == line.number


def _causes(signed: Iterable[PricedChange]) -> list[CauseRow]:
    by_cause: dict[str, list[PricedChange]] = {}
    for change in signed:
        by_cause.setdefault(change.order.cause, []).append(change)
    rows = [
        CauseRow(cause, len(found), total([one.amount for one in found]), sum(one.order.days for one in found))
        for cause, found in by_cause.items()
    ]
    return sorted(rows, key=lambda row: (-abs(row.amount), row.cause))


def _covered(row: LineAccount, changes: Sequence[PricedChange], waiting: Sequence[PricedReport]) -> Decimal:
    """Give the days beyond those in the contract that a line pays already: as ordered and asked, or as measured."""
    number = row.line.number
    paid = [one.price for one in changes if one.line.number == number]
    paid += [
        one.price
        for one in waiting
        if one.price is not None and one.report.line is not None and one.report.line.name == number
    ]
    ordered = sum((one.quantity for one in paid), Decimal(0))
    if row.measured is None:
        return ordered
    return max(ordered, row.measured - (row.line.tendered if row.line.inside else Decimal(0)))
