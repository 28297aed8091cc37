"""Growth of work at earlier dockings: what was paid in the end beyond what was ordered, by kind of work."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, record


@dataclass(frozen=True)
class Growth:
    """What was ordered and what it came to, over several pieces of work."""

    pieces: int
    ordered: float
    """Sum of the sums ordered; a credit counts below nothing."""
    final: float
    ordered_size: float
    """Sum of the sums ordered, credits counted as if they were charges."""

    @property
    def share(self) -> float | None:
        """Give the growth as a share: (sum of final - sum of ordered)/sum of |ordered|; none if nothing was ordered."""
        return (self.final - self.ordered) / self.ordered_size if self.ordered_size > 0.0 else None


def growth(pairs: Iterable[tuple[float, float]]) -> Growth:
    """Sum up pairs of ordered and final; without pairs, nothing ordered. Raises OutOfRange.

    Source: definition of growth as a share of what was ordered, derived.
    """
    taken = list(pairs)
    if not all(math.isfinite(ordered) and math.isfinite(final) for ordered, final in taken):
        raise OutOfRange("what was ordered and what it came to must be numbers")
    return Growth(
        pieces=len(taken),
        ordered=math.fsum(ordered for ordered, _ in taken),
        final=math.fsum(final for _, final in taken),
        ordered_size=math.fsum(abs(ordered) for ordered, _ in taken),
    )


def growth_by_kind(works: Iterable[tuple[str, float, float]]) -> dict[str, Growth]:
    """Sum up kind, ordered and final by kind, in the order in which the kinds first stand. Raises OutOfRange."""
    kinds: dict[str, list[tuple[float, float]]] = {}
    for kind, ordered, final in works:
        kinds.setdefault(kind, []).append((ordered, final))
    return {kind: growth(pairs) for kind, pairs in kinds.items()}


def _kernel(works: Sequence[Mapping[str, Any]]) -> Mapping[str, Any]:
    found = growth((work["ordered"], work["final"]) for work in works)
    if found.share is None:
        raise OutOfRange("nothing was ordered, so that growth has nothing to be a share of")
    return {"ordered": found.ordered, "final": found.final, "growth": found.share}


METHOD = Method(
    name="cost.growth",
    title="Growth of work beyond what was ordered",
    formula="g = (Σ final − Σ ordered)/Σ |ordered|",
    source=Citation("growth as a share of what was ordered", standing="derived"),
    valid="work of one kind; sums in the money of one month",
    inputs={
        "works": listed(
            record(
                "One piece of work.",
                ("ordered", "final"),
                ordered=number("What was ordered; below nothing for a credit."),
                final=number("What it came to."),
            ),
            "Pieces of work.",
        ),
    },
    outputs=(
        Symbol("ordered", "ordered in all", "", ""),
        Symbol("final", "final in all", "", ""),
        Symbol("growth", "growth beyond what was ordered", "fraction", "%"),
    ),
    kernel=_kernel,
    example={"works": [{"ordered": 18000, "final": 26500}, {"ordered": 7400, "final": 7400}]},
    cautions=("few dockings make a poor guide: growth of one ship at one yard says little of the next",),
)
