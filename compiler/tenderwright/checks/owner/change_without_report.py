"""A change for something found rests on a condition-found report that was accepted.

Ground: what was found, where, why and at which price stands in the report; a change without one cannot be followed
afterwards, neither by trustees nor by a funder (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.in_dock import WAITING
from tenderwright.notices import Notice


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each change that names no report though its cause is a condition found, or one that was not accepted."""
    ledger = context.ledger
    if ledger is None or ledger.last is None:
        return
    reports = {one.name: one for one in ledger.reports}
    for change in ledger.changes:
        order = change.order
        if order.condition is None:
            if order.cause == "condition found":
                message = f"change {change.name} is for a condition found, and names no report"
                yield Notice("change-without-report", order.here, message, hints=("add `condition:`",))
            continue
        report = reports.get(order.condition.name)
        if report is None:
            continue
        state = report.state(order.signed or ledger.last)
        if state in ("rejected", "deferred"):
            message = f"change {change.name} answers report {report.name}, which is {state}"
            hint = "withdraw the change, or decide on the report again"
            yield Notice("change-without-report", order.condition.at, message, hints=(hint,))
        elif state in (WAITING, "") and order.signed is not None:
            message = f"change {change.name} was signed on {order.signed}, before report {report.name} was answered"
            hint = "write `decision:` and `decided:` in the report"
            yield Notice("change-without-report", order.condition.at, message, hints=(hint,))
