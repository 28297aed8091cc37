"""The days of the owner's papers follow each other, and those of the package, as those of a docking do.

Ground: the table in `checks/coherence/tender/order.py`, with the reason of each.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.coherence.owner.days import owners_days_of
from tenderwright.checks.coherence.tender.days import days_of
from tenderwright.checks.coherence.tender.order import days_in_fault, pairs
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report days of the owner's papers that come before one that they follow, or impossibly long after it."""
    of_package = list(days_of(context.package, context.at))
    told = {notice.place for notice in days_in_fault(pairs(of_package))}
    sound = [one for one in of_package if not one.places & told]
    known = {id(one) for one in sound}
    held = pairs([*sound, *owners_days_of(context)])
    yield from days_in_fault(pair for pair in held if not (pair.code and {id(pair.before), id(pair.after)} <= known))
