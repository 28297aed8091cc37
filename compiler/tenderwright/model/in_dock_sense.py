"""What the shape of a file from the dock cannot say: an answer with its day, a signature with its name, a whole share."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from tenderwright.model.in_dock import WAITING, ChangeOrder, ConditionReport, InDock
from tenderwright.notices import Notice
from tenderwright.reading.source import Path, Source


def in_dock_sense(source: Source, made: InDock) -> list[Notice]:
    """Report what does not fit together within one file."""
    found: list[Notice] = []
    for number, report in enumerate(made.conditions):
        found += _condition(source, ("conditions", number), report)
    for change in made.changes:
        found += _change(change)
    for number, one in enumerate(made.progress):
        if one.done.si > 1:
            at = source.place(("progress", number, "done"))
            message = f"item {one.item} cannot be more than wholly done, got `{one.done}`"
            found.append(Notice("out-of-bounds", at, message))
    return found


def _condition(source: Source, at: Path, report: ConditionReport) -> Iterator[Notice]:
    moment = answer_moment(report)
    if report.answer_by and moment is None:
        message = f"`{report.answer_by}` is not a day and time of the calendar"
        yield Notice("bad-date", source.place((*at, "answer_by")), message)
    if report.decision != WAITING and report.decided is None:
        message = f"report {report.report} is {report.decision}, and its day is missing"
        yield Notice("missing-key", report.here, message, hints=("add `decided:`",))
    if report.decision == WAITING and report.decided is not None:
        message = f"report {report.report} waits for an answer, though it was decided on {report.decided}"
        hint = "write `decision:` as accepted, rejected or deferred"
        yield Notice("missing-key", source.place((*at, "decided")), message, hints=(hint,))


def answer_moment(report: ConditionReport) -> datetime | None:
    """Give the hour by which a report is to be answered as written, a day lasting until its end; None without one."""
    if not report.answer_by:
        return None
    text = report.answer_by if " " in report.answer_by else f"{report.answer_by} 23:59"
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        return None


def _change(change: ChangeOrder) -> Iterator[Notice]:
    if change.signed is not None and change.by is None:
        message = f"change {change.change} is signed, and nobody is named"
        yield Notice("missing-key", change.here, message, hints=("add `by:` with who signed it",))
