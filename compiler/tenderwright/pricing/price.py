"""The owner's estimate: every line priced from quantity and rate, shared services apportioned, totals to the cent."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.calculations.value import Record
from tenderwright.model.item import Item, Line
from tenderwright.model.owner import OwnerPapers, Rate, Rates
from tenderwright.model.package import Package
from tenderwright.notices import Notice, Place
from tenderwright.pricing.amount import amount
from tenderwright.pricing.money import ZERO, cents, share_out, total
from tenderwright.pricing.quantity import LineQuantity, line_quantity
from tenderwright.pricing.sections import SECTIONS, Section, section_of


@dataclass(frozen=True)
class PricedLine:
    """A line with the owner's price."""

    item: Item
    line: Line
    section: Section
    quantity: LineQuantity
    rate: Decimal
    amount: Decimal
    """Signed: a credit is negative."""
    low: Decimal
    high: Decimal
    basis: str

    @property
    def number(self) -> str:
        """Give the line number, such as `420.a`."""
        return f"{self.item.number}.{self.line.line}"


@dataclass(frozen=True)
class PricedItem:
    """An item's price: its own lines, and its part of the shared services."""

    item: Item
    direct: Decimal
    shared: Decimal
    is_shared: bool
    """Whether it is itself a shared service, whose cost the other items carry."""

    @property
    def loaded(self) -> Decimal:
        """Give its own lines with its part of the shared services."""
        return ZERO if self.is_shared else self.direct + self.shared


@dataclass(frozen=True)
class Estimate:
    """The owner's estimate of the whole tender."""

    lines: tuple[PricedLine, ...]
    items: tuple[PricedItem, ...]
    section_totals: dict[str, Decimal]
    base: Decimal
    evaluated: Decimal
    shared_rule: str
    contingency: Decimal
    contingency_why: str
    base_month: str

    @property
    def everything(self) -> Decimal:
        """Give the sum of all lines, options and provisional sums too."""
        return total([line.amount for line in self.lines])


def price(papers: OwnerPapers, package: Package, record: Record) -> tuple[Estimate | None, list[Notice]]:
    """Price every line; a line without a rate is a mistake, and there is then no estimate."""
    rates = papers.rates
    if rates is None or package.tender is None:
        return None, []
    notices: list[Notice] = []
    lines: list[PricedLine] = []
    for item in package.items:
        if item.withdrawn:
            continue
        for line in item.lines:
            priced = _priced(item, line, rates, package, record)
            if isinstance(priced, PricedLine):
                lines.append(priced)
            elif priced is not None:
                notices.append(priced)
    if notices:
        return None, notices
    totals = {section.code: total([line.amount for line in lines if line.section is section]) for section in SECTIONS}
    options = package.tender.award.options_counted
    counted = [s.code for s in SECTIONS if s.in_evaluated and (options or s.code != "F")]
    base = total([totals[section.code] for section in SECTIONS if section.in_base])
    contingency = rates.contingency
    return Estimate(
        lines=tuple(lines),
        items=tuple(_apportioned(lines, rates)),
        section_totals=totals,
        base=base,
        evaluated=total([totals[code] for code in counted]),
        shared_rule=rates.shared.rule if rates.shared else "none",
        contingency=cents(base * Decimal(repr(contingency.share.si))) if contingency else ZERO,
        contingency_why=contingency.why if contingency else "",
        base_month=rates.base_month,
    ), []


def _priced(item: Item, line: Line, rates: Rates, package: Package, record: Record) -> PricedLine | Notice | None:
    assert package.tender is not None
    section = section_of(item, line, package.tender)
    quantity = line_quantity(line, record)
    if quantity is None:
        return None
    number = f"{item.number}.{line.line}"
    if line.price == "fixed":
        fixed = cents(line.amount or ZERO)
        return PricedLine(item, line, section, quantity, fixed, fixed, fixed, fixed, "the owner's fixed sum")
    rate = rates.lines.get(number)
    if rate is None:
        return Notice(
            "unpriced-line",
            Place("owner/rates.yaml", rates.here.line),
            f"line {number} has no rate",
            hints=(f"add `{number}: {{rate: …}}` under `lines:`",),
        )
    return _with_rate(item, line, section, quantity, rate)


def _with_rate(item: Item, line: Line, section: Section, quantity: LineQuantity, rate: Rate) -> PricedLine:
    form = "credit" if section.code == "G" else line.price

    def at(each: Decimal) -> Decimal:
        return amount(form, quantity.number, each)

    low = rate.rate if rate.low is None else rate.low
    high = rate.rate if rate.high is None else rate.high
    return PricedLine(item, line, section, quantity, rate.rate, at(rate.rate), at(low), at(high), rate.basis)


def _apportioned(lines: list[PricedLine], rates: Rates) -> list[PricedItem]:
    """Spread the cost of shared items over the others by the owner's rule, to the cent.

    Equally where the rule gives every item nothing to go by; not at all where there is no other item.
    """
    direct: dict[int, Decimal] = defaultdict(lambda: ZERO)
    items: dict[int, Item] = {}
    for line in lines:
        items[line.item.item] = line.item
        direct[line.item.item] += line.amount
    named = {reference.name for reference in rates.shared.items} if rates.shared else set()
    shared = {number for number, item in items.items() if item.number in named}
    bearing = [number for number in items if number not in shared]
    if not bearing:
        shared, bearing = set(), list(items)
    weights = [_weight(number, direct[number], rates) for number in bearing]
    if sum(weights) <= 0:
        weights = [Decimal(1)] * len(bearing)
    pool = total([direct[number] for number in items if number in shared])
    parts = share_out(pool, weights) if pool else [ZERO] * len(bearing)
    share = dict(zip(bearing, parts, strict=True))
    return [PricedItem(items[n], direct[n], share.get(n, ZERO), n in shared) for n in sorted(items)]


def _weight(number: int, direct: Decimal, rates: Rates) -> Decimal:
    rule = rates.shared.rule if rates.shared else ""
    if rule == "by dock days":
        return Decimal(repr(float(rates.dock_days.get(str(number), 0.0))))
    if rule == "equally":
        return Decimal(1)
    return max(direct, ZERO)
