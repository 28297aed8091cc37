"""The critical path of a network with the activities on its nodes: earliest and latest times, and floats."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schedule.order import Circle, Links, neighbours, topological_order
from tenderwright.calculations.schema import listed, quantity, record, text

ROUNDING = 1e-9
"""Of the length: a float up to it is rounding and is given as nothing."""

SOURCE = Citation("J. E. Kelley and M. R. Walker, Critical-Path Planning and Scheduling, 1959", standing="from memory")


class Path(Struct, frozen=True):
    """When each activity can and must start and finish, by its place, in the unit of the durations."""

    early_start: tuple[float, ...]
    early_finish: tuple[float, ...]
    late_start: tuple[float, ...]
    late_finish: tuple[float, ...]
    total_float: tuple[float, ...]
    """By how much it can be late without making the whole late; exactly nothing where it is critical."""
    free_float: tuple[float, ...]
    """By how much it can be late without making any other activity late."""
    critical: tuple[bool, ...]
    length: float
    order: tuple[int, ...]
    """The activities so that each stands after all that come before it."""


def critical_path(durations: Sequence[float], links: Links) -> Path:
    """Work a network through, forward for the earliest times and backward for the latest.

    Formula: ES_j = max EF_i over what comes before j, or 0; EF = ES + d; L = max EF; LF_i = min LS_j over what comes
    after i, or L; LS = LF - d; total float = LS - ES; free float = min ES_j - EF_i, or L - EF_i; critical where the
    total float is nothing, that is no more than `ROUNDING` of L. Symbols: durations d in any one unit of time, none
    less than 0; links as pairs of places. Source: `SOURCE`. Raises OutOfRange, and Circle where activities wait for
    each other.
    """
    if not all(math.isfinite(duration) and duration >= 0.0 for duration in durations):
        raise OutOfRange("a duration must be a number, no less than nothing")
    count = len(durations)
    order = topological_order(count, links)
    before, after = neighbours(count, links)
    start, finish = [0.0] * count, [0.0] * count
    for place in order:
        start[place] = max((finish[other] for other in before[place]), default=0.0)
        finish[place] = start[place] + durations[place]
    length = max(finish, default=0.0)
    late_start, late_finish = [0.0] * count, [0.0] * count
    for place in reversed(order):
        late_finish[place] = min((late_start[other] for other in after[place]), default=length)
        late_start[place] = late_finish[place] - durations[place]
    total = [_float(late - early, length) for early, late in zip(start, late_start, strict=True)]
    free = [
        _float(min((start[other] for other in after[place]), default=length) - finish[place], length)
        for place in range(count)
    ]
    return Path(
        tuple(start),
        tuple(finish),
        tuple(late_start),
        tuple(late_finish),
        tuple(total),
        tuple(free),
        tuple(slack == 0.0 for slack in total),
        length,
        order,
    )


def _float(slack: float, length: float) -> float:
    return slack if slack > ROUNDING * length else 0.0


def driving(path: Path, links: Links, place: int) -> tuple[int, ...]:
    """Give what comes straight before an activity and finishes just when it starts: what it waits for to the last."""
    before, _ = neighbours(len(path.order), links)
    slack = ROUNDING * path.length
    return tuple(other for other in before[place] if path.early_finish[other] >= path.early_start[place] - slack)


def _kernel(activities: Sequence[Mapping[str, Any]]) -> Mapping[str, Any]:
    names = [activity["name"] for activity in activities]
    places = {name: place for place, name in enumerate(names)}
    if len(places) < len(names):
        raise OutOfRange("each activity must have a name of its own")
    links = []
    for place, activity in enumerate(activities):
        for name in activity.get("after", ()):
            if name not in places:
                raise OutOfRange(f"{activity['name']} comes after {name}, which is none of the activities")
            links.append((places[name], place))
    try:
        path = critical_path([activity["duration"] for activity in activities], links)
    except Circle as circle:
        named = ", ".join(names[place] for place in circle.places)
        raise OutOfRange(f"activities come after each other in a circle: {named}") from circle
    return {
        "length": path.length,
        "critical": [names[place] for place in path.order if path.critical[place]],
        "early_start": list(path.early_start),
        "early_finish": list(path.early_finish),
        "late_start": list(path.late_start),
        "late_finish": list(path.late_finish),
        "total_float": list(path.total_float),
        "free_float": list(path.free_float),
    }


METHOD = Method(
    name="time.critical-path",
    title="Critical path of a programme",
    formula="ES = max EF before, EF = ES + d, LF = min LS after, LS = LF − d, float = LS − ES",
    source=SOURCE,
    valid="each activity starts once all that come before it are finished; crews and space are not looked at",
    inputs={
        "activities": listed(
            record(
                "One activity.",
                ("name", "duration"),
                name=text("Name, another for each activity."),
                duration=quantity("time", "How long it takes."),
                after=listed(text("Name of an activity."), "Activities that are finished before it starts.", 0),
            ),
            "The activities; results stand in the order given.",
        )
    },
    outputs=(
        Symbol("length", "time of the whole", "time", "d"),
        Symbol("critical", "activities without float", "text", ""),
        Symbol("early_start", "earliest start of each activity", "time", "d"),
        Symbol("early_finish", "earliest finish of each activity", "time", "d"),
        Symbol("late_start", "latest start that keeps the length", "time", "d"),
        Symbol("late_finish", "latest finish that keeps the length", "time", "d"),
        Symbol("total_float", "float without making the whole late", "time", "d"),
        Symbol("free_float", "float without making another activity late", "time", "d"),
    ),
    kernel=_kernel,
    example={
        "activities": [
            {"name": "dock", "duration": "1 d"},
            {"name": "wash", "duration": "1 d", "after": ["dock"]},
            {"name": "survey", "duration": "2 d", "after": ["wash"]},
            {"name": "answer", "duration": "3 d", "after": ["survey"]},
            {"name": "plate", "duration": "6 d", "after": ["answer"]},
            {"name": "valves", "duration": "5 d", "after": ["dock"]},
            {"name": "coat", "duration": "4 d", "after": ["plate"]},
            {"name": "undock", "duration": "1 d", "after": ["coat", "valves"]},
        ]
    },
    cautions=("with uncertain durations the mean time of the whole is longer than this path at mean durations",),
)
