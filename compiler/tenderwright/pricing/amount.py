"""The amount of a line from its quantity and rate, by the form of its price."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.pricing.money import cents


def amount(price: str, quantity: Decimal, rate: Decimal) -> Decimal:
    """Give the amount of a line, rounded to the cent.

    A lump (and the owner's fixed sum) is its price. Rates, days and hours are quantity times rate. A mark-up is the
    materials allowance, which stands as the quantity, with the percentage added. A credit is quantity times rate,
    negative.
    """
    if price in ("lump", "fixed"):
        return cents(rate)
    if price == "markup":
        return cents(quantity * (1 + rate / 100))
    return cents(-quantity * rate if price == "credit" else quantity * rate)
