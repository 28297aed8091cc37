"""The integer programme of a match: which giver pays how much of which work, so that every giver's rule is kept."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

Cells = Sequence[Sequence[int]]
"""Cents by giver and group of work."""

_Row = tuple[Mapping[int, float], float]
"""Coefficients by variable, and the most of their sum."""


class GaveUp(RuntimeError):
    """The solver found nothing, though something is to be found."""


@dataclass(frozen=True)
class Giver:
    """A giver of money: what it has, and the match that it wants."""

    free: int
    """Cents."""
    match: Fraction
    """Money of others for each unit of its own."""
    counts: frozenset[int]
    """Whose money counts, by place; the place after the last giver is what is asked for here."""
    limits: tuple[tuple[frozenset[int], Fraction], ...] = ()
    """Givers of whom together no more than a share of the match counts."""
    in_kind: Fraction | None = None
    """How much of the match may be given in kind; None where all of it may."""
    takes_in_kind: bool = True
    """Whether what is given in kind is for work that it may pay for."""


@dataclass(frozen=True)
class Programme:
    """Whole variables x_sg, the cents that giver s pays of the work of group g, for each group that it may pay for.

    Formula: sum over s of x_sg <= open_g; sum over g of x_sg <= free_s. With d_s = sum over g of x_sg, a giver of match
    m wants m d_s <= sum of y_so over the others o that it counts, y_so <= what o pays of the groups that s may pay for,
    sum of y_so over the others of a limit <= its share of m d_s, and the same for what is given in kind. For the giver
    that is asked, d is what is asked, and what nobody pays counts, as money to be found. First the sum of all x is made
    as large as it can be, then each d_s in turn. Derived.
    """

    givers: tuple[Giver, ...]
    open_cents: tuple[tuple[frozenset[int], int, int], ...]
    """Of each group of work: who may pay for it, what is open, and what is asked for here of it."""
    most: int
    """What all of them together may pay; less than what is open where credits stand against it."""
    in_kind: int
    asked_of: Giver | None
    asked: int

    def solve(self) -> Cells:
        """Give what each giver pays of each group, in cents."""
        cells = [
            (s, g) for s in range(len(self.givers)) for g, one in enumerate(self.open_cents) if s in one[0] and one[1]
        ]
        if not cells:
            return [[0] * len(self.open_cents) for _ in self.givers]
        solver = _Solver(self, {cell: at for at, cell in enumerate(cells)})
        found = solver.lexicographic()
        return [[found.get((s, g), 0) for g in range(len(self.open_cents))] for s in range(len(self.givers))]

    def left(self, paid: Cells, group: int) -> int:
        """Give what nobody pays of a group."""
        return self.open_cents[group][1] - sum(row[group] for row in paid)

    def of_the_asked(self, paid: Cells) -> tuple[Fraction, int, int]:
        """Give the match wanted by the giver that is asked, what counts towards it, and what there is."""
        assert self.asked_of is not None
        there = {s: sum(row) for s, row in enumerate(paid)}
        found = self.most - sum(there.values())
        return self._told(self.asked_of, self.asked, there, self.in_kind, found)

    def of_a_giver(self, place: int, paid: Cells) -> tuple[Fraction, int, int]:
        """Give the match wanted by a giver, what counts towards it, and what others pay or give of the same work."""
        giver = self.givers[place]
        groups = [g for g, one in enumerate(self.open_cents) if place in one[0]]
        there = {s: sum(row[g] for g in groups) for s, row in enumerate(paid) if s != place}
        there[len(self.givers)] = sum(self.open_cents[g][2] for g in groups)
        return self._told(giver, sum(paid[place]), there, self.in_kind if giver.takes_in_kind else 0, 0)

    def _told(
        self, giver: Giver, gives: int, there: Mapping[int, int], in_kind: int, found: int
    ) -> tuple[Fraction, int, int]:
        wanted = giver.match * gives
        counted = {one: amount for one, amount in there.items() if one in giver.counts}
        for inside, share in giver.limits:
            beyond = sum(counted.get(one, 0) for one in inside) - int(share * wanted)
            for one in sorted(inside):
                less = min(max(beyond, 0), counted.get(one, 0))
                counted[one] = counted.get(one, 0) - less
                beyond -= less
        kind = in_kind if giver.in_kind is None else min(in_kind, int(giver.in_kind * wanted))
        return wanted, sum(counted.values()) + kind + found, sum(there.values()) + in_kind + found


class _Solver:
    """The rows of a programme, and the runs of the solver over them."""

    def __init__(self, programme: Programme, cells: Mapping[tuple[int, int], int]) -> None:
        self.programme = programme
        self.cells = cells
        self.size = len(cells)
        """Of the variables; those after the cells are what counts of one giver's money for another."""
        self.rows: list[_Row] = []
        for g, (_, open_, _) in enumerate(programme.open_cents):
            self.rows.append((dict.fromkeys(self._cells(group=g), 1.0), float(open_)))
        self.rows.append((dict.fromkeys(cells.values(), 1.0), float(programme.most)))
        for s, giver in enumerate(programme.givers):
            self.rows.append((dict.fromkeys(self._cells(giver=s), 1.0), float(giver.free)))
            if giver.match:
                self._matched(s, giver)
        if programme.asked_of is not None and programme.asked_of.match:
            self._asked(programme.asked_of)

    def lexicographic(self) -> dict[tuple[int, int], int]:
        """Cover as much as can be, then draw on each giver in turn as far as it goes."""
        goals = [list(self.cells.values()), *(self._cells(giver=s) for s in range(len(self.programme.givers)))]
        found: Sequence[float] = []
        for goal in goals:
            if goal:
                found = self._most(goal)
                best = sum(round(found[at]) for at in goal)
                self.rows.append((dict.fromkeys(goal, -1.0), -float(best)))
        return {cell: round(found[at]) for cell, at in self.cells.items()}

    def _cells(self, giver: int | None = None, group: int | None = None) -> list[int]:
        return [at for (s, g), at in self.cells.items() if giver in (None, s) and group in (None, g)]

    def _counted(self, most: Mapping[int, float], constant: float) -> int:
        """Add a variable for what counts, no more than cells come to and a constant."""
        at = self.size
        self.size += 1
        self.rows.append(({at: 1.0, **{cell: -by for cell, by in most.items()}}, constant))
        return at

    def _matched(self, place: int, giver: Giver) -> None:
        groups = [g for g, one in enumerate(self.programme.open_cents) if place in one[0]]
        gives = dict.fromkeys(self._cells(giver=place), 1.0)
        counted: dict[int, int] = {}
        for other in sorted(giver.counts):
            if other == len(self.programme.givers):
                asked = sum(self.programme.open_cents[g][2] for g in groups)
                counted[other] = self._counted({}, float(asked))
            else:
                its = [at for (s, g), at in self.cells.items() if s == other and g in groups]
                counted[other] = self._counted(dict.fromkeys(its, 1.0), 0.0)
        kind = self._counted({}, float(self.programme.in_kind if giver.takes_in_kind else 0))
        self._rule(giver, gives, 0.0, counted, kind, ())

    def _asked(self, giver: Giver) -> None:
        counted = {s: self._counted(dict.fromkeys(self._cells(giver=s), 1.0), 0.0) for s in sorted(giver.counts)}
        kind = self._counted({}, float(self.programme.in_kind))
        found = self._counted(dict.fromkeys(self.cells.values(), -1.0), float(self.programme.most))
        self._rule(giver, {}, float(self.programme.asked), counted, kind, (found,))

    def _rule(
        self,
        giver: Giver,
        gives: Mapping[int, float],
        fixed: float,
        counted: Mapping[int, int],
        kind: int,
        found: tuple[int, ...],
    ) -> None:
        """Add the rows of a rule on match, for what cells come to and a fixed sum."""
        match = float(giver.match)
        wanted = {at: match * by for at, by in gives.items()}
        every = [*counted.values(), kind, *found]
        self.rows.append(({**wanted, **dict.fromkeys(every, -1.0)}, -match * fixed))
        limits = [([counted[one] for one in inside if one in counted], share) for inside, share in giver.limits]
        limits += [([kind], giver.in_kind)] if giver.in_kind is not None else []
        for inside, share in limits:
            less = {at: -float(share) * by for at, by in wanted.items()}
            self.rows.append(({**less, **dict.fromkeys(inside, 1.0)}, float(share) * match * fixed))

    def _most(self, goal: Sequence[int]) -> Sequence[float]:
        """Make the sum of some variables as large as it can be; by HiGHS, without a gap.

        It does not simplify the rows beforehand: it then takes some for impossible whose sums are as large as these.
        """
        import numpy as np
        from scipy.optimize import Bounds, LinearConstraint, milp
        from scipy.sparse import coo_array

        entries = [(at, to, value) for at, (row, _) in enumerate(self.rows) for to, value in row.items()]
        at, to, values = (np.array(part) for part in zip(*entries, strict=True))
        matrix = coo_array((values, (at, to)), shape=(len(self.rows), self.size)).tocsc()
        weights = np.zeros(self.size)
        weights[list(goal)] = -1.0
        found = milp(
            weights,
            integrality=np.ones(self.size, dtype=np.int64),
            bounds=Bounds(np.zeros(self.size), np.full(self.size, np.inf)),
            constraints=LinearConstraint(matrix, ub=np.array([most for _, most in self.rows])),
            options={"mip_rel_gap": 0.0, "presolve": False},
        )
        if found.x is None:
            raise GaveUp(f"who pays the match could not be worked out: {found.message}")
        return tuple(float(one) for one in found.x)
