"""A docking is not closed over a row that was open when she floated, where results are recorded at all."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.checks.owner.floated_on_open_row import HINT
from tenderwright.notices import Notice
from tenderwright.planning.inspection.in_words import listed
from tenderwright.planning.inspection.ordered import inspected_in_dock


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report the day of floating where the papers from the dock leave something open on it."""
    day = context.findings.dates.undocked
    found = inspected_in_dock(context.package, context.papers, context.ledger, day)
    if found.in_use and (open_ := found.keeping_from("docking", "flooding")):
        message = f"she was floated on {day} while this was open: {listed(context.package, open_)}"
        yield Notice("floated-on-open-row", context.at("dates", "undocked"), message, hints=(HINT,))
