"""The dates on which reports, deliveries and decisions fall, by the programme of the tender."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from tenderwright.model.day import Day
from tenderwright.model.item import Item
from tenderwright.model.package import Package


@dataclass(frozen=True)
class Due:
    """Something due: what, from which item, when by the rule and when by the calendar."""

    item: Item
    what: str
    day: Day
    date: date | None
    more: str = ""


def _sorted(found: list[Due]) -> list[Due]:
    return sorted(found, key=lambda due: (due.date or date.max, due.item.item, due.what))


def reports_due(package: Package) -> list[Due]:
    """List the reports of all live items by the day they are due."""
    events = package.tender.events if package.tender else {}
    return _sorted(
        [
            Due(item, report.report, report.due, report.due.on(events), report.copies)
            for item in package.items
            if not item.withdrawn
            for report in item.reports
        ]
    )


def deliveries_due(package: Package) -> list[Due]:
    """List the owner-furnished material of all live items by the day it is delivered."""
    events = package.tender.events if package.tender else {}
    return _sorted(
        [
            Due(
                item,
                entry.what,
                entry.delivered,
                entry.delivered.on(events),
                f"{entry.quantity}; {entry.where}".rstrip("; "),
            )
            for item in package.items
            if not item.withdrawn
            for entry in item.owner_furnished
            if entry.delivered is not None
        ]
    )
