"""The docking plan says on which day the undocking condition was last checked.

Ground: weights that become known later are not in the calculation (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.weight_not_counted import CHANGES
from tenderwright.notices import Notice

CODE = "stability-not-checked"


def check(context: Context) -> Iterator[Notice]:
    """Warn of a docking plan without that day, where an item changes weight."""
    plan = context.package.docking_plan
    if plan is None or plan.stability_checked is not None:
        return
    if any(CHANGES in item.does for item in context.live_items):
        message = "the docking plan does not say on which day the undocking condition was last checked"
        hint = "have it checked, and write the day, as in `stability_checked: 2027-05-24`"
        yield Notice(CODE, plan.here, message, hints=(hint,))
