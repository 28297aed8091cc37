"""A security can still be drawn some time after the event that it waits for.

Rule: it is valid for 30 days or more beyond the day on which it is given back. Ground: the owner needs time to see that
the event did not come, and to ask for the money (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "security-expires-early"
BEYOND = 30
"""Days beyond the event."""


def check(context: Context) -> Iterator[Notice]:
    """Report securities that run out before the event, or less than 30 days after it."""
    contract, tender = context.package.contract, context.package.tender
    if contract is None or tender is None:
        return
    for one in contract.securities:
        released, until = one.released.on(tender.events), one.valid_to.on(tender.events)
        if released is None or until is None:
            context.lacks("it needs `programme` and `dates` in package.yaml")
        elif until < released + timedelta(days=BEYOND):
            message = (
                f"the {one.kind} runs out on {until}, and is given back at {one.released}, planned for {released}: "
                f"less than {BEYOND} days to draw it when that does not come"
            )
            hint = f"let `valid_to` be {released + timedelta(days=BEYOND)} or later, or count it from the event"
            yield Notice(CODE, one.here, message, hints=(hint,))
