"""The trade checks of the owner's papers, by the code of their notice."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.checks.owner import (
    answer_overdue,
    beyond_authority,
    change_without_report,
    contingency_spent,
    dock_days_short,
    left_out_needed,
    money_too_late,
    must_do_unfunded,
    no_contingency,
    pool_overdrawn,
    quantity_outside_range,
    rate_not_used,
    restricted_money,
    stale_price,
)
from tenderwright.checks.owner.context import OwnerCheck, OwnerContext
from tenderwright.notices import Notice, sort_notices

OWNER_CHECKS: Mapping[str, OwnerCheck] = {
    "no-contingency": no_contingency.check,
    "quantity-outside-range": quantity_outside_range.check,
    "stale-price": stale_price.check,
    "dock-days-short": dock_days_short.check,
    "restricted-money": restricted_money.check,
    "money-too-late": money_too_late.check,
    "must-do-unfunded": must_do_unfunded.check,
    "beyond-authority": beyond_authority.check,
    "change-without-report": change_without_report.check,
    "rate-not-used": rate_not_used.check,
    "pool-overdrawn": pool_overdrawn.check,
    "answer-overdue": answer_overdue.check,
    "contingency-spent": contingency_spent.check,
    "left-out-needed": left_out_needed.check,
}


def run_owner_checks(context: OwnerContext) -> list[Notice]:
    """Run the trade checks of the owner's papers in turn and gather their notices, sorted by place."""
    return sort_notices(notice for check in OWNER_CHECKS.values() for notice in check(context))
