"""The tender includes at least the days on blocks that the critical path takes.

Ground: a yard holds the dock for the days tendered; what the work takes beyond is bought by the day (common practice,
no source).
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report a programme whose critical path on blocks is longer than the days tendered."""
    schedule, tender = context.schedule, context.package.tender
    programme = tender.programme if tender is not None else None
    if schedule is None or programme is None or programme.dock_days is None:
        return
    needed = math.ceil(schedule.dock_days - 1e-6)
    if needed > programme.dock_days:
        message = f"the tender includes {programme.dock_days} days on blocks, and the critical path takes {needed}"
        chain = [one.node.name for one in schedule.activities if one.critical and one.node.phase == "dry"]
        hints = (f"include more days, or shorten one of: {', '.join(chain)}",)
        yield Notice("dock-days-short", programme.here, message, hints=hints)
