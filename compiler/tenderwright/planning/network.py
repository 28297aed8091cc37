"""The programme as a network: activities with their days, and what comes before what, and why."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

from msgspec import Struct, field

from tenderwright.calculations.schedule.order import Circle, topological_order
from tenderwright.calculations.value import Record
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.model.programme import Activity, Programme
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean
from tenderwright.planning.durations import Duration, duration

ARRIVAL, SLOT, REDELIVERY = "arrival", "dock-slot", "redelivery"
"""The milestones that every programme has: she arrives, the dock is free for her, she is delivered again."""


class Node(Struct, frozen=True):
    """An activity of the network, or one of its milestones."""

    name: str
    title: str
    item: Item | None
    kind: str
    phase: str
    duration: Duration
    ends: str = ""
    """The phase in which it ends, where that is another."""
    crew: str = ""
    afterwards: bool = False
    after: tuple[str, ...] = ()
    source: Activity | None = None


class Link(Struct, frozen=True):
    """One thing that comes before another, by their places in the network, and why."""

    before: int
    after: int
    why: str


class Network(Struct, frozen=True, dict=True):
    """Activities in order of their names in the file, milestones first and last, with their links."""

    nodes: tuple[Node, ...]
    links: tuple[Link, ...]
    capacity: Mapping[str, int] = field(default_factory=dict)

    @cached_property
    def index(self) -> Mapping[str, int]:
        """Give the place of each activity by name."""
        return {node.name: place for place, node in enumerate(self.nodes)}

    def of_kind(self, kind: str) -> int:
        """Give the place of the one activity of a kind, docking or undocking."""
        return next(place for place, node in enumerate(self.nodes) if node.kind == kind)

    @property
    def pairs(self) -> list[tuple[int, int]]:
        """Give the links as pairs of places."""
        return [(link.before, link.after) for link in self.links]


def network(programme: Programme, package: Package, record: Record) -> tuple[Network | None, list[Notice]]:
    """Make the network of a programme; None where something in it is wrong, or where an item of it is broken."""
    items = {item.number: item for item in package.items if not item.withdrawn}
    notices = _mistakes(programme, items)
    if any(activity.item.name not in package.item_by_name for activity in programme.activities):
        return None, notices  # told where names are resolved, or where the item has its mistake
    workable = record.values.get(programme.workable.name) if programme.workable else None
    share = float(workable.si) if workable is not None else 1.0
    nodes = [Node(ARRIVAL, "She arrives", None, "milestone", "before docking", Duration.none())]
    nodes.append(Node(SLOT, "The dock is booked", None, "milestone", "before docking", Duration.none()))
    for activity in programme.activities:
        item = items.get(activity.item.name)
        if item is None:
            continue
        days = duration(activity, item, programme.week, share)
        if isinstance(days, Notice):
            notices.append(days)
            continue
        phase = activity.phase or ("any" if activity.kind in ("docking", "undocking") else item.phase)
        nodes.append(
            Node(
                activity.activity,
                activity.title or item.title,
                item,
                activity.kind,
                phase,
                days,
                "" if activity.phase or activity.kind != "work" else item.ends,
                activity.crew,
                activity.afterwards or activity.kind == "undocking",
                _live_before(activity, programme, items),
                activity,
            )
        )
    nodes.append(Node(REDELIVERY, "She is delivered again", None, "milestone", "after undocking", Duration.none()))
    if notices:
        return None, notices
    nodes[1] = _slot(nodes[1], package)
    made = Network(tuple(nodes), tuple(_links(nodes, items)), {crew.crew: crew.count for crew in programme.crews})
    circle = _circle(made)
    return (None, [circle]) if circle else (made, [])


def _live_before(activity: Activity, programme: Programme, items: Mapping[str, Item]) -> tuple[str, ...]:
    """Give what an activity comes after, looking through the activities of withdrawn items."""
    by_name = {one.activity: one for one in programme.activities}
    found: dict[str, None] = {}
    seen: set[str] = set()
    waiting = list(activity.after)
    while waiting:
        name = waiting.pop(0)
        if name in seen or name not in by_name:
            continue
        seen.add(name)
        if by_name[name].item.name in items:
            found[name] = None
        else:
            waiting += by_name[name].after
    return tuple(found)


def _slot(node: Node, package: Package) -> Node:
    events = package.tender.events if package.tender else {}
    arrival, docking = events.get("arrival"), events.get("docking")
    days = float((docking - arrival).days) if arrival and docking else 0.0
    return Node(node.name, node.title, None, node.kind, node.phase, Duration.fixed(max(days, 0.0)))


def _mistakes(programme: Programme, items: Mapping[str, Item]) -> list[Notice]:
    """Report names that stand twice or for nothing, and a programme that does not dock and undock once each."""
    notices: list[Notice] = []
    names: dict[str, Activity] = {}
    crews = {crew.crew for crew in programme.crews}
    for activity in programme.activities:
        if activity.activity in names or activity.activity in (ARRIVAL, SLOT, REDELIVERY):
            notices.append(Notice("duplicate-name", activity.here, f"activity `{activity.activity}` is used twice"))
        names[activity.activity] = activity
    for activity in programme.activities:
        for name in activity.after:
            if name not in names:
                message = f"there is no activity `{name}`"
                hints = did_you_mean(name, names)
                notices.append(Notice("dead-reference", activity.here, message, hints=hints, cause=message))
        if activity.crew and activity.crew not in crews:
            hints = did_you_mean(activity.crew, crews) or ("list it under `crews:`",)
            message = f"there is no crew `{activity.crew}`"
            notices.append(Notice("dead-reference", activity.here, message, hints=hints, cause=message))
    for kind in ("docking", "undocking"):
        found = [activity for activity in programme.activities if activity.kind == kind and activity.item.name in items]
        if len(found) != 1:
            message = f"the programme has {len(found) or 'no'} activities of kind {kind}"
            hint = f"give one activity `kind: {kind}`"
            notices.append(Notice("no-docking", programme.here, message, hints=(hint,)))
    return notices


def _links(nodes: Sequence[Node], items: Mapping[str, Item]) -> list[Link]:
    index = {node.name: place for place, node in enumerate(nodes)}
    found: dict[tuple[int, int], Link] = {}

    def add(before: int, after: int, why: str) -> None:
        if before != after:
            found.setdefault((before, after), Link(before, after, why))

    for place, node in enumerate(nodes):
        for name in node.after:
            title = nodes[index[name]].title
            add(index[name], place, f"after {title[:1].lower()}{title[1:]}")
    by_item = _by_item(nodes)
    for number, places in by_item.items():
        own = {nodes[place].name for place in places}
        starts = [p for p in places if not _after_own(nodes[p], own) and nodes[p].kind != "undocking"]
        for other in _waited_for(items[number], items, by_item):
            for before in _lasts(other, nodes, by_item):
                for place in starts:
                    add(before, place, f"item {number} comes after item {other}")
    docking, undocking = (next(p for p, n in enumerate(nodes) if n.kind == kind) for kind in ("docking", "undocking"))
    last = len(nodes) - 1
    add(0, 1, "from her arrival")
    add(1, docking, "the dock is booked from this day")
    add(docking, undocking, "she is undocked after she is docked")
    for place, node in enumerate(nodes[2:-1], start=2):
        if place in (docking, undocking):
            continue
        ends = node.ends or node.phase
        if ends == "before docking":
            add(place, docking, "done before docking")
        elif ends == "dry":
            add(place, undocking, "done before undocking")
        if node.phase == "dry":
            add(docking, place, "done on blocks")
        elif node.phase == "after undocking":
            add(undocking, place, "done after undocking")
    followed = {link.before for link in found.values()}
    led = {link.after for link in found.values()}
    for place in range(1, last):
        if place not in led:
            add(0, place, "from her arrival")
        if place not in followed:
            add(place, last, "done before redelivery")
    add(undocking, last, "delivered afloat")
    return list(found.values())


def _by_item(nodes: Sequence[Node]) -> dict[str, list[int]]:
    by_item: dict[str, list[int]] = {}
    for place, node in enumerate(nodes):
        if node.item is not None:
            by_item.setdefault(node.item.number, []).append(place)
    return by_item


def _after_own(node: Node, own: set[str]) -> bool:
    return any(name in own for name in node.after)


def _lasts(number: str, nodes: Sequence[Node], by_item: Mapping[str, list[int]]) -> list[int]:
    """Give the last activities of an item: those that none of its own comes after, afterwards ones apart."""
    places = [place for place in by_item[number] if not nodes[place].afterwards]
    followed = {name for place in places for name in nodes[place].after}
    return [place for place in places if nodes[place].name not in followed]


def _waited_for(item: Item, items: Mapping[str, Item], by_item: Mapping[str, list[int]]) -> list[str]:
    """Give the items with activities that an item waits for, looking through those without any."""
    found: dict[str, None] = {}
    seen: set[str] = set()
    waiting = [reference.name for reference in item.depends_on]
    while waiting:
        name = waiting.pop(0)
        if name in seen or name not in items:
            continue
        seen.add(name)
        if name in by_item:
            found[name] = None
        else:
            waiting += [reference.name for reference in items[name].depends_on]
    return list(found)


def _circle(made: Network) -> Notice | None:
    """Report activities that come after each other in a circle."""
    try:
        topological_order(len(made.nodes), made.pairs)
    except Circle as circle:
        names = [f"`{made.nodes[place].name}`" for place in circle.places]
        first = next(source for place in circle.places if (source := made.nodes[place].source))
        message = f"activities come after each other in a circle: {', '.join(names)}"
        hint = "mark an activity that closes the work of an item, such as striking, with `afterwards: true`"
        return Notice("cycle", first.here, message, hints=(hint,))
    return None
