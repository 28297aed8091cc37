"""Money: the one place where amounts are rounded, and where a sum is shared out to the cent."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import ROUND_FLOOR, ROUND_HALF_UP, Decimal

from tenderwright.quantities.customs import apart, with_currency

CENT = Decimal("0.01")
ZERO = Decimal("0.00")
BEYOND = Decimal("1e12")
"""Every amount of money lies below this."""


def cents(amount: Decimal) -> Decimal:
    """Round an amount to the cent, halves up."""
    return amount.quantize(CENT, ROUND_HALF_UP)


def cents_down(amount: Decimal) -> Decimal:
    """Round an amount down to the cent, for what may not be exceeded."""
    return amount.quantize(CENT, ROUND_FLOOR)


def tendered(rate: Decimal) -> Decimal:
    """Round a rate as tendered to four decimals, halves up, without noughts at the end."""
    rounded = rate.quantize(Decimal("0.0001"), ROUND_HALF_UP)
    return rounded.quantize(Decimal(1)) if rounded == rounded.to_integral_value() else rounded.normalize()


def total(amounts: Sequence[Decimal]) -> Decimal:
    """Add amounts that are already rounded."""
    return sum(amounts, ZERO)


def share_out(amount: Decimal, weights: Sequence[Decimal]) -> list[Decimal]:
    """Share an amount by weights so that the parts add up to it to the cent.

    Each part is rounded down and the cents left go to the parts with the largest remainders, earlier parts first
    (largest remainder method); what is owed back is shared like what is owed. Raises ValueError where the weights
    add up to nothing.
    """
    if amount < 0:
        return [-part for part in share_out(-amount, weights)]
    whole = sum(weights, Decimal(0))
    if whole <= 0 or any(weight < 0 for weight in weights):
        raise ValueError("the weights must be positive to share an amount by")
    return _largest_remainders(amount, [amount * weight / whole for weight in weights])


def in_proportion(amount: Decimal, parts: Sequence[Decimal]) -> list[Decimal]:
    """Share an amount in proportion to parts that may be negative, credits among costs; the shares add up to the cent.

    Nothing is shared as nothing. Raises ValueError where an amount is to be shared by parts that add up to nothing.
    """
    whole = sum(parts, Decimal(0))
    if not amount:
        return [ZERO] * len(parts)
    if not whole:
        raise ValueError("the parts add up to nothing, so nothing can be shared in proportion to them")
    return _largest_remainders(amount, [amount * part / whole for part in parts])


def _largest_remainders(amount: Decimal, exact: Sequence[Decimal]) -> list[Decimal]:
    """Round each part down and give the cents left to those with the largest remainders, earlier parts first."""
    whole = [int((part / CENT).to_integral_value(ROUND_FLOOR)) for part in exact]
    left = int(amount / CENT) - sum(whole)
    order = sorted(range(len(whole)), key=lambda i: (whole[i] - exact[i] / CENT, i))
    for i in order[:left]:
        whole[i] += 1
    return [CENT * part for part in whole]


def written(amount: Decimal) -> str:
    """Write an amount with thousands apart, as is the custom of the place, and two decimals."""
    return apart(f"{amount:,.2f}", " ").replace("-", "−")


def in_currency(currency: str, amount: Decimal) -> str:
    """Write an amount with its currency, such as `EUR 1 234.50` or `$1,234.50`."""
    return with_currency(currency, written(amount))
