"""Damages for late redelivery begin on a day that the owner's own programme bears out as likely to be met.

Ground: damages are a forecast of loss for lateness that the yard can avoid (FAR 11.501), not a penalty for a programme
that the owner itself expects to be exceeded. The day is held against the P80 of the critical path by PERT: means and
variances of its activities added up (Malcolm, Roseboom, Clark and Fazar, Application of a Technique for Research and
Development Program Evaluation, Operations Research 7, 1959). Side branches, risks and what moves together are left out,
so that the trials give a later day, which the owner's papers print.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from tenderwright.calculations.schedule.elapsed import elapsed, elapsed_deviation
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.schedule import Schedule

Z80 = 0.8416
"""Standard deviations above the mean that four in five outcomes of a normal distribution stay below."""


def check(context: OwnerContext) -> Iterator[Notice]:
    """Warn of damages that begin before the P80 of the owner's own critical path."""
    tender, schedule = context.package.tender, context.schedule
    if schedule is None or tender is None or tender.damages is None or tender.stay is None:
        return
    bears = tender.stay + tender.damages.after
    needed = math.ceil(p80(schedule) - 1e-6)
    if needed > bears:
        message = (
            f"damages begin {bears} days after arrival, and by the owner's own programme four dockings in five are "
            f"delivered again within {needed}"
        )
        hint = f"let `after` be {tender.damages.after + needed - bears} or more, or give the yard more days"
        yield Notice("damages-too-early", tender.damages.here, message, hints=(hint,))


def p80(schedule: Schedule) -> float:
    """Give the days from arrival to redelivery that four in five stay within, by PERT along the critical path."""
    mean = variance = 0.0
    for one in schedule.critical_chain():
        days = one.node.duration
        expected = (days.low + 4.0 * days.likely + days.high) / 6.0
        stretch = elapsed(1.0, days.week, days.workable)
        mean += elapsed(expected, days.week, days.workable)
        variance += (stretch * (days.high - days.low) / 6.0) ** 2
        variance += elapsed_deviation(expected, days.week, days.workable) ** 2
    return mean + Z80 * math.sqrt(variance)
