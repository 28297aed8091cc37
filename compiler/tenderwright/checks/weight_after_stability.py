"""No option that changes weight is decided after the undocking condition was last checked.

Ground: weights known late are not in the calculation (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.checks.weight_not_counted import CHANGES, weights_counted
from tenderwright.notices import Notice

CODE = "weight-after-stability"


def check(context: Context) -> Iterator[Notice]:
    """Warn of options that change weight and may still be taken up after the last check."""
    plan, tender = context.package.docking_plan, context.package.tender
    if plan is None or plan.stability_checked is None or tender is None:
        return
    counted, checked = weights_counted(plan), plan.stability_checked
    for item in context.live_items:
        day = item.option_until.on(tender.events) if item.option_until is not None else None
        if CHANGES in item.does and item.number in counted and day is not None and day > checked:
            message = (
                f"option {item.number} changes weight and may be taken up until {day}, "
                f"after the undocking condition was last checked on {checked}"
            )
            hint = "decide it before, or have the undocking condition checked again after that day"
            yield Notice(CODE, place_in(item, "option_until"), message, hints=(hint,))
