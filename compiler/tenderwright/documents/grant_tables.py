"""The figures of an application as tables for a spreadsheet; each adds up to the whole cost."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.documents.edition import DataTable
from tenderwright.documents.grant_desk import ApplicationDesk
from tenderwright.planning.application import Split
from tenderwright.planning.grant_dates import item_dates, phase_dates
from tenderwright.planning.grant_outputs import outputs
from tenderwright.quantities.display import shown_unit

_Cells = tuple[str | int | Decimal | None, ...]


def budget_table(desk: ApplicationDesk) -> DataTable:
    """Make the table of categories, without sums."""
    currency = desk.tender.currency
    rows: list[_Cells] = [
        (
            group.title,
            row.category.category,
            row.category.title,
            currency,
            row.split.total,
            row.split.granted,
            row.split.grant,
            row.split.match,
            row.split.not_eligible,
        )
        for group in desk.applied.groups
        for row in group.rows
    ]
    header = ("group", "category", "title", "currency", "total", "granted_by_others", "grant", "match", "not_eligible")
    return DataTable(header, tuple(rows))


def phases_table(desk: ApplicationDesk) -> DataTable:
    """Make the table of phases, which add up to the whole cost."""
    days = {
        one.phase.phase: one for one in phase_dates(desk.applied.grant, item_dates(desk.applied.chosen, desk.schedule))
    }
    rows: list[_Cells] = []
    for row in desk.applied.phases:
        when = days[row.phase.phase] if row.phase is not None else None
        begins, ends = (when.begins, when.ends) if when is not None else (None, None)
        rows.append(
            (
                row.phase.phase if row.phase is not None else "",
                row.phase.title if row.phase is not None else "",
                begins.isoformat() if begins is not None else None,
                ends.isoformat() if ends is not None else None,
                desk.tender.currency,
                *_payers(row.split),
            )
        )
    return DataTable(("phase", "title", "begins", "ends", "currency", *_PAYERS), tuple(rows))


def alternatives_table(desk: ApplicationDesk) -> DataTable:
    """Make the table of what is asked for either or; each is a whole of its own."""
    rows: list[_Cells] = [
        (
            number,
            one.alternative.title,
            " ".join(priced.item.number for priced in one.application.chosen.work),
            desk.tender.currency,
            *_payers(one.application.whole),
        )
        for number, one in enumerate(desk.applied.alternatives, start=1)
    ]
    return DataTable(("alternative", "title", "items", "currency", *_PAYERS), tuple(rows))


_PAYERS = ("total", "granted_by_others", "grant", "match", "not_eligible")


def _payers(split: Split) -> _Cells:
    return split.total, split.granted, split.grant, split.match, split.not_eligible


def items_table(desk: ApplicationDesk) -> DataTable:
    """Make the table of items, services by their part, costs outside and gifts, without sums."""
    days = {one.item.number: one for one in item_dates(desk.applied.chosen, desk.schedule)}
    work = {one.item.number: one for one in desk.applied.chosen.work}
    rows: list[_Cells] = []
    for row in desk.applied.rows:
        own, when = work.get(row.number), days.get(row.number)
        sure = desk.outlook.by_item.get(row.number, {}) if own is not None else {}
        rows.append(
            (
                row.sort,
                row.number,
                row.title,
                desk.tender.currency,
                row.likely,
                row.contingency,
                row.split.total,
                row.split.granted,
                row.split.grant,
                row.split.match,
                row.split.not_eligible,
                own.shared if own is not None and not own.is_shared else None,
                sure.get(0.50),
                sure.get(0.80),
                when.begins.isoformat() if when is not None and when.begins is not None else None,
                when.ends.isoformat() if when is not None and when.ends is not None else None,
                row.barred,
            )
        )
    header = (
        "sort", "item", "title", "currency", "likely", "contingency", "total", "granted_by_others", "grant", "match",
        "not_eligible", "services_carried", "p50", "p80", "begins", "ends", "why_not_eligible",
    )  # fmt: skip
    return DataTable(header, tuple(rows))


def outputs_table(desk: ApplicationDesk) -> DataTable:
    """Make the table of what can be counted."""
    rows: list[_Cells] = [
        (
            one.item,
            one.line,
            one.what,
            one.ordered,
            one.contingent,
            shown_unit(one.unit),
            "stated" if one.stated else "",
        )
        for one in outputs(desk.applied.grant, desk.applied.chosen)
    ]
    return DataTable(("item", "line", "output", "ordered", "contingent", "unit", "stated"), tuple(rows))
