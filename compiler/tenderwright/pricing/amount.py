"""The amount of a line from its quantity and rate, by the form of its price."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.pricing.money import cents

PERCENT, DISCOUNT = "percent", "discount"
PERCENTS = (PERCENT, DISCOUNT)
"""Prices that are percentages of what other lines come to, added or taken off."""
SHARES = ("markup", *PERCENTS)
"""Prices that are percentages, and no money."""


def units(price: str, unit: str, currency: str) -> tuple[str, str]:
    """Give the unit of the quantity of a line and that of its rate, by the form of its price."""
    if price in ("lump", "fixed"):
        return unit, currency
    if price in SHARES:
        return currency, "%"
    return unit, f"{currency}/{unit}"


def amount(price: str, quantity: Decimal, rate: Decimal) -> Decimal:
    """Give the amount of a line, rounded to the cent.

    A lump (and the owner's fixed sum) is its price. Rates, days and hours are quantity times rate. A mark-up is the
    materials allowance, which stands as the quantity, with the percentage added. A credit is quantity times rate,
    negative. A percentage is of the sum of other lines, which stands as the quantity; as a credit it is a discount.
    """
    if price in ("lump", "fixed"):
        return cents(rate)
    if price == "markup":
        return cents(quantity * (1 + rate / 100))
    if price in PERCENTS:
        return cents(quantity * rate / 100 * (-1 if price == DISCOUNT else 1))
    return cents(-quantity * rate if price == "credit" else quantity * rate)
