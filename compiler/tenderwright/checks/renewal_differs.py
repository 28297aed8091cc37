"""Plate that the surveys call for is in the items.

Ground: what a page calls for and no item prices comes back as a claim (derived, no source). Whether the plate lies
where its item says that it works is looked at apart.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.renewals import shell_renewal
from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "renewal-differs"


def check(context: Context) -> Iterator[Notice]:
    """Warn of plate that the surveys name and no item takes."""
    condition = context.package.condition
    if condition is None or condition.renewal is None:
        return
    takes = (line.takes for item in context.live_items for line in item.lines)
    taken = any(value is not None and value.name.startswith("shell.renewal.") for value in takes)
    plan = None if taken else context.found(shell_renewal)
    if plan is None or not plan.total.inserts:
        return
    message = f"the surveys name {plan.total.inserts} inserts to renew in the shell, and no item takes their quantities"
    hint = "let a line take `shell.renewal.mass`, or another value of `shell.renewal`"
    yield Notice(CODE, condition.renewal.here, message, hints=(hint,))
