"""How many days the work that is left takes on blocks, along its critical path."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from tenderwright.planning.network import Network
from tenderwright.planning.schedule import Schedule, dock_days

_NOTHING = 1e-9


def days_needed(schedule: Schedule, done: Mapping[str, float], out: Collection[str] = (), *, docked: bool) -> float:
    """Give the days on blocks until undocking is done, for items of which a share is done and some are left out.

    Each item uses up its done share of its likely days on its activities in the order in which they start; of an item
    that nobody tells of, an activity counts as done where one that comes after it has begun, unless that one only
    closes the work of its item, as striking a part of the staging does. Then the critical path is
    taken through what is left, crews going from one activity to the next as planned. Once she is docked, nothing
    before that takes time any more; until then the days are those after docking. Source: derived from the critical path
    of the programme.
    """
    from tenderwright.calculations.schedule.critical_path import critical_path

    network = schedule.network
    left = _left(network, schedule, done, out, docked=docked)
    path = critical_path(left, network.pairs)
    return dock_days(network, path.early_finish)


def _left(
    network: Network, schedule: Schedule, done: Mapping[str, float], out: Collection[str], *, docked: bool
) -> list[float]:
    full = [node.duration.days for node in network.nodes]
    left = list(full)
    order = sorted(range(len(full)), key=lambda place: (schedule.path.early_start[place], place))
    for number, share in done.items():
        places = [
            place
            for place in order
            if (item := network.nodes[place].item) is not None
            and item.number == number
            and network.nodes[place].kind not in ("docking", "undocking")
        ]
        used = share * sum(full[place] for place in places)
        for place in places:
            taken = min(used, full[place])
            left[place], used = full[place] - taken, used - taken
    begun = [place for place in order if left[place] < full[place] - _NOTHING and not network.nodes[place].afterwards]
    for place in _before(network, begun):
        item = network.nodes[place].item
        if item is not None and item.number not in done:
            left[place] = 0.0
    for place, node in enumerate(network.nodes):
        past = docked and (node.phase == "before docking" or node.kind == "docking")
        if past or (node.item is not None and node.item.number in out):
            left[place] = 0.0
    return left


def _before(network: Network, places: Collection[int]) -> set[int]:
    """Give the activities that come before some others, near and far."""
    before: dict[int, list[int]] = {}
    for link in network.links:
        before.setdefault(link.after, []).append(link.before)
    found: set[int] = set()
    waiting = list(places)
    while waiting:
        for place in before.get(waiting.pop(), []):
            if place not in found:
                found.add(place)
                waiting.append(place)
    return found
