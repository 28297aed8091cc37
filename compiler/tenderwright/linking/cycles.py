"""Find items that depend on each other in a circle."""

from __future__ import annotations

from tenderwright.model.package import Package
from tenderwright.notices import Notice


def find_cycles(package: Package) -> list[Notice]:
    """Report each circle of dependence once, at the first of its items."""
    items = package.item_by_name
    state: dict[str, int] = {}
    notices: list[Notice] = []
    for start in items:
        if start in state:
            continue
        stack = [(start, iter(items[start].depends_on))]
        trail = [start]
        state[start] = 1
        while stack:
            name, rest = stack[-1]
            following = next(rest, None)
            if following is None:
                state[name] = 2
                stack.pop()
                trail.pop()
            elif following.name not in items:
                continue
            elif state.get(following.name) == 1:
                circle = [*trail[trail.index(following.name) :], following.name]
                notices.append(
                    Notice(
                        "cycle",
                        following.at,
                        f"items depend on each other in a circle: {' → '.join(circle)}",
                        hints=("take one of the dependences away",),
                    )
                )
            elif following.name not in state:
                state[following.name] = 1
                trail.append(following.name)
                stack.append((following.name, iter(items[following.name].depends_on)))
    return notices
