"""Find items that depend on each other in a circle."""

from __future__ import annotations

from graphlib import CycleError, TopologicalSorter

from tenderwright.model.build import Reference
from tenderwright.model.package import Package
from tenderwright.notices import Notice


def find_cycles(package: Package) -> list[Notice]:
    """Report each circle of dependence once, from the first of its items round to it again."""
    items = package.item_by_name
    rests_on = {
        name: {to.name: to for to in reversed(item.depends_on) if to.name in items} for name, item in items.items()
    }
    place = {name: number for number, name in enumerate(items)}
    notices: list[Notice] = []
    while circle := _circle(rests_on):
        start = circle.index(min(circle, key=place.__getitem__))
        circle = [*circle[start:], *circle[:start]]
        closing = rests_on[circle[-1]].pop(circle[0])  # so that the next one is found
        notices.append(
            Notice(
                "cycle",
                closing.at,
                f"items depend on each other in a circle: {' → '.join([*circle, circle[0]])}",
                hints=("take one of the dependences away",),
            )
        )
    return notices


def _circle(rests_on: dict[str, dict[str, Reference]]) -> list[str]:
    """Give the items of one circle, each before the one that it depends on; none where there is no circle."""
    try:
        TopologicalSorter(rests_on).prepare()
    except CycleError as error:
        circle: list[str] = error.args[1]
        return circle[:0:-1]
    return []
