"""The rule of award counts the owner's days exactly where it publishes what a day costs.

Ground: a bidder reckons its evaluated price from what was published, and what was not published ought not to decide
(common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.model.tender import DAYS
from tenderwright.notices import Notice

CODE = "award-unclear"


def check(context: Context) -> Iterator[Notice]:
    """Report days that are counted without their cost, and a cost of days that are not counted."""
    tender = context.package.tender
    if tender is None:
        return
    if any(todo.at == ("award", "day_cost") for todo in context.package.todos):
        return
    counted, cost = DAYS in tender.award.components, tender.award.day_cost
    if counted and cost is None:
        message = f"`{DAYS}` are counted in the evaluated price, and bidders are not told what a day costs"
        hint = "write `day_cost:`, or delete the part under `counts`"
        yield Notice(CODE, context.at("package.yaml", "award", "counts"), message, hints=(hint,))
    if not counted and cost is not None:
        message = f"the owner's cost of a day is published, and `{DAYS}` are not among what `counts` names"
        hint = f"add `{DAYS}` to `counts`, or delete `day_cost:`"
        yield Notice(CODE, context.at("package.yaml", "award", "day_cost"), message, hints=(hint,))
