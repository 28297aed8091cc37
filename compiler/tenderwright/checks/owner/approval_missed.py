"""Nothing is done before the approval that it needs.

Ground: work that was begun without a consent may have to be undone, and a grant may not pay for what was spent before
it was given (common practice, no source). What was done is read from the award and the papers from the dock.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.approval_words import gate_words
from tenderwright.quantities.customs import day


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each approval before which something was done that it holds up, unless its giver has answered to that."""
    for one in context.approvals.standings if context.approvals is not None else ():
        if one.approval.afterwards:
            continue
        for event in one.missed:
            name, who = one.approval.approval, one.approval.given_by
            given = (
                f"was given on {day(one.approval.granted)}, after" if one.approval.granted else "is not given, before"
            )
            message = f"approval `{name}` {given} this: {gate_words(event, done=True)}"
            hints = (
                f"stop what can be stopped, and tell what was done to whoever gives the approval ({who})",
                "write their answer under `afterwards:`",
            )
            yield Notice("approval-missed", one.approval.here, message, hints=hints)
