"""Nothing is done before the approval that it needs.

Ground: work that was begun without a consent may have to be undone, and a grant may not pay for what was spent before
it was given (common practice, no source). What was done is read from the award and the papers from the dock.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.approval_words import ALL, missed_words
from tenderwright.quantities.customs import day


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each approval before which something was done that it holds up, unless its giver has answered to that."""
    for one in context.approvals.standings if context.approvals is not None else ():
        if one.approval.afterwards or not one.missed:
            continue
        name, who = one.approval.approval, one.approval.given_by
        done = missed_words(one, ALL)
        message = f"approval `{name}` is not given, and was wanted before this: {done}"
        if one.holds:
            message = f"approval `{name}` was given on {day(one.approval.granted)}, after this was done: {done}"
        hints = (
            f"stop what can be stopped, and tell what was done to whoever gives the approval ({who})",
            "write their answer under `afterwards:`",
        )
        yield Notice("approval-missed", one.approval.here, message, hints=hints)
