"""Lines taken together, as those of an item: their range, how well they are defined, how much of them is assumed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from tenderwright.pricing.money import total
from tenderwright.pricing.price import Estimate, PricedLine
from tenderwright.pricing.sections import UNCOUNTED


@dataclass(frozen=True)
class Bundle:
    """Lines taken together."""

    lines: tuple[PricedLine, ...]

    @property
    def low(self) -> Decimal:
        """Give the sum of the low amounts."""
        return total([line.low for line in self.lines])

    @property
    def likely(self) -> Decimal:
        """Give the sum of the likely amounts."""
        return total([line.amount for line in self.lines])

    @property
    def high(self) -> Decimal:
        """Give the sum of the high amounts."""
        return total([line.high for line in self.lines])

    @property
    def assumed(self) -> Decimal:
        """Give the share of the amounts whose quantity is assumed, 0 to 1; credits count as if they were charges."""
        whole = _size(self.lines)
        return _size(line for line in self.lines if line.quantity.basis == "assumed") / whole if whole else Decimal(0)

    @property
    def estimate_class(self) -> int | None:
        """Give the class of the estimate: the mean of those of its lines, weighted by amount, halves rounded up.

        k = sum of |a_i| k_i / sum of |a_i|, a_i amounts, k_i classes 1 to 5. The owner's fixed sums are no estimate and
        do not count; None where nothing else is there. Source: derived.
        """
        estimated = [line for line in self.lines if line.form != "fixed"]
        whole = _size(estimated)
        if not whole:
            return None
        weighed = sum((abs(line.amount) * line.unit_price.estimate_class for line in estimated), Decimal(0))
        return int((weighed / whole).quantize(Decimal(1), ROUND_HALF_UP))


def bundle_of(estimate: Estimate, number: str) -> Bundle:
    """Take the lines of one item together."""
    return Bundle(tuple(line for line in estimate.lines if line.item.number == number))


def without_options(lines: Iterable[PricedLine]) -> Bundle:
    """Take all lines together but options and alternatives, which nobody has taken up."""
    return Bundle(tuple(line for line in lines if line.section.code not in UNCOUNTED))


def _size(lines: Iterable[PricedLine]) -> Decimal:
    return total([abs(line.amount) for line in lines])
