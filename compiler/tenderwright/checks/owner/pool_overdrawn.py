"""The hours pool holds what is drawn of it.

Ground: the hours were tendered in competition at their rate; beyond them the yard may ask for another, and the owner
has budgeted none (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.pricing.in_dock.pool import overdrawn


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report the change by which a line of the pool is overdrawn."""
    if context.ledger is None:
        return
    currency = context.ledger.contract.currency
    for change, line, drawn in overdrawn(context.ledger):
        unit = line.unit or currency
        message = (
            f"with change {change.name} {drawn:f} {unit} are drawn of line {line.number}, "
            f"and {line.tendered:f} {unit} were tendered"
        )
        hint = "agree with the yard that its rate holds for more, or price the work by a unit rate"
        yield Notice("pool-overdrawn", change.order.here, message, hints=(hint,))
