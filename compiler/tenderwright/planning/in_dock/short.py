"""Days on blocks that the work left is short of, and the running account with their price."""

from __future__ import annotations

import math
from datetime import date

from tenderwright.model.package import Package
from tenderwright.planning.in_dock.live import wholly_out
from tenderwright.planning.in_dock.remaining import days_needed
from tenderwright.planning.schedule import Schedule
from tenderwright.pricing.in_dock.account import RunningAccount, account, with_days_beyond
from tenderwright.pricing.in_dock.dock_days import DockDays, dock_days
from tenderwright.pricing.in_dock.ledger import Ledger

_PART = 1e-6
"""A part of a day within which two times are one."""


def needed_still(made: RunningAccount, days: DockDays, schedule: Schedule | None) -> float | None:
    """Give the days on blocks that the work left needs; None without a programme, and once she is undocked."""
    if schedule is None or days.undocked is not None:
        return None
    return days_needed(schedule, made.ledger.done(made.on), wholly_out(made), docked=days.has_docked)


def days_short(days: DockDays, needed: float | None) -> int:
    """Count the days on blocks beyond the contract as it is now: used + needed - contract, and not below nothing.

    Source: derived. Without a programme, and once she is undocked, only the days that were used count.
    """
    return max(days.used + math.ceil((needed or 0.0) - _PART) - days.whole, 0)


def account_on(ledger: Ledger, on: date, package: Package, schedule: Schedule | None) -> RunningAccount:
    """Give the running account of a day, whose forecast prices every day that the work is short of."""
    made, tender = account(ledger, on), package.tender
    if tender is None or tender.programme is None:
        return made
    days = dock_days(made, tender)
    return with_days_beyond(made, days_short(days, needed_still(made, days, schedule)))
