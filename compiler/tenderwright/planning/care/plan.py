"""What is done how often: the usual tasks with what the owner wants otherwise, each with when it was last done."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from math import floor

from msgspec import Struct

from tenderwright.calculations.ship.coming_out import last_docked
from tenderwright.calculations.ship.survey_readings import survey_readings
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.care import CareTask
from tenderwright.model.package import Package
from tenderwright.planning.care.usual import BELT, COMMON, DAY, FIRST_YEAR, GAUGING, Usual, usual_for

RARE = 500.0
"""From so many days on, a task is told in years."""


class Task(Struct, frozen=True):
    """A task of the care plan."""

    task: str
    what: str
    days: float
    by: str
    source: str
    last: date | None
    """Day on which a reading last shows it as done."""
    due: date
    left_out: str = ""

    @property
    def often(self) -> str:
        """Say how often."""
        if self.days >= RARE:
            return f"every {self.days / 365.25:.3g} years"
        days = round(self.days)
        exact = {1: "daily", 7: "weekly", 30: "monthly", 91: "quarterly", 182: "half-yearly", 365: "yearly"}
        return exact.get(days) or (f"every {days // 7} weeks" if days % 7 == 0 else f"every {days} days")


def care_tasks(package: Package, calculated: Calculated) -> tuple[Task, ...]:
    """Give the tasks of her care, most often first; those left out stand last."""
    plan = package.care
    own = {one.task: one for one in plan.tasks} if plan is not None else {}
    usual = {one.task: one for one in usual_for(package)}
    made = [_task(one, own.get(one.task), package, calculated) for one in usual.values()]
    made += [_of_her_own(one, package, calculated) for one in own.values() if one.task not in usual]
    return tuple(sorted(made, key=lambda one: (bool(one.left_out), one.days)))


def begins(package: Package) -> date | None:
    """Give the day from which tasks are counted that nothing shows as done; None where nothing tells."""
    if package.care is not None and package.care.begins is not None:
        return package.care.begins
    if package.care_readings:
        return package.care_readings[-1].day
    programme = package.tender.programme if package.tender is not None else None
    return (
        programme.redelivery if programme is not None else max((one.undocked for one in package.history), default=None)
    )


def _task(one: Usual, own: CareTask | None, package: Package, calculated: Calculated) -> Task:
    last = _last(one, package, calculated)
    days, source = one.days, one.source
    docked = calculated.found(last_docked)
    if one.task in FIRST_YEAR and docked is not None and (last or docked) < docked + timedelta(days=365):
        days = FIRST_YEAR[one.task]
    if own is not None and own.every is not None:
        days, source = own.every.si / DAY, own.because or "the owner"
    by = own.by if own is not None and own.by else one.by
    what = own.what if own is not None and own.what else one.what
    return Task(
        one.task, what, days, by, source, last, _due(last, days, package), own.left_out if own is not None else ""
    )


def _of_her_own(own: CareTask, package: Package, calculated: Calculated) -> Task:
    days = own.every.si / DAY if own.every is not None else 365.25
    done = [one.day for one in package.care_readings if one.kind == "other" and one.place == own.task]
    last = max(done, default=None)
    what = own.what or own.task.replace("-", " ").capitalize()
    return Task(
        own.task,
        what,
        days,
        own.by or "shipkeeper",
        own.because or COMMON,
        last,
        _due(last, days, package),
        own.left_out,
    )


def _last(one: Usual, package: Package, calculated: Calculated) -> date | None:
    done = [reading.day for reading in package.care_readings if reading.kind in one.kinds]
    if one.task in (BELT, GAUGING):
        readings = calculated.found(survey_readings)
        done = [date.fromisoformat(survey.last) for survey in readings.counts] if readings is not None else []
    return max(done, default=None)


def _due(last: date | None, days: float, package: Package) -> date:
    from_ = last or begins(package) or date(1980, 1, 1)
    return from_ + timedelta(days=max(1, floor(days))) if last is not None else from_


def kept(package: Package) -> bool:
    """Tell whether the owner keeps a care plan: a file of it, or readings."""
    return package.care is not None or bool(package.care_readings)


def by_often(tasks: tuple[Task, ...]) -> Iterator[tuple[str, list[Task]]]:
    """Yield the tasks that are done, under how often, most often first."""
    found: dict[str, list[Task]] = {}
    for one in tasks:
        if not one.left_out:
            found.setdefault(one.often, []).append(one)
    yield from found.items()
