"""The final account of a docking: estimate, bid, contract, changes and what was paid, by line, item, kind and cause."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from decimal import Decimal

from msgspec import Struct

from tenderwright.calculations.value import Record
from tenderwright.model.findings import Findings
from tenderwright.model.item import Item, Line
from tenderwright.model.owner import Bid
from tenderwright.model.package import Package
from tenderwright.pricing.amount import DISCOUNT, PERCENT, amount
from tenderwright.pricing.money import ZERO, cents, total
from tenderwright.pricing.percents import percents
from tenderwright.pricing.price import Estimate
from tenderwright.pricing.quantity import line_quantity


class AccountRow(Struct, frozen=True):
    """What a line, or several of them together, came to; what nobody priced is None."""

    name: str
    title: str
    kind: str
    awarded: Decimal
    changes: Decimal
    final: Decimal
    estimate: Decimal | None = None
    bid: Decimal | None = None

    @property
    def growth(self) -> Decimal | None:
        """Give the growth as a share of what was awarded; None where nothing was."""
        return (self.final - self.awarded) / abs(self.awarded) if self.awarded else None


class CauseRow(Struct, frozen=True):
    """What the changes of one cause came to."""

    cause: str
    changes: int
    amount: Decimal
    days: int


class FinalAccount(Struct, frozen=True):
    """The final account of a docking."""

    currency: str
    lines: tuple[AccountRow, ...]
    items: tuple[AccountRow, ...]
    kinds: tuple[AccountRow, ...]
    causes: tuple[CauseRow, ...]
    whole: AccountRow


def final_account(
    findings: Findings, package: Package, record: Record, estimate: Estimate | None, bid: Bid | None
) -> FinalAccount | None:
    """Make the account from findings whose sums were checked; None where they hold no prices.

    Growth is (paid - awarded) / |awarded|. Amounts stand as written, to the cent; those of the estimate and of the bid
    are of the tendered quantities. A sum of estimates or bids is None unless every line in it has one.
    """
    if not findings.prices or package.tender is None:
        return None
    of = percents(package)
    estimated = {line.number: line.amount for line in estimate.lines} if estimate else {}
    rows: list[AccountRow] = []
    for paid in findings.prices:
        item, line = line_named(package, paid.line)
        rows.append(
            AccountRow(
                paid.line,
                f"{item.title}: {line.text}",
                item.kind_of(line),
                cents(paid.contract),
                cents(paid.changes),
                cents(paid.final),
                estimated.get(paid.line),
                _bid(paid.line, package, record, bid, of),
            )
        )
    titles = package.item_by_name
    return FinalAccount(
        currency=findings.currency or package.tender.currency,
        lines=tuple(rows),
        items=_grouped(rows, lambda row: row.name.split(".")[0], lambda name: titles[name].title),
        kinds=_grouped(rows, lambda row: row.kind, lambda kind: kind),
        causes=tuple(_causes(findings)),
        whole=_sum("", "All lines", "", rows),
    )


def line_named(package: Package, number: str) -> tuple[Item, Line]:
    """Find a line of the tender by its number, such as `420.a`; raises KeyError."""
    name, _, letter = number.partition(".")
    item = package.item_by_name[name]
    for line in item.lines:
        if line.line == letter:
            return item, line
    raise KeyError(number)


def _bid(
    number: str, package: Package, record: Record, bid: Bid | None, of: Mapping[str, Sequence[str]]
) -> Decimal | None:
    """Give the amount of a line as bid: the rate governs, on the tendered quantity; a line left out has none."""
    item, line = line_named(package, number)
    answer = bid.lines.get(number) if bid is not None else None
    if answer is None:
        return None
    if answer.rate is None:
        return ZERO if answer.status in ("included", "zero") else answer.extension
    quantity = line_quantity(line, record)
    if number in of:
        whole = total([_bid(one, package, record, bid, of) or ZERO for one in of[number]])
        return amount(DISCOUNT if item.kind_of(line) == "credit" else PERCENT, whole, answer.rate)
    form = "credit" if item.kind_of(line) == "credit" else line.price
    if form == "markup" and line.amount is not None:
        return amount(form, line.amount, answer.rate)
    return amount(form, quantity.number, answer.rate) if quantity is not None else answer.extension


def _grouped(
    rows: Sequence[AccountRow], key: Callable[[AccountRow], str], title: Callable[[str], str]
) -> tuple[AccountRow, ...]:
    names = dict.fromkeys(sorted(key(row) for row in rows))
    return tuple(_sum(name, title(name), "", [row for row in rows if key(row) == name]) for name in names)


def _sum(name: str, title: str, kind: str, rows: Sequence[AccountRow]) -> AccountRow:
    return AccountRow(
        name,
        title,
        kind,
        total([row.awarded for row in rows]),
        total([row.changes for row in rows]),
        total([row.final for row in rows]),
        _whole(row.estimate for row in rows),
        _whole(row.bid for row in rows),
    )


def _whole(amounts: Iterable[Decimal | None]) -> Decimal | None:
    known = list(amounts)
    found = [one for one in known if one is not None]
    return total(found) if len(found) == len(known) else None


def _causes(findings: Findings) -> list[CauseRow]:
    names = dict.fromkeys(sorted(change.cause for change in findings.changes))
    rows = []
    for name in names:
        changes = [change for change in findings.changes if change.cause == name]
        days = sum(change.days for change in changes)
        rows.append(CauseRow(name, len(changes), total([cents(change.amount) for change in changes]), days))
    return sorted(rows, key=lambda row: (-abs(row.amount), row.cause))
