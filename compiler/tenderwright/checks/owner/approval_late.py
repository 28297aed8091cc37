"""An approval is asked for so early that its answer is there before what it holds up.

Ground: a ship that waits for a letter costs her owner each day, on a tug's hook as on the blocks (common practice, no
source). How long an answer takes is what the register says; days are the package's own.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.approval_words import gate_words, work_of


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each approval that is wanted and late, with what waits for it."""
    for one in context.approvals.standings if context.approvals is not None else ():
        if not one.late or one.next is None:
            continue
        waits = f"{work_of(one)}, {gate_words(one.next)}" if work_of(one) else gate_words(one.next)
        message = f"approval `{one.approval.approval}` is late: {one.late}; what waits for it: {waits}"
        hints = (
            f"ask for it at once, and whether it can come sooner ({one.approval.given_by}); else move what waits",
            "when the answer is there, write `granted:`",
        )
        yield Notice("approval-late", one.approval.here, message, hints=hints)
