"""Money: the one place where amounts are rounded, and where a sum is shared out to the cent."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal

from msgspec import Struct

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


def up(amount: Decimal, unit: int = 1) -> Decimal:
    """Round an amount up to a whole unit, as what is asked of a giver."""
    return (amount / unit).to_integral_value(ROUND_CEILING) * unit


_UNITS = ((100_000, 1000), (10_000, 100), (1000, 10))
"""From which greatest amount on to which unit is rounded."""


class Rounding(Struct, frozen=True):
    """How the amounts of one paper are rounded."""

    currency: str
    unit: int

    def __call__(self, amount: Decimal) -> Decimal:
        """Round an amount."""
        return (amount / self.unit).quantize(Decimal(1), ROUND_HALF_UP) * self.unit

    def figure(self, amount: Decimal) -> str:
        """Write an amount without its currency, such as `1 401 000`."""
        return apart(f"{self(amount):,.0f}").replace("-", "−")

    def money(self, amount: Decimal) -> str:
        """Write an amount with its currency, such as `EUR 1 401 000`, so that no line breaks inside it."""
        return with_currency(self.currency, self.figure(amount)).replace(" ", "\N{NO-BREAK SPACE}")


def rounding(currency: str, amounts: Iterable[Decimal]) -> Rounding:
    """Give the rounding that suits the greatest of some amounts: to the thousand from 100 000 on, and finer below."""
    greatest = max((abs(amount) for amount in amounts), default=Decimal(0))
    return Rounding(currency, next((unit for least, unit in _UNITS if greatest >= least), 1))
