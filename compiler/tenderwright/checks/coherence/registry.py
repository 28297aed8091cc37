"""The checks of coherence, by the subject of each."""

from __future__ import annotations

from tenderwright.checks.coherence.ship import registry as ship
from tenderwright.checks.coherence.tender import (
    amounts_of_work,
    clauses,
    counts_of_days,
    earlier_dockings,
    numbering,
    order_of_days,
    services_taken,
)
from tenderwright.checks.context import Check

COHERENCE: tuple[Check, ...] = (
    ship.check,
    order_of_days.check,
    numbering.check,
    counts_of_days.check,
    amounts_of_work.check,
    earlier_dockings.check,
    clauses.check,
    services_taken.check,
)
