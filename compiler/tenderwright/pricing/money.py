"""Money: the one place where amounts are rounded, and where a sum is shared out to the cent."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal

CENT = Decimal("0.01")
ZERO = Decimal("0.00")


def cents(amount: Decimal) -> Decimal:
    """Round an amount to the cent, halves up."""
    return amount.quantize(CENT, ROUND_HALF_UP)


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
    exact = [amount * weight / whole / CENT for weight in weights]
    parts = [int(part // 1) for part in exact]
    left = int(amount / CENT) - sum(parts)
    order = sorted(range(len(parts)), key=lambda i: (parts[i] - exact[i], i))
    for i in order[:left]:
        parts[i] += 1
    return [CENT * part for part in parts]


def written(amount: Decimal) -> str:
    """Write an amount with thousands apart and two decimals."""
    text = f"{amount:,.2f}"
    return text.replace(",", " ").replace("-", "−")
