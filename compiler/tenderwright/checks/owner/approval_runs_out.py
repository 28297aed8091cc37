"""An approval holds until all is done that it is for.

Ground: a certificate or cover that has run out on the day is none (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.approval_words import gate_words
from tenderwright.quantities.customs import day


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each approval whose last day is before something that it is for."""
    for one in context.approvals.standings if context.approvals is not None else ():
        if (event := one.outlived) is not None:
            last = day(one.approval.expires)
            message = (
                f"approval `{one.approval.approval}` runs out on {last}, and is wanted for this: {gate_words(event)}"
            )
            hints = (
                f"have it prolonged by whoever gives it ({one.approval.given_by})",
                "when the letter is there, write the new day under `expires:`",
            )
            yield Notice("approval-runs-out", one.approval.here, message, hints=hints)
