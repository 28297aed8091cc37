"""What further money would add: the least with which something more can be bought, rung by rung."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.calculations.scope.best_scope import Scope, best_scope
from tenderwright.calculations.scope.further import Further, least_further
from tenderwright.calculations.scope.program import NODES
from tenderwright.calculations.scope.works import Source, Works


@dataclass(frozen=True)
class Step:
    """The scope that further money without restriction buys; money in cents."""

    further: int
    """Beyond the sources, in all."""
    more: int
    """Over the step before."""
    added: tuple[int, ...]
    """Items that the step before did not buy."""
    scope: Scope
    """Its last source is the further money."""
    proven: bool
    """Whether less money would add nothing, and the scope is proven."""


def next_step(
    works: Works, sources: Sequence[Source], held: Scope, further: int = 0, nodes: int = NODES
) -> Step | None:
    """Give the least further money with which the worth rises, and the best scope for it; what is bought stays bought.

    Symbols: held, the scope so far; further, the further money spent on it already, in cents. None where nothing of
    worth can be added, whatever the money. Method: `least_further` of a worth one point higher, then `best_scope` with
    that money. Source: derived. Raises as `best_scope` does.
    """
    needed = least_further(works, sources, held.items, held.value + 1, nodes)
    if needed is None:
        return None
    whole = Further(max(needed.money, further), needed.proven)
    scope = best_scope(works, [*sources, Source(whole.money)], held.items, nodes)
    if scope is None or scope.value <= held.value:
        raise RuntimeError("the solver lost the scope that it had found")
    added = tuple(place for place in scope.items if place not in held.items)
    return Step(whole.money, whole.money - further, added, scope, whole.proven and scope.proven)
