"""Run every trade check over a package."""

from __future__ import annotations

from tenderwright.checks.context import Context
from tenderwright.checks.registry import CHECKS
from tenderwright.notices import Notice, sort_notices


def run_checks(context: Context) -> list[Notice]:
    """Run the trade checks in turn and gather their notices, sorted by place."""
    return sort_notices(notice for check in CHECKS.values() for notice in check(context))
