"""The owner's judgement of the items can be followed: nothing needs itself or what it excludes, and worth has weight.

Ground: a ladder buys an item with all it needs, and never with what it excludes (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice

CODE = "worth-contradicts"


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report items that need themselves or what they exclude, and weights that are all nothing."""
    scope, path = context.papers.scope, "owner/scope.yaml"
    if scope is None:
        return
    weights = scope.weights
    if weights.risk == weights.preservation == weights.safety == 0:
        yield Notice(CODE, context.at(path, "weights"), "all weights are 0, so that nothing is worth anything")
    for number, worth in scope.items.items():
        excluded = {one.name for one in worth.excludes}
        for reference in worth.needs:
            if reference.name == number:
                yield Notice(CODE, reference.at, f"item {number} needs itself")
            elif reference.name in excluded:
                yield Notice(CODE, reference.at, f"item {number} needs item {reference} and excludes it")
        needed = {one.name: one for one in worth.needs}
        for name, reference in needed.items():
            other = scope.items.get(name)
            for apart in other.excludes if other is not None else ():
                if apart.name in needed:
                    message = f"item {number} needs items {name} and {apart}, which exclude each other"
                    yield Notice(CODE, reference.at, message)
        must = scope.items.get(number)
        for reference in worth.excludes:
            other = scope.items.get(reference.name)
            if must is not None and must.must and other is not None and other.must:
                yield Notice(
                    CODE, reference.at, f"items {number} and {reference} must both be done, and exclude each other"
                )
