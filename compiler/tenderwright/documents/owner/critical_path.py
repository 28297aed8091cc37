"""The critical path in words and as a table: what holds her, item by item, from arrival to redelivery."""

from __future__ import annotations

from datetime import date
from typing import Literal

from tenderwright.documents.edition import Column, Row, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.parts.condition import percent
from tenderwright.planning.outlook import TimeOutlook
from tenderwright.planning.schedule import Schedule, Scheduled
from tenderwright.quantities.customs import day_of_year
from tenderwright.quantities.display import decimals

Run = list[Scheduled]
"""Work of one item that stands together on the path."""
Stage = Literal["Before she is dry", "On blocks", "Afloat again"]
_PART = 1e-6


def path_in_words(schedule: Schedule) -> str:
    """Name the work along the critical path, each item once for as long as it runs on."""
    named = [lower(run[0].node.title) for run in _runs(schedule)]
    return "; ".join([*named[:-1], f"and last {named[-1]}"] if len(named) > 1 else named)


def greatest_on_blocks(schedule: Schedule, count: int = 3) -> list[tuple[str, float]]:
    """Give the items that take the most of the days on blocks along the critical path, with their days."""
    days: dict[str, float] = {}
    for one in schedule.critical_chain():
        if one.node.item is not None and _stage(one, schedule) == "On blocks":
            days[one.node.item.number] = days.get(one.node.item.number, 0.0) + one.finish - one.start
    return sorted(days.items(), key=lambda found: (-found[1], found[0]))[:count]


def path_table(desk: OwnerDesk, schedule: Schedule, time: TimeOutlook | None) -> Table:
    """Set out the critical path by stage, with its days added up."""
    rows: list[Row] = []
    runs = _runs(schedule)
    for stage in ("Before she is dry", "On blocks", "Afloat again"):
        mine = [run for run in runs if _stage(run[-1], schedule) == stage]
        if mine:
            rows.append(Row((inline(stage),), "group"))
            rows += [_row(desk, run, time) for run in mine]
            rows.append(_sum("Together", sum(map(_days, mine)), mine[-1][-1].finish))
    rows.append(_sum("From arrival to redelivery", schedule.yard_days, schedule.yard_days, "total"))
    columns = [
        Column("Item", width=0.7),
        Column("Work on the critical path", width=6),
        Column("Starts", width=1.2),
        Column("Ends", width=1.2),
        Column("Days", "decimal", 0.9),
        Column("From arrival", "decimal", 1),
    ]
    words = "Days that pass, at likely durations; on blocks from the end of docking to the end of undocking."
    if time is not None:
        columns.append(Column("Critical in trials", "right", 1))
        words += (
            " Critical in trials: the share of the trials in which the work holds the redelivery, "
            "the least of the activities of the row."
        )
    return Table(tuple(columns), tuple(rows), note=inline(words), small=True)


def _row(desk: OwnerDesk, run: Run, time: TimeOutlook | None) -> Row:
    item = run[0].node.item
    titles = [run[0].node.title, *(lower(one.node.title) for one in run[1:])]
    cells = (
        inline(desk.item_ref(item.number)) if item else (),
        inline("; ".join(titles)),
        inline(short_date(run[0].begins)),
        inline(short_date(run[-1].ends)),
        inline(decimals(_days(run), 2)),
        inline(decimals(run[-1].finish, 2)),
    )
    if time is None:
        return Row(cells)
    return Row((*cells, inline(percent(min(time.critical[one.node.name] for one in run)))))


def _sum(name: str, days: float, until: float, weight: Literal["subtotal", "total"] = "subtotal") -> Row:
    return Row(((), inline(name), (), (), inline(decimals(days, 2)), inline(decimals(until, 2)), ()), weight)


def _runs(schedule: Schedule) -> list[Run]:
    """Break the critical path into runs of one item in one stage, what takes no time left out."""
    runs: list[Run] = []
    for one in schedule.critical_chain():
        if one.finish - one.start <= _PART:
            continue
        last = runs[-1][-1] if runs else None
        same = last is not None and one.node.item is not None and last.node.item is one.node.item
        if same and last is not None and _stage(last, schedule) == _stage(one, schedule):
            runs[-1].append(one)
        else:
            runs.append([one])
    return runs


def _days(run: Run) -> float:
    return run[-1].finish - run[0].start


def _stage(one: Scheduled, schedule: Schedule) -> Stage:
    finish, network = schedule.path.early_finish, schedule.network
    if one.finish <= finish[network.of_kind("docking")] + _PART:
        return "Before she is dry"
    return "On blocks" if one.finish <= finish[network.of_kind("undocking")] + _PART else "Afloat again"


def lower(title: str) -> str:
    """Begin a title with a small letter, unless it begins with an abbreviation."""
    return title if title[1:2].isupper() else title[:1].lower() + title[1:]


def short_date(when: date | None) -> str:
    """Write a date as `3 May`; a dash where there is none."""
    return day_of_year(when, short=True)
