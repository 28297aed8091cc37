"""The balance of the hours pool: hours tendered, ordered, asked for, and left."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from msgspec import Struct

from tenderwright.pricing.in_dock.account import RunningAccount
from tenderwright.pricing.in_dock.contract import ContractLine
from tenderwright.pricing.in_dock.ledger import Ledger, PricedChange
from tenderwright.pricing.in_dock.ordered import Price

NONE = Decimal(0)


class PoolBalance(Struct, frozen=True):
    """How one line of the pool stands; for materials, money at cost against the allowance."""

    line: ContractLine
    tendered: Decimal
    ordered: Decimal
    """In signed changes."""
    asked: Decimal
    """In changes that wait for a signature and reports that wait."""

    @property
    def left(self) -> Decimal:
        """Give what is left of what was tendered; below nothing where it is overdrawn."""
        return self.tendered - self.ordered


def pool_balances(made: RunningAccount) -> tuple[PoolBalance, ...]:
    """Give the balance of each line of the pool on the day of an account, the materials last."""
    contract = made.ledger.contract
    signed = [one for one in made.ledger.changes if one.signed_by(made.on)]
    found = []
    for number in (*contract.pool, *([contract.markup] if contract.markup else [])):
        line = contract.lines[number]
        ordered = sum((_drawn(one.price, one.line.number, line) for one in signed), NONE)
        asked = sum((_drawn(one.price, one.line.number, line) for one in made.unsigned), NONE)
        for report in made.waiting:
            if report.price is not None and report.report.line is not None:
                asked += _drawn(report.price, report.report.line.name, line)
        found.append(PoolBalance(line, line.tendered, ordered, asked))
    return tuple(found)


def overdrawn(ledger: Ledger) -> Iterator[tuple[PricedChange, ContractLine, Decimal]]:
    """Yield the change by which each line of the pool is overdrawn, in order of days, and what is drawn then."""
    contract = ledger.contract
    for number in (*contract.pool, *([contract.markup] if contract.markup else [])):
        line, drawn = contract.lines[number], NONE
        for change in ledger.changes:
            drawn += _drawn(change.price, change.line.number, line)
            if drawn > line.tendered:
                yield change, line, drawn
                break


def _drawn(price: Price, number: str, line: ContractLine) -> Decimal:
    """Give what a price draws of a line of the pool: hours of its own line, materials of that of the mark-up."""
    if price.way != "hours pool":
        return NONE
    if line.form == "markup":
        return price.materials
    return price.hours if number == line.number else NONE
