"""The mixed-integer programme of a scope: what is bought, what a choice has to keep, and what the sources can pay."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from math import inf

from tenderwright.calculations.scope.payment import pay, short_of
from tenderwright.calculations.scope.works import Source, Works

NODES = 200_000
"""Nodes of the search after which it is given up, so that the same data give the same answer on any machine."""

CUTS = 500
"""How many rows may be brought in for one question."""

_LARGEST = 1000.0
"""What the largest cost is scaled to: the solver's tolerance of 1e-6 is then a thousandth of a millionth of it."""

Row = tuple[Mapping[int, float], float, float]
"""Coefficients by variable, with the least and the most of their sum."""


class GaveUp(RuntimeError):
    """The solver found no scope and did not prove that there is none."""


@dataclass(frozen=True)
class Answer:
    """What the solver found: the items bought, and the bound that it proved for the objective."""

    chosen: tuple[bool, ...]
    bound: float
    finished: bool
    """Whether the search went to its end."""


@dataclass
class Program:
    """Variables x_i, 1 where item i is bought, and e, further money without restriction.

    Formula: x_i <= x_j where i needs j; x_i + x_j <= 1 where they exclude each other; the sum of x_i over a group of
    which at most n are bought is no more than n; x_i = 1 where i is bound. An item
    of no cost and no worth is bought only where another needs it. Every group F of sources pays for what only it may
    pay for: the sum of c_i x_i over the items that no source outside F pays for is no more than e and the sum over F of
    a_f, or of C/(1 + m_f), with C the sum of all c_i x_i, where that is less. Of these rows, one for each group, those
    are brought in that a choice found breaks (Benders cuts). Source: 0-1 programming; Hall's condition, derived.
    """

    works: Works
    sources: Sequence[Source]
    bound: Collection[int]
    """Items that are bought in any case."""
    most_further: float = 0.0
    """The most that e may be, in cents."""
    nodes: int = NODES
    rows: list[Row] = field(default_factory=list)

    def __post_init__(self) -> None:
        works = self.works
        self.unit = max([*works.costs, 1]) / _LARGEST
        """Cents in one unit of the programme."""
        self.further = {len(works.costs): 1.0}
        self.value = {item: float(value) for item, value in enumerate(works.values)}
        self.cost = {item: cost / self.unit for item, cost in enumerate(works.costs)}
        for needing, needed in works.needs:
            if needing != needed:
                self.rows.append(({needing: 1.0, needed: -1.0}, -inf, 0.0))
        for one, other in works.excludes:
            self.rows.append(({one: 1.0, other: 1.0}, -inf, float(one != other)))
        for most, group in works.at_most:
            self.rows.append((dict.fromkeys(group, 1.0), -inf, float(most)))
        for item, cost in enumerate(works.costs):
            if not cost and not works.values[item] and item not in self.bound:
                needing_it = {one: -1.0 for one, needed in works.needs if needed == item and one != item}
                self.rows.append(({item: 1.0} | needing_it, -inf, 0.0))
        self.rows.append(self._payment(frozenset(range(len(self.sources))), sum(works.costs)))

    def _payment(self, group: Collection[int], whole: int) -> Row:
        """Give the row that a group pays for what only it may pay for, by the limits at a cost of the whole."""
        inside = [own for at, own in enumerate(self.sources) if at in group]
        others = [own for at, own in enumerate(self.sources) if at not in group]
        given = sum(own.amount for own in inside if not own.is_matched(whole))
        share = sum(1.0 / (1.0 + own.match) for own in inside if own.is_matched(whole))
        row = {
            item: cost * ((0.0 if any(own.pays(item) for own in others) else 1.0) - share)
            for item, cost in self.cost.items()
        }
        return row | dict.fromkeys(self.further, -1.0), -inf, given / self.unit

    def rule_out(self, chosen: Sequence[bool]) -> None:
        """Bring in the row of payment that a choice breaks; where there is none to bring in, rule out just the choice.

        That is so where the choice cannot be paid to the cent, but the solver's tolerance or a part of a cent hides it.
        """
        costs = self.works.paid(chosen)
        row = self._payment(short_of(pay(costs, self.sources), costs, self.sources), sum(costs))
        if row in self.rows:
            self.cut(chosen)
        else:
            self.rows.append(row)

    def cut(self, chosen: Sequence[bool]) -> None:
        """Rule one choice out: any other differs from it in one item at least."""
        row = {item: -1.0 if taken else 1.0 for item, taken in enumerate(chosen)}
        self.rows.append((row, 1.0 - sum(chosen), inf))

    def least(self, objective: Mapping[int, float], *rows: Row) -> Answer | None:
        """Find the choice with the least objective under further rows; None where there is none.

        Solver: HiGHS, by scipy.optimize.milp, without a gap. Raises GaveUp, and RuntimeError where the solver breaks a
        rule.
        """
        import numpy as np
        from scipy.optimize import Bounds, LinearConstraint, milp
        from scipy.sparse import coo_array

        items = len(self.works.costs)
        if not items:
            return Answer((), 0.0, finished=True)
        every = [*self.rows, *rows]
        entries = [(at, to, value) for at, (row, _, _) in enumerate(every) for to, value in row.items()]
        at, to, values = (np.array(part) for part in zip(*entries, strict=True))
        matrix = coo_array((values, (at, to)), shape=(len(every), items + 1)).tocsc()
        weights, lower, upper = np.zeros(items + 1), np.zeros(items + 1), np.ones(items + 1)
        weights[list(objective)] = list(objective.values())
        lower[list(self.bound)] = 1.0
        upper[items] = self.most_further / self.unit
        found = milp(
            weights,
            integrality=(np.arange(items + 1) < items).astype(np.int64),
            bounds=Bounds(lower, upper),
            constraints=LinearConstraint(
                matrix, np.array([row[1] for row in every]), np.array([row[2] for row in every])
            ),
            options={"mip_rel_gap": 0.0, "node_limit": self.nodes},
        )
        if found.status == 2:
            return None
        if found.x is None:
            raise GaveUp(f"the solver found no scope and proved nothing: {found.message}")
        chosen = tuple(bool(taken) for taken in found.x[:items] > 0.5)
        if not self.works.allows(chosen, self.bound):
            raise RuntimeError("the solver broke a rule of the scope")
        return Answer(chosen, float(found.mip_dual_bound), finished=found.status == 0)
