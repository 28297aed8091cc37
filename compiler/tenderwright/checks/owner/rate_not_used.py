"""Where the contract has a unit rate for the work, a change is paid by it.

Ground: rates were bid in competition, for this: unit rates first, then the hours pool, and only then by agreement
(common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.pricing.in_dock.contract import ContractLine
from tenderwright.pricing.in_dock.ledger import Ledger, PricedChange
from tenderwright.pricing.in_dock.ordered import in_units_of
from tenderwright.pricing.money import written
from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report changes priced by the pool or by agreement though their item has unit rates, and reports that ask more."""
    ledger = context.ledger
    if ledger is None:
        return
    for change in ledger.changes:
        fitting = _unit_rates(change, ledger) if _wants_a_rate(change) else []
        if fitting:
            yield _not_used(change, fitting, ledger)
    for one in ledger.reports:
        if one.asked is not None and one.price is not None and one.asked > one.price.amount:
            message = (
                f"report {one.name} asks {written(one.asked)}, and by line {one.report.line} of the contract it comes "
                f"to {written(one.price.amount)}"
            )
            hint = "hold the yard to the rate; the account takes the lesser"
            yield Notice("rate-not-used", one.report.here, message, hints=(hint,))


def _wants_a_rate(change: PricedChange) -> bool:
    """Tell whether a change costs something and is priced without a rate, and does not say why."""
    elsewhere = change.price.way in ("hours pool", "negotiated") and change.amount > 0
    return elsewhere and not change.order.no_rate_fits


def _unit_rates(change: PricedChange, ledger: Ledger) -> list[ContractLine]:
    """Give the lines of a change's item that have a unit rate."""
    lines = ledger.contract.lines.values()
    return [line for line in lines if line.item is change.item and line.has_rate]


def _not_used(change: PricedChange, fitting: list[ContractLine], ledger: Ledger) -> Notice:
    extent = _extent(change, ledger)
    costs = []
    for line in fitting:
        number = in_units_of(line, extent) if extent is not None else None
        if number is not None and not isinstance(number, Notice):
            costs.append(f"{extent} by line {line.number} would cost {written(line.more(number))}")
    how = "by hours of the pool" if change.price.way == "hours pool" else "by agreement"
    named = ", ".join(f"{line.number} (per {line.unit})" for line in fitting)
    message = (
        f"change {change.name} is priced {how} at {written(change.amount)}, "
        f"and item {change.item.number} has unit rates: {named}" + (f"; {'; '.join(costs)}" if costs else "")
    )
    hint = "write `quantity:` with the line, or say under `no_rate_fits:` why none covers the work"
    return Notice("rate-not-used", change.order.here, message, hints=(hint,))


def _extent(change: PricedChange, ledger: Ledger) -> Quantity | None:
    """Give how much the work is, as its report says, where that is a quantity."""
    name = change.order.condition.name if change.order.condition is not None else ""
    report = next((one.report for one in ledger.reports if one.name == name), None)
    if report is None:
        return None
    if report.quantity is not None:
        return report.quantity
    try:
        return parse_quantity(report.extent, "any")
    except QuantityError:
        return None
