"""No space makes twice the water that it made at first without somebody having gone after it.

Ground: a leak that doubles goes on doubling; twice is the usual alarm of a bilge log (common practice, no source).
Judged by the trend of the readings since something was last done there, never by the day of the check.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.care import leak_series, leak_trend
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

TWICE = 2.0


def check(context: Context) -> Iterator[Notice]:
    """Warn of each space whose water has doubled since its first readings."""
    series = context.found(leak_series) or {}
    for name, one in series.items():
        trend = context.found_for(leak_trend, name)
        if trend is None or not trend.sure or trend.last < TWICE * trend.first or trend.first <= 0:
            continue
        was, now = (show(made, "paint", digits=2) for made in (trend.first, trend.last))
        message = (
            f"{one.place} made {was} a day on {one.days[0]} and {now} on {one.days[-1]}, by the trend of "
            f"{len(one.values)} readings"
        )
        hint = "find where it comes in and stop it, then write what was done as a row of kind `action` for the place"
        yield Notice("leak-doubled", one.here, message, hints=(hint,))
