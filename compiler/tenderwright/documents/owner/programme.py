"""How long the docking takes: the critical path, days on blocks, the bar chart, and every activity with its dates."""

from __future__ import annotations

import math
from collections.abc import Mapping

from tenderwright.documents.desk import capital, joined
from tenderwright.documents.drawings.bar_chart import bar_chart
from tenderwright.documents.edition import (
    Block,
    Column,
    Facts,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.owner.approvals import beside_the_work
from tenderwright.documents.owner.cost_risk import level_name, of_hundred
from tenderwright.documents.owner.critical_path import (
    greatest_on_blocks,
    lower,
    path_in_words,
    path_table,
    short_date,
)
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.prices_by_item import OWNER
from tenderwright.documents.owner.risks import counted, risk_name
from tenderwright.documents.parts.condition import percent
from tenderwright.model.programme import Programme
from tenderwright.planning.foresight import Foresight
from tenderwright.planning.network import Link
from tenderwright.planning.outlook import TimeOutlook
from tenderwright.planning.schedule import Schedule, Scheduled
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals

_TOLD = (0.10, 0.20, 0.50, 0.80, 0.90)


def programme(desk: OwnerDesk) -> Part | None:
    """Compose the programme; None where the owner has none."""
    seen = desk.foresight
    if seen is None or seen.schedule is None:
        return None
    schedule, time = seen.schedule, seen.outlook.time
    blocks: list[Block] = [
        Paragraph(inline(in_words(schedule, time))),
        Paragraph(inline(f"What holds her is, one after the other: {path_in_words(schedule)}.")),
        Paragraph(inline(_beside_practice(schedule))),
        Heading("The critical path"),
        path_table(desk, schedule, time),
        *beside_the_work(desk),
        Heading("How days were counted"),
        Facts(tuple(_reckoned(desk, seen, schedule))),
        *bar_chart(desk.package, schedule),
        Heading("Activities"),
        _activities(desk, schedule, time),
    ]
    title = "How long it takes"
    return Part("owner-programme", "", title, "schedule", OWNER, tuple(blocks), landscape=True, caution=True)


def in_words(schedule: Schedule, time: TimeOutlook | None) -> str:
    """Say in plain words how long she stands on blocks and is in the yard."""
    dock, yard = decimals(schedule.dock_days, 1), decimals(schedule.yard_days, 1)
    words = f"At likely durations she stands on blocks for {dock} days and is in the yard for {yard}"
    if schedule.arrival is not None:
        words += f", from {day(schedule.arrival)} to {day(schedule.day(schedule.yard_days, last=True))}"
    words += ". "
    if time is not None:
        middle, four_of_five = decimals(time.dock[0.50], 1), decimals(time.dock[0.80], 1)
        words += f"Half the trials took no more than {middle} days on blocks (P50), four of five no more than "
        words += f"{four_of_five} (P80). "
    if schedule.dock_days_tendered is not None:
        words += f"The tender asks for {schedule.dock_days_tendered}"
        if time is not None and time.within_tendered is not None:
            words += f", which were enough in {of_hundred(time.within_tendered)} trials"
        words += "."
    return words.rstrip()


def _beside_practice(schedule: Schedule) -> str:
    most = joined([f"item {number} ({decimals(days, 1)} d)" for number, days in greatest_on_blocks(schedule)])
    words = (
        "Beside common practice, no source: wash, spot repair, blanking and coating of a museum ship take about three "
        f"weeks dry. This programme keeps her dry for {decimals(schedule.dock_days, 1)} days"
    )
    return words + (f"; along the critical path the most of them go to {most}." if most else ".")


def _reckoned(desk: OwnerDesk, seen: Foresight, schedule: Schedule) -> list[tuple[str, Inline]]:
    """Say how week, weather, crews and the rest were reckoned."""
    papers, time = seen.papers.programme, seen.outlook.time
    assert papers is not None
    week = (
        f"{papers.week} days worked in seven: a day's work takes {decimals(7 / papers.week, 2)} days that pass. No "
        "Sunday or holiday is laid on its own date."
    )
    passing = (
        "Go on through every day of the week, whatever the weather. "
        "The owner's answering time at a gate is an activity like any other."
    )
    found: list[tuple[str, Inline]] = [
        ("Week", inline(week)),
        ("Weather", _weather(desk, papers, schedule)),
        ("Crews", inline(_crews(papers))),
        ("Hardening and answers", inline(passing)),
    ]
    late = joined([risk_name(risk) for risk in counted(seen.papers) if risk.days_high is not None])
    if late and time is not None:
        words = f"Where they happen, the further days of these come on top of the days on blocks: {late}."
        found.append(("Risks", inline(words)))
    if time is not None:
        found.append(("Trials, on blocks", inline(_levels(time.dock) + f"; {decimals(time.mean_dock, 1)} on average.")))
        found.append(("Trials, in the yard", inline(_levels(time.yard) + ".")))
        if (begin := _damages(desk, time)) is not None:
            found.append(("Damages for lateness", inline(begin)))
    return found


def _damages(desk: OwnerDesk, time: TimeOutlook) -> str | None:
    """Hold the day from which damages are paid against the trials; None where the tender asks for none."""
    damages, stay = desk.tender.damages, desk.tender.stay
    if damages is None or stay is None:
        return None
    begin, likely = stay + damages.after, math.ceil(time.yard[0.80] - 1e-6)
    words = f"They begin {begin} days after arrival; four trials in five were delivered again within {likely}"
    if begin < likely:
        return f"{words}. That is too early: they fall on a yard that is no slower than this programme expects."
    return f"{words}, so that they fall on what is slower than this programme expects."


def _weather(desk: OwnerDesk, papers: Programme, schedule: Schedule) -> Inline:
    nodes = [node for node in schedule.network.nodes if node.source is not None]
    outdoors = sum(1 for node in nodes if node.source is not None and node.source.outdoors and node.kind == "work")
    workable = desk.record.values.get(papers.workable.name) if papers.workable else None
    if workable is None or not outdoors:
        return inline("Not counted: no activity is marked as out of doors, or no workable share is named.")
    return inline(
        f"{outdoors} of {len(nodes)} activities lie out of doors and go on for {percent(float(workable.si))} of the "
        "days worked (",
        Span(workable.name, desk.anchor("value", workable.name), code=True),
        "). The trials draw the days lost one by one, so that spells of bad weather are not in them.",
    )


def _crews(papers: Programme) -> str:
    named = "; ".join(f"{crew.count} × {crew.name or crew.crew}" for crew in papers.crews)
    if not named:
        return "Not limited."
    return (
        f"{capital(named)}. Activities that want the same crew wait for each other, in the order of the likely "
        "durations; the trials keep that order."
    )


def _levels(days: Mapping[float, float]) -> str:
    return ", ".join(f"{level_name(level)} {decimals(days[level], 1)} d" for level in _TOLD)


def _activities(desk: OwnerDesk, schedule: Schedule, time: TimeOutlook | None) -> Table:
    rows = [_activity(desk, one, schedule, time) for one in schedule.activities]
    columns = [
        Column("Item", width=0.7),
        Column("Activity", width=3.6),
        Column("Low – likely – high, d", width=1.7),
        Column("Starts", width=1.1),
        Column("Ends", width=1.1),
        Column("Takes, d", "decimal", 0.9),
        Column("Float, d", "decimal", 0.9),
    ]
    columns += [Column("Critical in trials", "right", 0.9)] if time else []
    columns.append(Column("Waits for", width=4))
    note = inline(
        "Low, likely and high in days worked; hardening and answers in days that pass. Takes: likely days that pass. "
        "Float: how late it may end without making the redelivery late. Starts and ends: the first and the last day on "
        "which it is done."
    )
    return Table(tuple(columns), tuple(rows), note=note, small=True)


def _activity(desk: OwnerDesk, one: Scheduled, schedule: Schedule, time: TimeOutlook | None) -> Row:
    node, days = one.node, one.node.duration
    ends = (days.likely,) if days.low == days.high else (days.low, days.likely, days.high)
    milestone = days.high == 0
    cells: list[Inline] = [
        inline(desk.item_ref(node.item.number)) if node.item else (),
        inline(Span(node.title, strong=one.critical)),
        inline("–" if milestone else " – ".join(map(_short, ends))),
        inline(short_date(one.begins) if one.begins else decimals(one.start, 2)),
        inline(short_date(one.ends) if one.ends else decimals(one.finish, 2)),
        inline("–" if milestone else decimals(one.finish - one.start, 2)),
        inline(Span("critical", strong=True)) if one.critical else inline(decimals(one.total_float, 2)),
    ]
    cells += [inline(percent(time.critical[node.name]))] if time else []
    return Row((*cells, inline("; ".join(waits_for(link, schedule) for link in one.driven_by) or "–")))


def waits_for(link: Link, schedule: Schedule) -> str:
    """Say what an activity waits for, and why where its name does not say so."""
    before = schedule.network.nodes[link.before]
    name, why = lower(before.title), link.why
    if why.startswith("item ") and before.item is not None:
        return f"{name} (item {before.item.number})"
    said = why.startswith(("after ", "from her arrival")) or why.lower().startswith(name.lower())
    return name if said else f"{name} ({why})"


def _short(days: float) -> str:
    """Write days to two significant digits."""
    return decimals(days, 0) if days >= 10 else f"{days:.2g}"
