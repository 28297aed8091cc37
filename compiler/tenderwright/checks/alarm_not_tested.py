"""Each alarm worked at its last test, and that test is no older than a quarter of a year.

Ground: remote alarms are tested quarterly (MIL-HDBK-1130, 3.3.16.3). Judged as of the last day recorded under care/,
never by the day of the check.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.care import ALARM_DAYS, alarms_tested
from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Warn of each alarm that failed, or whose test is old."""
    for one in context.found(alarms_tested) or ():
        if one.good:
            continue
        why = (
            "failed it"
            if one.fault
            else f"that was {one.age} days before the last day recorded, and {ALARM_DAYS} is the most"
        )
        message = f"the alarm {one.place} was last tested on {one.last}, and {why}"
        hint = "test it, mend it where it fails, and write the test as a row of kind `alarm`"
        yield Notice("alarm-not-tested", one.here, message, hints=(hint,))
