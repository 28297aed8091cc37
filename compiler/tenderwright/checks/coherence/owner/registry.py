"""The checks of coherence of the owner's papers, by the subject of each."""

from __future__ import annotations

from tenderwright.checks.coherence.owner import order_of_days
from tenderwright.checks.owner.context import OwnerCheck

OWNER_COHERENCE: tuple[OwnerCheck, ...] = (order_of_days.check,)
