"""Price what is ordered or reported in dock: at unit rates first, then by the hours pool, then by agreement."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal, Protocol

from msgspec import Struct

from tenderwright.model.build import Name
from tenderwright.notices import Notice, Place
from tenderwright.pricing.amount import PERCENTS, amount
from tenderwright.pricing.in_dock.contract import Contract, ContractLine
from tenderwright.pricing.money import ZERO, cents, total
from tenderwright.quantities.display import in_unit, tidy
from tenderwright.quantities.quantity import Quantity
from tenderwright.quantities.units import unit

Way = Literal["unit rate", "lump sum", "hours pool", "negotiated"]
"""How a price is come by: at the rate of the bid, as a lump sum of the bid, by the pool, or agreed."""


class Price(Struct, frozen=True):
    """A price in dock and how it is come by."""

    way: Way
    amount: Decimal
    quantity: Decimal = Decimal(0)
    """In the unit of the line, where it is priced by a unit rate."""
    hours: Decimal = Decimal(0)
    materials: Decimal = ZERO
    """At cost, before the mark-up."""


class PoolWork(Protocol):
    """Work that takes hours and materials of the pool."""

    @property
    def hours(self) -> Quantity | None:
        """Give the hours of the pool."""

    @property
    def materials(self) -> Decimal | None:
        """Give the materials at cost."""

    @property
    def here(self) -> Place:
        """Give where it stands."""


def by_quantity(quantity: Quantity, line: ContractLine, contract: Contract, what: str, here: Place) -> Price | Notice:
    """Price a quantity of a line: amount = rate x quantity, to the cent; one of a line of the pool counts as hours."""
    if not line.unit:
        message = (
            f"{what}: line {line.number} is paid as {_FORMS.get(line.form, 'a price without a unit')}, not by quantity"
        )
        return Notice("in-dock-price", here, message, hints=("a lump sum is ordered as a whole, without a quantity",))
    number = in_units_of(line, quantity)
    if isinstance(number, Notice):
        return number
    if line.rate is None:
        return _no_rate(line, what, here)
    if line.number in contract.pool:
        return Price("hours pool", line.more(number), hours=number)
    return Price("unit rate", line.more(number), number)


_FORMS = {"lump": "a lump sum", "fixed": "a sum of the owner's", "markup": "a mark-up on materials"}
_FORMS |= dict.fromkeys(PERCENTS, "a percentage of other lines")


def in_units_of(line: ContractLine, quantity: Quantity) -> Decimal | Notice:
    """Give a quantity in the unit of a line, as written where it is the same; a mistake where it measures otherwise."""
    if quantity.unit == line.unit:
        return quantity.decimal
    wanted = unit(line.unit)
    if unit(quantity.unit).signature != wanted.signature:
        message = f"line {line.number} is measured in {line.unit}, got `{quantity}`"
        return Notice("wrong-dimension", quantity.at, message)
    return tidy(Decimal(repr(in_unit(quantity.si, line.unit, quantity.dimension))), 9).normalize()


def by_lump(line: ContractLine, what: str, here: Place) -> Price | Notice:
    """Price a lump sum as it was bid, where it is not in the contract already."""
    if line.inside:
        hints = ("write `negotiated:` for what is done beyond it, or `deleted:` where it is left out",)
        message = f"{what}: line {line.number} is a lump sum that the contract holds already"
        return Notice("in-dock-price", here, message, hints=hints)
    if line.rate is None:
        return _no_rate(line, what, here)
    return Price("lump sum", amount(line.form, Decimal(1), line.rate))


def by_pool(work: PoolWork, line: Name | None, contract: Contract, what: str) -> Price | Notice:
    """Price hours and materials of the pool: hours x rate + materials x (1 + mark-up), each to the cent."""
    hours, parts = Decimal(0), [ZERO]
    number = line.name if line is not None else ""
    if work.hours is not None:
        if number not in contract.pool:
            hints = (f"name the line of its trade: {', '.join(contract.pool) or 'the contract has none'}",)
            named = f"line {number} is none of the hours pool" if number else "no line of the pool is named"
            return Notice("in-dock-price", work.here, f"{what} is priced by hours, and {named}", hints=hints)
        own = contract.lines[number]
        if own.rate is None:
            return _no_rate(own, what, work.here)
        hours = tidy(Decimal(repr(work.hours.si / 3600.0)), 9) if work.hours.unit != "h" else work.hours.decimal
        parts.append(own.more(hours))
    materials = cents(work.materials or ZERO)
    if materials:
        markup = contract.lines.get(contract.markup)
        if markup is None or markup.rate is None:
            message = f"{what} takes materials, and the contract has no mark-up on them"
            return Notice("in-dock-price", work.here, message, hints=("write `negotiated:`",))
        parts.append(amount("markup", materials, markup.rate))
    return Price("hours pool", total(parts), hours=hours, materials=materials)


def _no_rate(line: ContractLine, what: str, here: Place) -> Notice:
    message = f"{what}: line {line.number} has no price in the awarded bid ({line.corrected.status})"
    return Notice("in-dock-price", here, message, hints=("agree a price and write `negotiated:`",))
