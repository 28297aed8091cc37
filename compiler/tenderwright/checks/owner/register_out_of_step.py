"""What comes back was out before: plugs and openings are closed after they were opened, and tested after that.

Ground: as many plugs go back as were drawn, and a test before closing proves nothing (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.inspection.in_words import row_name
from tenderwright.planning.inspection.results import RowResult


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report rows that are closed and never were open, or whose days run backwards."""
    for row in context.inspected.rows:
        if row.told and (why := _why(row)):
            message = f"{row_name(context.package, row.row)} {why}"
            hint = "look in the register at the dock which day is wrong, and count the plugs out and in"
            yield Notice("register-out-of-step", row.told[-1].here, message, hints=(hint,))


def _why(row: RowResult) -> str:
    opened, closed, tested = row.said("opened"), row.said("closed"), row.said("tested")
    if closed is not None and opened is None:
        return f"was closed on {closed}, and no paper says that it was opened"
    if tested is not None and closed is None:
        return f"was tested on {tested}, and no paper says that it was closed"
    if tested is not None and closed is not None and tested < closed:
        return f"was tested on {tested}, before it was closed on {closed}"
    return ""
