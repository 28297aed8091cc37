"""The days of the package follow each other as those of a docking do.

Ground: the table in `order.py`, with the reason of each.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.coherence.tender.days import days_of
from tenderwright.checks.coherence.tender.order import days_in_fault, pairs
from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Report days that come before one that they follow, or impossibly long after it."""
    yield from days_in_fault(pairs(days_of(context.package, context.at)))
