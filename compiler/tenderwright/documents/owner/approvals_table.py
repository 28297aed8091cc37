"""The register of approvals as a table for a spreadsheet: a row for each thing that an approval holds up."""

from __future__ import annotations

from datetime import date

from tenderwright.documents.edition import DataTable
from tenderwright.documents.owner.approvals import NO_SOURCE, register_of
from tenderwright.documents.owner.desk import OwnerDesk

_HEADER = (
    *("approval", "title", "kind", "given_by", "holds_up", "on", "items", "state", "late"),
    *("ask_by", "lead_days", "lead_source", "asked", "expected", "granted", "expires", "paper"),
)


def approvals_table(desk: OwnerDesk) -> DataTable | None:
    """Make the table; None where the owner keeps no register."""
    kept = register_of(desk)
    if kept is None:
        return None
    rows = []
    for one in kept.standings:
        approval, lead = one.approval, one.lead
        source = approval.lead_source or NO_SOURCE if lead is not None else ""
        items = " ".join(item.name for item in approval.items)
        own = (approval.approval, approval.title, approval.kind, approval.given_by)
        days = (_day(approval.asked), _day(one.expected), _day(approval.granted), _day(approval.expires))
        rows += [
            (
                *(*own, event.gate, _day(event.day), items, one.state, one.late),
                *(_day(one.ask_by), lead, source, *days, approval.paper),
            )
            for event in one.events
        ]
    return DataTable(_HEADER, tuple(rows))


def _day(when: date | None) -> str | None:
    return when.isoformat() if when is not None else None
