"""Days on blocks beyond those tendered, priced by every line that is paid by the day."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from msgspec import Struct

from tenderwright.pricing.in_dock.contract import Contract
from tenderwright.pricing.money import total

NONE = Decimal(0)


class DaysBeyond(Struct, frozen=True):
    """Days beyond those tendered that nobody has ordered, with what they come to by line."""

    days: Decimal
    lines: Mapping[str, tuple[Decimal, Decimal]]
    """Days and amount by line, that for further days first; without it where the contract has no rate for one."""

    @property
    def amount(self) -> Decimal:
        """Give what they come to."""
        return total([amount for _, amount in self.lines.values()])


def days_beyond(
    contract: Contract, brought: int, short: int, covered: Mapping[str, Decimal]
) -> tuple[DaysBeyond | None, DaysBeyond | None]:
    """Price the days that changes and reports bring, and after them those that the work is short of.

    days of a line = those brought or short, less those it covers by orders and measures already; amount = rate x days,
    to the cent, by the line for further days and each other line that is paid by the day of dock or yard.
    """
    first, second = Decimal(brought), Decimal(short)
    return _priced(contract, NONE, first, covered), _priced(contract, first, second, covered)


def _priced(contract: Contract, before: Decimal, days: Decimal, covered: Mapping[str, Decimal]) -> DaysBeyond | None:
    """Price so many days that come after others; what a line covers is used up by those before first."""
    number = contract.days_line
    open_ = {line: _open(before, days, covered.get(line, NONE)) for line in (number, *contract.day_lines)}
    if open_[number] <= 0:
        return None
    by_line = {}
    for line, left in open_.items():
        if left > 0 and line in contract.lines and contract.lines[line].by_the_day:
            by_line[line] = (left, contract.lines[line].more(left))
    return DaysBeyond(open_[number], by_line)


def _open(before: Decimal, days: Decimal, covered: Decimal) -> Decimal:
    return max(days - max(covered - before, NONE), NONE)
