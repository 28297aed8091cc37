"""The owner's prices hold together: labour with other labour, an index with its neighbours, one line with all lines.

Ground: a slip of the decimal point is ten times; labour, factors and indices never move so far (common practice, no
source). The factors of access and place that are published lie between 0.5 and 3.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from itertools import pairwise
from statistics import median

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.rates import Rate, Rates
from tenderwright.notices import Note, Notice
from tenderwright.pricing.money import written

CODE = "price-unlikely"
_FACTOR = (0.3, 4.0)
_LABOUR = 4
"""How many times dearer one hour of labour is than the usual one at the most."""
_JUMP = 1.5
"""How many times an index moves between two figures at the most, a year or less apart."""
_SHARE = Decimal("0.45")
"""The greatest share of all lines that one line takes."""
_FEW, _RANGE, _RANGE_OF_MANY = 5, 40, 10
"""How many times what is tendered the greatest quantity may be, where few are tendered and where many are."""


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report rates, factors, indices and lines far out of what stands beside them."""
    rates = context.papers.rates
    if rates is not None:
        yield from _labour(context, rates)
        for number, rate in rates.lines.items():
            yield from _factors(context, number, rate)
        yield from _dock_days(context, rates)
    yield from _indices(context)
    yield from _lines(context)


def _labour(context: OwnerContext, rates: Rates) -> Iterator[Notice]:
    usual = median([labour.rate for labour in rates.labour.values()] or [Decimal(0)])
    for name, labour in rates.labour.items() if len(rates.labour) > 2 else ():
        if labour.rate > _LABOUR * usual or labour.rate * _LABOUR < usual:
            message = f"an hour of {name} is {labour.rate}, and of the others about {usual}"
            yield Notice(CODE, context.at("owner/rates.yaml", "labour", name, "rate"), message)


def _factors(context: OwnerContext, number: str, rate: Rate) -> Iterator[Notice]:
    low, high = _FACTOR
    for index, one in enumerate(rate.factors):
        if not low <= one.factor <= high:
            message = f"line {number} is multiplied by {one.factor:g} for `{one.why}`"
            hint = f"factors for access and place lie between {low:g} and {high:g}"
            place = context.at("owner/rates.yaml", "lines", number, "factors", index, "factor")
            yield Notice(CODE, place, message, hints=(hint,))


def _dock_days(context: OwnerContext, rates: Rates) -> Iterator[Notice]:
    tender = context.package.tender
    included = tender.dock_days if tender is not None else None
    for item, days in rates.dock_days.items():
        if included is not None and days > included:
            message = f"item {item} drives {days:g} days on the blocks, and {included} are included in all"
            yield Notice("days-differ", context.at("owner/rates.yaml", "dock_days", item), message)


def _indices(context: OwnerContext) -> Iterator[Notice]:
    indices = context.papers.indices.indices if context.papers.indices is not None else ()
    for at, index in enumerate(indices):
        months = sorted(index.months)
        out: set[str] = set()
        for one, other in pairwise(months):
            years = (int(other[:4]) - int(one[:4])) + (int(other[5:]) - int(one[5:])) / 12
            if max(index.months[one], index.months[other]) > _JUMP ** max(1.0, years) * min(
                index.months[one], index.months[other]
            ):
                out |= {one, other}
        if out:
            usual = sorted(index.months.values())[len(months) // 2]
            month = max(out, key=lambda one: max(index.months[one] / usual, usual / index.months[one]))
            message = f"`{index.index}` is {index.months[month]:g} in {month}, far from the months beside it"
            yield Notice(CODE, context.at("owner/indices.yaml", "indices", at, "months", month), message)


def _lines(context: OwnerContext) -> Iterator[Notice]:
    """Report a line that is nearly the whole, a fixed sum with another rate, and a range out of all measure."""
    estimate, rates = context.estimate, context.papers.rates
    if estimate is None or rates is None or len(estimate.lines) < 20:
        return
    whole = sum((abs(line.amount) for line in estimate.lines), Decimal(0))
    for line in estimate.lines:
        place = context.at("owner/rates.yaml", "lines", line.number)
        if abs(line.amount) > _SHARE * whole:
            message = f"line {line.number} comes to {written(line.amount)}, and all lines to {written(whole)}"
            notes = (Note("the line is here", line.line.here),)
            yield Notice(CODE, place, message, notes, ("look at its rate, its quantity and its hours",))
        high = line.most
        times = _RANGE if line.quantity.number < _FEW else _RANGE_OF_MANY
        if line.quantity.number > 0 and high > times * line.quantity.number:
            at = context.at("owner/rates.yaml", "lines", line.number, "quantity_high")
            message = f"line {line.number} may come to {high:g} {line.quantity.unit}, and {line.quantity} is tendered"
            yield Notice("quantity-unlikely", at, message)
        own, fixed = rates.of(line.number), line.line.amount
        stated = own.rate if own is not None else None
        if line.line.price == "fixed" and stated is not None and fixed is not None and stated != fixed:
            at = context.at("owner/rates.yaml", "lines", line.number, "rate")
            message = f"line {line.number} is the owner's fixed sum of {fixed}, and its rate is {stated}"
            yield Notice(CODE, at, message, (Note("the line is here", line.line.here),))
