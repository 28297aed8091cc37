"""The sums of a final account: contract and changes give what was paid, and the change log gives the changes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Protocol

from tenderwright.model.findings import Totals
from tenderwright.notices import Note, Notice, Place
from tenderwright.reading.source import Source


class PaidLine(Protocol):
    """A line of an account."""

    @property
    def line(self) -> str:
        """Give the number of the line."""

    @property
    def contract(self) -> Decimal:
        """Give the amount in the contract."""

    @property
    def changes(self) -> Decimal:
        """Give the amount of all changes."""

    @property
    def final(self) -> Decimal:
        """Give the amount paid in the end."""

    @property
    def here(self) -> Place:
        """Give the place of the line."""


class LoggedChange(Protocol):
    """An entry of the change log."""

    @property
    def change(self) -> str:
        """Give the number of the change."""

    @property
    def line(self) -> str:
        """Give the number of the line that it changes."""

    @property
    def amount(self) -> Decimal:
        """Give its amount."""

    @property
    def here(self) -> Place:
        """Give the place of the change."""


def account_sums(
    source: Source, key: str, lines: Sequence[PaidLine], changes: Sequence[LoggedChange], totals: Totals | None
) -> list[Notice]:
    """Report, to the cent, every sum of an account that does not come out; `key` is that of the lines in the file."""
    return [
        *_twice("line", [(one.line, source.place((key, n, "line")), one.here) for n, one in enumerate(lines)]),
        *_twice(
            "change", [(one.change, source.place(("changes", n, "change")), one.here) for n, one in enumerate(changes)]
        ),
        *_lines(source, key, lines, changes),
        *_log(source, lines, changes),
        *_totals(source, lines, totals),
    ]


def _twice(kind: str, named: list[tuple[str, Place, Place]]) -> Iterator[Notice]:
    first: dict[str, Place] = {}
    for name, at, here in named:
        if name in first:
            notes = (Note("it is first listed here", first[name]),)
            yield Notice("duplicate-name", at, f"{kind} {name} is listed twice in the account", notes)
        first.setdefault(name, here)


def _lines(source: Source, key: str, lines: Sequence[PaidLine], changes: Sequence[LoggedChange]) -> Iterator[Notice]:
    for number, one in enumerate(lines):
        if one.contract + one.changes != one.final:
            message = (
                f"line {one.line}: contract {_cents(one.contract)} and changes {_cents(one.changes)} make "
                f"{_cents(one.contract + one.changes)}, not {_cents(one.final)}"
            )
            yield Notice("sum-differs", source.place((key, number, "final")), message)
        logged = sum((change.amount for change in changes if change.line == one.line), Decimal(0))
        if logged != one.changes:
            message = f"line {one.line}: the change log comes to {_cents(logged)}, not {_cents(one.changes)}"
            hints = ("every amount paid beyond the contract has its entry and its cause under `changes`",)
            yield Notice("sum-differs", source.place((key, number, "changes")), message, hints=hints)


def _log(source: Source, lines: Sequence[PaidLine], changes: Sequence[LoggedChange]) -> Iterator[Notice]:
    known = {one.line for one in lines}
    for number, one in enumerate(changes):
        if one.line not in known:
            message = f"change {one.change} is to line {one.line}, which has no price here"
            yield Notice("sum-differs", source.place(("changes", number, "line")), message)


def _totals(source: Source, lines: Sequence[PaidLine], totals: Totals | None) -> Iterator[Notice]:
    if totals is None:
        return
    for key in ("contract", "changes", "final"):
        added = sum((getattr(one, key) for one in lines), Decimal(0))
        stated = getattr(totals, key)
        if added != stated:
            message = f"the lines add up to {_cents(added)}, not {_cents(stated)}"
            yield Notice("sum-differs", source.place(("totals", key)), message)


def _cents(amount: Decimal) -> str:
    return f"{amount:.2f}"
