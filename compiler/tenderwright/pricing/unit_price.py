"""The owner's price for a unit of a line: stated, paid before and escalated, or built from man-hours; step by step."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from functools import reduce

from msgspec import Struct

from tenderwright.calculations.cost.classes import EVIDENCE_CLASSES, class_factors
from tenderwright.calculations.cost.escalation import index_ratio
from tenderwright.model.closing import Closing, Paid
from tenderwright.model.history import EarlierDocking
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.rates import EarlierPrice, PriceIndex, Rate, Rates
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean
from tenderwright.pricing.money import cents, written
from tenderwright.pricing.quantity import LineQuantity
from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity
from tenderwright.quantities.units import unit

CLASS_OF_BASIS = {"assumed": 5, "surveyed": 4, "calculated": 3, "drawing": 3, "owner's": 3}
"""Where no evidence is named, the class of an estimate from how its quantity is known (common practice, no source)."""


class Step(Struct, frozen=True):
    """One step by which a price is come by: what is done, and what stands after it."""

    what: str
    gives: Decimal


class UnitPrice(Struct, frozen=True):
    """The price of a unit of a line, with its range, the class of the estimate and every step to it."""

    likely: Decimal
    low: Decimal
    high: Decimal
    estimate_class: int
    steps: tuple[Step, ...]


class _Cannot(Exception):
    """A price that cannot be had; carries its notice, or none where it has been told already."""

    def __init__(self, notice: Notice | None) -> None:
        super().__init__(notice.message if notice else "")
        self.notice = notice


class PriceBook(Struct, frozen=True):
    """What unit prices are made from."""

    rates: Rates
    indices: Mapping[str, PriceIndex]
    dockings: Mapping[str, EarlierDocking]
    closings: Mapping[str, Closing]
    """What each docking cost, by the docking."""
    currency: str
    indices_broken: bool = False
    """Whether the indices have mistakes, which are told."""
    closings_broken: bool = False
    """Whether what a docking cost has mistakes, which are told."""
    waiting: frozenset[str] = frozenset()
    """Lines whose rate is still `todo`."""


def price_book(papers: OwnerPapers, rates: Rates, history: tuple[EarlierDocking, ...], currency: str) -> PriceBook:
    """Gather what unit prices are made from."""
    indices = papers.indices.indices if papers.indices else ()
    return PriceBook(
        rates,
        {one.index: one for one in indices},
        {docking.docking: docking for docking in history},
        {one.docking.name: one for one in papers.closings.values()},
        currency,
        papers.broken.among("owner/indices.yaml"),
        papers.broken.among("owner/closing/"),
        frozenset(name for kind, name in papers.broken.waiting if kind == "rate"),
    )


def unit_price(number: str, rate: Rate, quantity: LineQuantity, book: PriceBook) -> UnitPrice | Notice | None:
    """Find the price of a unit of a line; None where it was told already why there is none.

    likely = (stated rate | amount paid / quantity paid * I_now / I_then | hours * labour + materials) * product of the
    factors, to the cent. Low and high are multiplied likewise; left out, they follow from the bounds of the class.
    Factors are taken as multiplying (common practice, no source).
    """
    ways = [way for way in (rate.rate, rate.history, rate.hours) if way is not None]
    if len(ways) != 1:
        said = "no rate" if not ways else "more than one of `rate`, `history` and `hours`"
        hint = "write one of `rate:`, `history:` and `hours:`"
        return Notice("unpriced-line", rate.here, f"line {number} has {said}", hints=(hint,))
    try:
        return _ranged(number, rate, quantity, _first(number, rate, quantity, book))
    except _Cannot as cannot:
        return cannot.notice


def _first(number: str, rate: Rate, quantity: LineQuantity, book: PriceBook) -> list[Step]:
    if rate.history is not None:
        return _paid_before(number, rate.history, quantity, book)
    if rate.hours is not None:
        return _from_hours(number, rate, rate.hours, book)
    assert rate.rate is not None
    return [Step("stated", rate.rate)]


def _ranged(number: str, rate: Rate, quantity: LineQuantity, steps: list[Step]) -> UnitPrice:
    exact = rate.rate is not None and not rate.factors
    for factor in rate.factors:
        steps.append(Step(f"× {factor.factor:g}, {factor.why}", steps[-1].gives * Decimal(repr(factor.factor))))
    likely = steps[-1].gives if exact else cents(steps[-1].gives)
    product = reduce(lambda a, b: a * b, (Decimal(repr(one.factor)) for one in rate.factors), Decimal(1))
    found = EVIDENCE_CLASSES.get(rate.evidence) or CLASS_OF_BASIS.get(quantity.basis, 5)
    below, above = (Decimal(repr(bound)) for bound in class_factors(found))
    low = cents(likely * below) if rate.low is None else rate.low * product
    high = cents(likely * above) if rate.high is None else rate.high * product
    if not low <= likely <= high:
        message = f"line {number}: low {low:.2f}, likely {likely:.2f} and high {high:.2f} do not rise in that order"
        raise _Cannot(Notice("range-order", rate.here, message))
    return UnitPrice(likely, low, high, found, tuple(steps))


def _from_hours(number: str, rate: Rate, needed: Quantity, book: PriceBook) -> list[Step]:
    labour = book.rates.labour.get(rate.labour)
    if labour is None:
        hints = did_you_mean(rate.labour, book.rates.labour) or ("list it under `labour:`",)
        named = f"labour `{rate.labour}`" if rate.labour else "the labour of its hours"
        raise _Cannot(Notice("dead-reference", rate.here, f"line {number}: {named} has no rate", hints=hints))
    hours = Decimal(repr(round(needed.si / 3600, 6)))
    steps = [Step(f"{hours.normalize():f} h of a {rate.labour} at {labour.rate:f}", hours * labour.rate)]
    if rate.materials:
        steps.append(Step(f"+ {rate.materials:f} for materials", steps[-1].gives + rate.materials))
    return steps


def _paid_before(number: str, earlier: EarlierPrice, quantity: LineQuantity, book: PriceBook) -> list[Step]:
    docking = book.dockings.get(earlier.docking.name)
    if docking is None:
        raise _Cannot(None)
    closing = book.closings.get(docking.docking)
    if closing is None:
        if book.closings_broken:
            raise _Cannot(None)
        message = f"line {number}: what was paid at `{earlier.docking}` is not known"
        hint = f"write `docking: {docking.docking}` and its `prices` in owner/closing/{docking.docking}.yaml"
        raise _Cannot(Notice("dead-reference", earlier.here, message, hints=(hint,)))
    paid = next((one for one in closing.paid if one.work == earlier.work), None)
    if paid is None:
        hints = did_you_mean(earlier.work, [one.work for one in closing.paid])
        message = f"line {number}: the prices of `{earlier.docking}` have no work `{earlier.work}`"
        raise _Cannot(Notice("dead-reference", earlier.here, message, hints=hints))
    if closing.currency and closing.currency != book.currency:
        message = f"line {number}: `{earlier.docking}` was paid in {closing.currency}, the tender is in {book.currency}"
        raise _Cannot(Notice("price-not-comparable", earlier.here, message))
    count = _units_paid(number, earlier, paid, quantity)
    then = docking.undocked.strftime("%Y-%m")
    steps = [Step(f"paid {then} for {paid.quantity}: {written(paid.amount)}", paid.amount / count)]
    index = _index(number, earlier, book)
    figures = [index.months.get(month) or _nearest(index, month) for month in (then, book.rates.base_month)]
    if None in figures:
        missing = then if figures[0] is None else book.rates.base_month
        message = f"line {number}: index `{index.index}` has no figure for {missing} nor for the months before it"
        hint = "give the line a new price, or give the index its earlier months"
        raise _Cannot(Notice("price-not-comparable", earlier.here, message, hints=(hint,)))
    start, now = (float(figure) for figure in figures if figure is not None)
    factor = Decimal(repr(index_ratio(start, now)))
    steps.append(Step(f"× {now:g}/{start:g}, {index.name} {then} to {book.rates.base_month}", steps[-1].gives * factor))
    return steps


def _nearest(index: PriceIndex, month: str) -> float | None:
    """Give the latest figure published up to a month, at most a year before it."""
    before = [one for one in index.months if f"{int(month[:4]) - 1}{month[4:]}" <= one <= month]
    return index.months[max(before)] if before else None


def _index(number: str, earlier: EarlierPrice, book: PriceBook) -> PriceIndex:
    name = earlier.index or book.rates.index
    found = book.indices.get(name)
    if found is None:
        if book.indices_broken:
            raise _Cannot(None)
        hints = did_you_mean(name, book.indices) or ("list it in owner/indices.yaml",)
        message = f"line {number}: there is no index `{name}`" if name else f"line {number}: no index is named"
        raise _Cannot(Notice("dead-reference", earlier.here, message, hints=hints, cause=f"there is no index `{name}`"))
    return found


def _units_paid(number: str, earlier: EarlierPrice, paid: Paid, quantity: LineQuantity) -> Decimal:
    """Give how many of the line's units were paid for."""
    if quantity.unit.startswith("lump"):
        if paid.quantity in ("", "1 set"):
            return Decimal(1)
        raise _Cannot(_unlike(number, earlier, paid, quantity))
    bought, asked = _measured(paid.quantity), _measured(f"1 {quantity.unit}")
    if bought is None or asked is None or unit(bought.unit).signature != unit(asked.unit).signature:
        raise _Cannot(_unlike(number, earlier, paid, quantity))
    count = Decimal(repr(bought.si)) / Decimal(repr(asked.si))
    if count <= 0:
        raise _Cannot(Notice("price-not-comparable", paid.here, f"`{paid.quantity}` cannot be a quantity paid for"))
    return count


def _unlike(number: str, earlier: EarlierPrice, paid: Paid, quantity: LineQuantity) -> Notice:
    message = f"line {number} is priced by the {quantity.unit}, and what was paid is for `{paid.quantity}`"
    return Notice("price-not-comparable", earlier.here, message)


def _measured(text: str) -> Quantity | None:
    """Read a quantity; None for a lump or a set, which measures nothing."""
    try:
        return parse_quantity(text, "any")
    except QuantityError:
        return None
