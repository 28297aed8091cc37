"""The owner's programme: activities with durations, crews and order, and the lines whose quantity counts its days."""

from __future__ import annotations

from dataclasses import dataclass, field

from tenderwright.model.kinds import ItemRef, Time, ValueRef
from tenderwright.notices import Place


@dataclass(frozen=True)
class Crew:
    """A crew of which there are few."""

    crew: str
    count: int
    here: Place = field(compare=False)
    name: str = ""


@dataclass(frozen=True)
class Activity:
    """Something that takes time."""

    activity: str
    item: ItemRef
    here: Place = field(compare=False)
    title: str = ""
    kind: str = "work"
    low: Time | None = None
    likely: Time | None = None
    high: Time | None = None
    after: tuple[str, ...] = ()
    crew: str = ""
    outdoors: bool = False
    afterwards: bool = False
    phase: str = ""


@dataclass(frozen=True)
class DayLine:
    """A line whose quantity is a count of days of the programme."""

    line: str
    days: str
    here: Place = field(compare=False)
    less: int = 0


@dataclass(frozen=True)
class Programme:
    """How long the work takes."""

    week: int
    activities: tuple[Activity, ...]
    here: Place = field(compare=False)
    workable: ValueRef | None = None
    crews: tuple[Crew, ...] = ()
    day_lines: tuple[DayLine, ...] = ()
