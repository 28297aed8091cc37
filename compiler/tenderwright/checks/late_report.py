"""A report is due while what it finds can still be acted on: not after undocking.

Ground: reports early enough that the work they lead to fits the period (NAVSEA FY-21 Standard Items, change 3,
summary); a report due after undocking is among the errors that bidders ask about (common practice, no source). Items
done after undocking, and those of services or administration (waste notes, the docking record), may report at the end.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.notices import Note, Notice

_AT_THE_END = ("services", "administration")


def check(context: Context) -> Iterator[Notice]:
    """Report each report of work before or in dock that is due after undocking."""
    tender = context.package.tender
    if tender is None or tender.programme is None:
        return
    undocking = tender.programme.undocking
    for item in context.live_items:
        if item.phase == "after undocking" or item.system in _AT_THE_END:
            continue
        for index, report in enumerate(item.reports):
            due = report.due.on(tender.events)
            if due is not None and due > undocking:
                message = (
                    f"`{report.report}` of item {item.number} is due {report.due}, {due}, and undocking is {undocking}"
                )
                notes = (Note("the programme is here", tender.programme.here),)
                hint = "let it be due while she is dry, as in `undocking - 2 d`"
                yield Notice("late-report", place_in(item, "reports", index, "due"), message, notes, (hint,))
