"""The axes of charts: round steps between ticks, and the axis of money under bars."""

from __future__ import annotations

from math import floor, log10

from tenderwright.documents.drawings import pen
from tenderwright.quantities.customs import apart, with_currency


def round_step(least: float) -> float:
    """Give the smallest of 1, 2 and 5 times a power of ten that is no less than `least`."""
    size = 10.0 ** floor(log10(least))
    return next(size * factor for factor in (1, 2, 5, 10) if size * factor >= least)


def money_axis(
    currency: str, greatest: float, step: int, per: float, ends: tuple[float, float], base: float, weight: float
) -> list[str]:
    """Draw an axis of money between two ends up to `greatest`, a tick every `step`, `per` mm to one of the currency."""
    left, right = ends
    marks = [pen.line((left, base), (right, base), weight)]
    for count in range(int(greatest / step) + 1):
        x = left + count * step * per
        marks.append(pen.line((x, base), (x, base + 1.2), pen.FINE))
        name = with_currency(currency, apart(f"{count * step:,}", " ")) if count else "0"
        anchor = "start" if not count else "middle" if x < right - 8.0 else "end"
        marks.append(pen.text((x, base + 4.0), name, pen.SMALL, anchor, kind="axis"))
    return marks
