"""The owner's estimate: every line priced from quantity and rate, shared services apportioned, totals to the cent."""

from __future__ import annotations

from collections import defaultdict
from decimal import Decimal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.value import Record
from tenderwright.model.choices import dearer
from tenderwright.model.item import Item, Line
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.model.rates import Rate, Rates
from tenderwright.model.tender import Tender
from tenderwright.notices import Notice, Place
from tenderwright.pricing.amount import amount
from tenderwright.pricing.choices import dearer_by
from tenderwright.pricing.money import ZERO, cents, share_out, total
from tenderwright.pricing.percents import percents
from tenderwright.pricing.quantity import LineQuantity, line_quantity
from tenderwright.pricing.quantity_range import quantity_bounds
from tenderwright.pricing.sections import SECTIONS, Section, form_of, section_of
from tenderwright.pricing.unit_price import PriceBook, Step, UnitPrice, price_book, unit_price


class PricedLine(Struct, frozen=True):
    """A line with the owner's price."""

    item: Item
    line: Line
    section: Section
    quantity: LineQuantity
    unit_price: UnitPrice
    amount: Decimal
    """Signed: a credit is negative."""
    low: Decimal
    """For the least quantity that may be needed, at the low rate; the least credit where it is one."""
    high: Decimal
    basis: str
    least: Decimal
    """The least and the greatest quantity that may be needed; the tendered one where none is written."""
    most: Decimal
    of: tuple[str, ...] = ()
    """For a percentage, the lines that it is of."""

    @property
    def number(self) -> str:
        """Give the line number, such as `420.a`."""
        return f"{self.item.number}.{self.line.line}"

    @property
    def rate(self) -> Decimal:
        """Give the likely price of a unit."""
        return self.unit_price.likely

    @property
    def form(self) -> str:
        """Give the form of its price, by which quantity and rate make an amount."""
        return form_of(self.line, self.section)

    def at(self, quantity: Decimal, rate: Decimal) -> Decimal:
        """Give its amount for another quantity and rate."""
        return amount(self.form, quantity, rate)


class PricedItem(Struct, frozen=True):
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


class Estimate(Struct, frozen=True):
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
    """Price every line; a line without a rate is a mistake, and there is then no estimate.

    Nor is there one where a line cannot be priced for a mistake told elsewhere.
    """
    rates = papers.rates
    if rates is None or package.tender is None:
        return None, []
    missing: list[Notice | None] = []
    unpriced: list[str] = []
    lines: list[PricedLine] = []
    of = percents(package)
    book = price_book(papers, rates, package.history, package.tender.currency)
    for item in package.items:
        if item.withdrawn:
            continue
        for line in item.lines:
            priced = _priced(item, line, book, package, package.tender, record)
            if isinstance(priced, PricedLine):
                lines.append(priced)
            elif isinstance(priced, str):
                unpriced.append(priced)
            else:
                missing.append(priced)
    if unpriced:
        missing.append(_without_rate(unpriced, rates))
    if missing:
        return None, [notice for notice in missing if notice is not None]
    by_number = {line.number: line for line in lines}
    lines = [
        _percentage(line, [by_number[one] for one in of[line.number]]) if line.number in of else line for line in lines
    ]
    amounts = {line.number: line.amount for line in lines}
    totals = {section.code: total([line.amount for line in lines if line.section is section]) for section in SECTIONS}
    counted = [section.code for section in SECTIONS if section.counted(package.tender.award.components)]
    base = total([totals[section.code] for section in SECTIONS if section.in_base])
    contingency = rates.contingency
    return Estimate(
        lines=tuple(lines),
        items=tuple(_apportioned(lines, rates)),
        section_totals=totals,
        base=base,
        evaluated=total([*(totals[code] for code in counted), dearer_by(amounts, dearer(package))]),
        shared_rule=rates.shared.rule if rates.shared else "none",
        contingency=cents(base * Decimal(repr(contingency.share.si))) if contingency else ZERO,
        contingency_why=contingency.why if contingency else "",
        base_month=rates.base_month,
    ), []


def _without_rate(numbers: list[str], rates: Rates) -> Notice:
    """Tell at once of all lines that have no rate."""
    message = f"line {numbers[0]} has no rate"
    if len(numbers) > 1:
        message = f"{len(numbers)} lines have no rate: {', '.join(numbers)}"
    each = "" if len(numbers) == 1 else ", and so each of them"
    hint = f"add `{numbers[0]}: {{rate: …}}` under `lines:`{each}"
    return Notice("unpriced-line", Place("owner/rates.yaml", rates.here.line), message, hints=(hint,))


def _priced(
    item: Item, line: Line, book: PriceBook, package: Package, tender: Tender, record: Record
) -> PricedLine | Notice | str | None:
    """Price a line; else give a mistake, the number of a line without a rate, or None for a mistake told elsewhere."""
    section = section_of(item, line, tender)
    quantity = line_quantity(line, record)
    if quantity is None:
        return None
    number = f"{item.number}.{line.line}"
    if line.price == "fixed":
        fixed = cents(line.amount or ZERO)
        price = UnitPrice(fixed, fixed, fixed, 1, (Step("the owner's fixed sum", fixed),))
        one = quantity.number
        return PricedLine(item, line, section, quantity, price, fixed, fixed, fixed, "the owner's fixed sum", one, one)
    rate = book.rates.of(number)
    if rate is None and number in book.waiting:
        return None
    if rate is None:
        return number
    found = unit_price(number, rate, quantity, book)
    if not isinstance(found, UnitPrice):
        return found
    bounds = quantity_bounds(number, rate, quantity)
    if isinstance(bounds, Notice):
        return bounds
    return _with_price(item, line, section, quantity, rate, found, bounds)


def _with_price(
    item: Item,
    line: Line,
    section: Section,
    quantity: LineQuantity,
    rate: Rate,
    found: UnitPrice,
    bounds: tuple[Decimal, Decimal],
) -> PricedLine:
    form = form_of(line, section)
    least, most = bounds
    low, high = amount(form, least, found.low), amount(form, most, found.high)
    likely = amount(form, quantity.number, found.likely)
    return PricedLine(item, line, section, quantity, found, likely, low, high, rate.basis, least, most)


def _percentage(line: PricedLine, of: list[PricedLine]) -> PricedLine:
    """Price a percentage of what other lines come to, low of their low amounts and high of their high ones."""
    price, whole = line.unit_price, total([one.amount for one in of])
    return replace(
        line,
        quantity=LineQuantity(whole, "", line.quantity.basis),
        amount=line.at(whole, price.likely),
        low=line.at(total([one.low for one in of]), price.low),
        high=line.at(total([one.high for one in of]), price.high),
        least=whole,
        most=whole,
        of=tuple(one.number for one in of),
    )


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
