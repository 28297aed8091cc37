"""The least further money with which there is a scope, or one that is worth more."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from math import inf

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.scope.payment import missing
from tenderwright.calculations.scope.program import CUTS, NODES, Program, Row
from tenderwright.calculations.scope.works import Source, Works


@dataclass(frozen=True)
class Further:
    """Further money without restriction."""

    money: int
    """Cents."""
    proven: bool
    """Whether the search went to its end, so that less would not do."""


def shortfall(works: Works, sources: Sequence[Source], keep: Collection[int] = (), nodes: int = NODES) -> Further:
    """Give the least further money with which what must be done can be paid; nothing where it can be already.

    Method: as `least_further`, of no worth in particular. Raises as it does, and OutOfRange where no scope keeps the
    rules.
    """
    further = least_further(works, sources, keep, 0, nodes)
    if further is None:
        raise OutOfRange("no scope keeps the rules, whatever the money")
    return further


def least_further(
    works: Works, sources: Sequence[Source], keep: Collection[int], value: int, nodes: int = NODES
) -> Further | None:
    """Give the least further money for a scope of some worth at least; None where there is none, whatever the money.

    Method: the programme of the scope with further money, of which the least is spent. Further money counts as money of
    others for sources that ask for a match, and an item may be bought only because it brings such money. What a choice
    leaves unpaid is reckoned in whole cents; where that is more than the solver's bound, the choice is ruled out at
    that money and the search goes on. To the cent, but for a cent of each source that asks for a match. Source: 0-1
    programming, derived. Raises Contradiction, and RuntimeError where the solver fails.
    """
    program = Program(works, sources, works.bound_to(keep), sum(works.costs), nodes)
    rows: list[Row] = [(program.value, value - 0.5, inf)]
    slack = 1.0 + sum(source.match > 0.0 for source in sources)
    best = None
    for _ in range(CUTS):
        answer = program.least(program.further, *rows)
        if answer is None:
            return Further(best, proven=True) if best is not None else None
        found = missing(works.paid(answer.chosen), sources)
        best = found if best is None else min(best, found)
        if not answer.finished or best - answer.bound * program.unit < slack:
            return Further(best, answer.finished)
        rows[1:] = [(program.further, -inf, (best - 0.5) / program.unit)]
        program.rule_out(answer.chosen)
    raise RuntimeError(f"the solver gave {CUTS} scopes that cannot be paid to the cent")
