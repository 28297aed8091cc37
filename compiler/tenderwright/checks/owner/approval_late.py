"""An approval is asked for so early that its answer is there before what it holds up.

Ground: a ship that waits for a letter costs her owner each day, on a tug's hook as on the blocks (common practice, no
source). How long an answer takes is what the register says; days are the package's own.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.approval_words import ALL, gate_words, work_of
from tenderwright.planning.approvals import REFUSED


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each approval that is wanted and late, with what waits for it."""
    for one in context.approvals.standings if context.approvals is not None else ():
        if not one.late or one.next is None:
            continue
        work = f" ({work_of(one, ALL)})" if work_of(one) else ""
        name, who = one.approval.approval, one.approval.given_by
        message = f"approval `{name}` is late: {one.late}; it holds up {gate_words(one.next)}{work}"
        ask = f"ask for it at once, and whether it can come sooner ({who}); else move what it holds up"
        if one.state == REFUSED:
            ask = f"ask what would have to change ({who}), and ask again; else leave out what it holds up"
        yield Notice("approval-late", one.approval.here, message, hints=(ask, "when it is given, write `granted:`"))
