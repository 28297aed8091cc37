"""A condition-found report is answered by its hour.

Ground: a gang that waits is paid for, and a dock that waits costs its day; the yard's reports and the owner's answers
have hours so that the work which follows fits the docking (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each condition-found report that waits beyond its hour on the last day that is told of."""
    ledger = context.ledger
    if ledger is None or ledger.last is None:
        return
    for one in ledger.reports:
        late = one.overdue(ledger.last)
        if late and one.due is not None:
            days = "a day" if late == 1 else f"{late} days"
            message = f"report {one.name} was to be answered by {one.due:%Y-%m-%d %H:%M}, {days} before {ledger.last}"
            hint = "answer it, and write `decision:`, `decided:` and `by:`"
            yield Notice("answer-overdue", one.report.here, message, hints=(hint,))
