"""The checks of coherence, by the subject of each."""

from __future__ import annotations

from tenderwright.checks.coherence.tender import order_of_days
from tenderwright.checks.context import Check

COHERENCE: tuple[Check, ...] = (order_of_days.check,)
