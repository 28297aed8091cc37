"""Activities that share a limited number of crews: which activity hands its crew on to which."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from heapq import heapify, heappop, heappush

from tenderwright.calculations.method import Citation, OutOfRange
from tenderwright.calculations.schedule.critical_path import ROUNDING, Path, critical_path
from tenderwright.calculations.schedule.order import Links, neighbours

SOURCE = Citation(
    "R. Kolisch, Serial and parallel resource-constrained project scheduling methods revisited",
    "European Journal of Operational Research 90 (1996), 320",
    standing="from memory",
)


def crew_links(
    durations: Sequence[float],
    links: Links,
    needs: Sequence[str],
    capacity: Mapping[str, int],
    names: Sequence[str] | None = None,
) -> tuple[tuple[int, int], ...]:
    """Give the links by which crews go from one activity to another, so that no more work at once than there are.

    Method: serial schedule generation. Activities are taken by latest start, each once all before it are placed, and
    placed at the earliest time at which a crew is free throughout; then the crews are told apart and each goes from
    activity to activity. The critical path over `links` and the links given here is that schedule. Where one activity
    comes before the next by other links already, none is added. Symbols: needs, the crew of each activity, empty where
    it needs none; an activity that takes no time needs none either; capacity, how many crews there are of each kind;
    names settle which of two equally urgent activities goes first, else the place does. Source: `SOURCE`; handing
    over, derived. The schedule is feasible and good, but not proved shortest. Raises OutOfRange, and Circle.
    """
    count = len(durations)
    if len(needs) != count or (names is not None and len(names) != count):
        raise OutOfRange("give as many crews and names as there are activities")
    for place, crew in enumerate(needs):
        if crew and capacity.get(crew, 0) < 1:
            raise OutOfRange(f"activity {place} needs the crew {crew}, of which there is none")
    path = critical_path(durations, links)
    least = ROUNDING * path.length
    manned = [crew if duration > least else "" for crew, duration in zip(needs, durations, strict=True)]
    rank = list(zip(path.late_start, names or [""] * count, range(count), strict=True))
    starts = _starts(durations, links, manned, capacity, rank)
    return _handed(durations, links, manned, capacity, starts, path)


def _starts(
    durations: Sequence[float],
    links: Links,
    needs: Sequence[str],
    capacity: Mapping[str, int],
    rank: Sequence[tuple[float, str, int]],
) -> list[float]:
    """Place each activity at the earliest time that its links and its crew allow, by rank."""
    before, after = neighbours(len(durations), links)
    waits = [len(places) for places in before]
    free = [one for one in rank if not waits[one[2]]]
    heapify(free)
    busy: dict[str, list[tuple[float, float]]] = {crew: [] for crew in needs if crew}
    starts = [0.0] * len(durations)
    while free:
        place = heappop(free)[2]
        start = max((starts[other] + durations[other] for other in before[place]), default=0.0)
        crew = needs[place]
        if crew:
            for since, until in _all_busy(busy[crew], capacity[crew]):
                if since < start + durations[place] and until > start:
                    start = until
            busy[crew].append((start, start + durations[place]))
        starts[place] = start
        for follower in after[place]:
            waits[follower] -= 1
            if not waits[follower]:
                heappush(free, rank[follower])
    return starts


def _all_busy(busy: Sequence[tuple[float, float]], count: int) -> list[tuple[float, float]]:
    """Give the times, in order, at which all crews of a kind are at work."""
    changes = sorted([(start, 1) for start, _ in busy] + [(finish, -1) for _, finish in busy])
    found, working, since = [], 0, 0.0
    for time, change in changes:
        if change < 0 and working == count:
            found.append((since, time))
        working += change
        if change > 0 and working == count:
            since = time
    return found


def _handed(
    durations: Sequence[float],
    links: Links,
    needs: Sequence[str],
    capacity: Mapping[str, int],
    starts: Sequence[float],
    path: Path,
) -> tuple[tuple[int, int], ...]:
    """Tell the crews apart, each taking up the activities in order of their starts, and link what it does in turn.

    An activity takes a crew that comes from work which it waits for anyhow, else a fresh one, else the one last free.
    """
    at = {place: turn for turn, place in enumerate(path.order)}
    before, _ = neighbours(len(durations), links)
    crews: dict[str, list[int]] = {kind: [] for kind in needs if kind}
    """By kind, the activity that each crew at work so far did last."""
    behind = [0] * len(durations)
    """By activity, a bit for each that comes before it, near or far."""
    found = []
    for place in sorted(range(len(durations)), key=lambda one: (starts[one], at[one])):
        for other in before[place]:
            behind[place] |= behind[other] | 1 << other
        if not needs[place]:
            continue
        lasts = crews[needs[place]]
        idle = [crew for crew, last in enumerate(lasts) if starts[last] + durations[last] <= starts[place]]
        known = [crew for crew in idle if behind[place] >> lasts[crew] & 1]
        if not known and len(lasts) < capacity[needs[place]]:
            lasts.append(place)
            continue
        crew = max(known or idle, key=lambda one: (starts[lasts[one]] + durations[lasts[one]], -one))
        last, lasts[crew] = lasts[crew], place
        if not known:
            found.append((last, place))
            behind[place] |= behind[last] | 1 << last
    return tuple(found)
