"""What an approval asks for is done before that which it allows.

Ground: an approval under a condition holds only as the condition is met (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.approval_words import gate_words
from tenderwright.quantities.customs import day


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each condition that was not met by the day of what it has to be met before."""
    for one in context.approvals.standings if context.approvals is not None else ():
        if not one.holds or one.approval.afterwards:
            continue
        for asked in one.conditions:
            if not asked.unmet:
                continue
            met = f"was met on {day(asked.condition.met)}" if asked.condition.met else "is not met"
            before = gate_words(asked.event)
            message = f"a condition of approval `{one.approval.approval}` {met}, and was wanted before this: {before}"
            who = one.approval.given_by
            hints = (
                f"meet it, tell this to whoever gave the approval ({who}), and write `met:` with the day",
                "where it came too late, write their answer under `afterwards:` of the approval",
            )
            yield Notice("approval-condition-unmet", asked.condition.here, message, hints=hints)
