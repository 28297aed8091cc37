"""Money as trustees read it: rounded to what the estimate bears, so that rounded parts still add up."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from tenderwright.quantities.customs import apart, with_currency

_UNITS = ((100_000, 1000), (10_000, 100), (1000, 10))
"""From which greatest amount on to which unit is rounded."""


@dataclass(frozen=True)
class Rounding:
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
