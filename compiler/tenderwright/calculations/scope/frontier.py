"""What further money would add: the least with which something more can be bought, rung by rung."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.calculations.scope.best_scope import Scope, best_scope
from tenderwright.calculations.scope.further import Further, least_further, shortfall
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
    return _step(works, sources, whole, further, held, nodes)


def ladder(works: Works, sources: Sequence[Source], rungs: int, nodes: int = NODES) -> tuple[Step, ...]:
    """Give the best scope for the sources and up to so many steps above it, until nothing of worth can be added.

    Where the sources do not pay for what must be done, the first scope is that of the further money that does. Source:
    derived. Raises as `best_scope` does.
    """
    steps = [_step(works, sources, shortfall(works, sources, (), nodes), 0, None, nodes)]
    while len(steps) <= rungs and (step := next_step(works, sources, steps[-1].scope, steps[-1].further, nodes)):
        steps.append(step)
    return tuple(steps)


def _step(
    works: Works, sources: Sequence[Source], whole: Further, further: int, held: Scope | None, nodes: int
) -> Step:
    keep = held.items if held is not None else ()
    scope = best_scope(works, [*sources, Source(whole.money)], keep, nodes)
    if scope is None or (held is not None and scope.value <= held.value):
        raise RuntimeError("the solver lost the scope that it had found")
    added = tuple(place for place in scope.items if place not in keep)
    return Step(whole.money, whole.money - further, added, scope, whole.proven and scope.proven)
