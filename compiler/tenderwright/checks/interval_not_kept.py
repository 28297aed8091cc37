"""The time to the next docking is near one that she kept before, or it is said what makes it shorter.

Ground: steel, anodes and paint are chosen for that time; a ship that went twenty years between dockings and is planned
for five is renewed too little when it becomes twenty again (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.interval import docking_interval
from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "interval-not-kept"


def check(context: Context) -> Iterator[Notice]:
    """Warn of a time to the next docking that is much shorter than any that she kept."""
    condition = context.package.condition
    if condition is None or condition.next_docking_because:
        return
    found = context.found(docking_interval)
    if found is None or found.kept_before:
        return
    interval, went = condition.next_docking, " and ".join(f"{years:.0f}" for years in found.between)
    message = f"the next docking is planned {interval} on, and between her dockings she went {went} years"
    hint = "plan for the time that she is likely to go, or say in `next_docking_because` what makes this one hold"
    yield Notice(CODE, interval.at, message, hints=(hint,))
