"""Run every check of findings."""

from __future__ import annotations

from tenderwright.checks.closing import (
    dates,
    floated,
    in_dock,
    lines,
    names_once,
    paint_and_blocks,
    plugs_and_anodes,
    readings,
    reports,
    stretches,
    tables_filled,
)
from tenderwright.checks.closing.context import ClosingCheck, ClosingContext
from tenderwright.model.account_sums import account_sums
from tenderwright.notices import Notice

CHECKS: tuple[ClosingCheck, ...] = (
    dates.check,
    names_once.check,
    plugs_and_anodes.check,
    readings.check,
    paint_and_blocks.check,
    stretches.check,
    tables_filled.check,
    lines.check,
    reports.check,
    in_dock.check,
    floated.check,
)


def check_findings(context: ClosingContext) -> list[Notice]:
    """Give every notice of the checks, the sums of the account among them."""
    findings = context.findings
    sums = account_sums(context.source, "prices", findings.prices, findings.changes, findings.totals)
    return [*sums, *(notice for check in CHECKS for notice in check(context))]
