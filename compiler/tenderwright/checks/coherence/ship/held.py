"""Hold a figure against the range that something else leaves it, and tell what it was held against."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.coherence.ship.slip import slip_of
from tenderwright.notices import Notice, Place
from tenderwright.quantities.display import significant
from tenderwright.quantities.quantity import Quantity
from tenderwright.quantities.retold import retold

_EDGE = 1e-9
LOOK = "look at the figure, and at what it is compared with"
FRAME = "look at the frame: are two digits swapped?"
"""Cures of what no single slip explains."""


def held(
    code: str, what: str, stated: Quantity | None, low: float, high: float, against: str, *, exact: bool = False
) -> Iterator[Notice]:
    """Tell of a quantity outside a range in SI; `exact` where the range is narrow enough for its digits to be tried."""
    if stated is None or _within(stated.si, low, high):
        return
    hints = slip_of(stated, low, high, exact=exact) or (LOOK,)
    yield Notice(code, stated.at, f"{what} is {stated}, and {retold(against)}", hints=hints)


def held_number(
    code: str, what: str, figure: float | None, at: Place, low: float, high: float, against: str
) -> Iterator[Notice]:
    """Tell of a plain number outside a range."""
    if figure is not None and not _within(figure, low, high):
        yield Notice(code, at, f"{what} is {figure:g}, and {retold(against)}", hints=(LOOK,))


def _within(figure: float, low: float, high: float) -> bool:
    edge = _EDGE * max(abs(low), abs(high), 1e-12)
    return low - edge <= figure <= high + edge


def near(value: float, share: float, least: float = 0.0) -> tuple[float, float]:
    """Give the range about a value, by a share of it or by a least width."""
    width = max(abs(value) * share, least)
    return value - width, value + width


def like(si: float, stated: Quantity, digits: int = 3) -> str:
    """Show an SI figure in the unit in which another was written."""
    return f"{significant(stated.number(si), digits)} {stated.unit}"
