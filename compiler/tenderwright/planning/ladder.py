"""The funding ladder: what the money in hand buys, what each next source adds, and what each further amount would."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from tenderwright.calculations.cost.totals import percentiles
from tenderwright.calculations.scope.best_scope import Scope as BestScope
from tenderwright.calculations.scope.best_scope import best_scope
from tenderwright.calculations.scope.frontier import next_step
from tenderwright.calculations.scope.further import shortfall
from tenderwright.calculations.scope.works import Source, Works
from tenderwright.model.funding import FundingSource, Scope
from tenderwright.model.item import Item
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.planning.belongs import held_together
from tenderwright.planning.outlook import money as as_money
from tenderwright.planning.outlook import parts_at
from tenderwright.planning.scope import available, in_hand, must_do, score
from tenderwright.planning.trials import GENERAL, Trials
from tenderwright.pricing.money import CENT, ZERO

LEVELS = {"P50": 0.50, "P80": 0.80}
_SURENESS = ("in hand", "promised", "applied for", "hoped for", "")


@dataclass(frozen=True)
class Rung:
    """One rung: the best scope for the money that there is up to here."""

    source: str
    """The source that makes the rung, by its name in funding.yaml; none for the money in hand, or a further amount."""
    money: Decimal
    """All the money up to here, restricted money too."""
    more: Decimal
    """What this rung brings over the one below."""
    missing: Decimal
    """What is wanting for the must-do items; nothing is bought then."""
    items: tuple[str, ...]
    """The items bought, by number, in order; those without a price too."""
    added: tuple[str, ...]
    """Those that the rung below did not buy."""
    cost: Decimal
    """What the items come to at the confidence of the ladder, by allocation of the whole."""
    simulated: Decimal
    """What the same items come to at that confidence in the trials of their own sum."""
    drawn: Mapping[str, Decimal]
    """What each source pays, by its name in funding.yaml; a further amount under an empty name."""
    value: int
    """The worth of the items bought."""
    given_up: int
    """Worth that a free choice at this money would have beyond this, since what is bought once stays bought."""
    proven: bool
    """Whether the solver proved that there is no better choice."""

    @property
    def left(self) -> Decimal:
        """Give the money that the items leave unspent, for want of work it may pay for or match."""
        return self.money - sum(self.drawn.values(), ZERO)


@dataclass(frozen=True)
class Ladder:
    """The rungs at one confidence."""

    confidence: str
    """P50 or P80."""
    must: tuple[str, ...]
    """The must-do items with what they need."""
    must_cost: Decimal
    costs: Mapping[str, Decimal]
    """What each item comes to at this confidence; risks of no item stand under `general`."""
    rungs: tuple[Rung, ...]
    """The money in hand first, then each source in the order of how sure it is."""
    steps: tuple[Rung, ...]
    """Further amounts without restriction beyond all sources, each the least that buys something more."""
    whole: int
    """The worth of all items together, whether or not one excludes another."""


def ladders(papers: OwnerPapers, package: Package, run: Trials) -> dict[str, Ladder]:
    """Work out the ladders at P50 and at P80; none without the owner's scope or sources."""
    if papers.scope is None or papers.funding is None:
        return {}
    sources = sorted(papers.funding.sources, key=lambda one: (_SURENESS.index(one.status), -_likelihood(one)))
    scope = held_together(package, papers.scope)
    return {name: _Climb(scope, sources, package, run, name).ladder() for name in LEVELS}


def _likelihood(source: FundingSource) -> float:
    return source.likelihood.si if source.likelihood is not None else 0.0


def item_costs(run: Trials, level: float) -> dict[str, Decimal]:
    """Give each item its part of the whole at a level, options among them: its mean and its share of what is added.

    By `parts_at`. An item whose part would be below nothing, a credit, is left there: whoever buys items sets it off.
    """
    rows = run.by_item
    whole = np.asarray(sum(rows.values()))
    ((_, exact),) = parts_at(rows, whole, [level])
    return {name: as_money(cost) for name, cost in zip(rows, exact, strict=True)}


class _Climb:
    """One ladder in the making."""

    def __init__(
        self, scope: Scope, sources: Sequence[FundingSource], package: Package, run: Trials, confidence: str
    ) -> None:
        self.scope, self.funding, self.run, self.confidence = scope, sources, run, confidence
        self.costs = item_costs(run, LEVELS[confidence])
        live = {item.number: item for item in package.items if not item.withdrawn}
        self.names = (*live, GENERAL)
        self.place = {name: place for place, name in enumerate(self.names)}
        self.must = must_do(scope) & live.keys()
        self.works = self._works(live)
        self.sources = [self._source(one, live) for one in sources]

    def ladder(self) -> Ladder:
        """Climb from the money in hand to the last step."""
        rungs: list[Rung] = []
        sure = [place for place, source in enumerate(self.funding) if in_hand(source)]
        counts = [len(sure), *range(len(sure) + 1, len(self.funding) + 1)]
        held: BestScope | None = None
        for count in counts:
            rung, held = self._rung(count, rungs[-1] if rungs else None, held, first=count == counts[0])
            rungs.append(rung)
        must_cost = sum((self._cost(name) for name in (*self.must, GENERAL)), ZERO)
        return Ladder(
            self.confidence,
            tuple(sorted(self.must, key=int)),
            must_cost,
            self.costs,
            tuple(rungs),
            tuple(self._steps(rungs[-1], held)) if held is not None else (),
            sum(self.works.values),
        )

    def _works(self, live: Mapping[str, Item]) -> Works:
        """Set up what can be bought; a credit is set off against the dearest item that it needs, or that must be."""
        cents = {name: int(self.costs.get(name, ZERO) / CENT) for name in self.names}
        for name in [name for name, cost in cents.items() if cost < 0]:
            worth = self.scope.items.get(name)
            bearers = [ref.name for ref in worth.needs if ref.name in cents] if worth else []
            bearer = max(bearers or list(self.must) or [GENERAL], key=lambda one: cents[one])
            cents[bearer] = max(cents[bearer] + cents[name], 0)
            cents[name] = 0
        pairs: dict[str, list[tuple[int, int]]] = {"needs": [], "excludes": []}
        for number, worth in self.scope.items.items():
            for rule, references in (("needs", worth.needs), ("excludes", worth.excludes)):
                pairs[rule] += [
                    (self.place[number], self.place[other.name])
                    for other in references
                    if number in live and other.name in live
                ]
        return Works(
            tuple(cents[name] for name in self.names),
            tuple(score(self.scope.items.get(name), self.scope) for name in self.names),
            tuple(name in self.must or name == GENERAL for name in self.names),
            tuple(pairs["needs"]),
            tuple(pairs["excludes"]),
        )

    def _source(self, source: FundingSource, live: Mapping[str, Item]) -> Source:
        allowed: frozenset[int] | None = None
        if source.only or source.eligible:
            named = {reference.name for reference in source.only} or set(live)
            kinds = set(source.eligible)
            paid = [
                number
                for number, item in live.items()
                if number in named and (not kinds or kinds & {item.kind_of(line) for line in item.lines})
            ]
            allowed = frozenset(self.place[number] for number in paid)
        match = source.match.si if source.match is not None else 0.0
        return Source(int(available(source) / CENT), allowed, match)

    def _cost(self, name: str) -> Decimal:
        return self.works.costs[self.place[name]] * CENT

    def _rung(
        self, count: int, below: Rung | None, held: BestScope | None, *, first: bool
    ) -> tuple[Rung, BestScope | None]:
        sources = self.sources[:count]
        money = sum((available(source) for source in self.funding[:count]), ZERO)
        source = "" if first else self.funding[count - 1].source
        scope = best_scope(self.works, sources, held.items if held else ())
        if scope is None:
            missing = shortfall(self.works, sources).money * CENT
            more = money - (below.money if below else ZERO)
            return Rung(source, money, more, missing, (), (), ZERO, ZERO, {}, 0, 0, True), None
        free = best_scope(self.works, sources) if held else None
        names = [one.source for one in self.funding[:count]]
        given_up = free.value - scope.value if free is not None else 0
        return self._made(source, money, below, scope, names, given_up), scope

    def _made(
        self,
        source: str,
        money: Decimal,
        below: Rung | None,
        scope: BestScope,
        names: Sequence[str],
        given_up: int,
    ) -> Rung:
        items = tuple(self.names[place] for place in scope.items if self.names[place] != GENERAL)
        before = set(below.items) if below else set()
        drawn = {name: cents * CENT for name, cents in zip(names, scope.by_source, strict=True) if cents}
        alone = percentiles(self.run.of_items(items), [LEVELS[self.confidence]])[0]
        return Rung(
            source,
            money,
            money - (below.money if below else ZERO),
            ZERO,
            items,
            tuple(item for item in items if item not in before),
            scope.cost * CENT,
            as_money(alone),
            drawn,
            scope.value,
            given_up,
            scope.proven,
        )

    def _steps(self, last: Rung, held: BestScope) -> list[Rung]:
        """Give the further amounts, each the least that buys something more, as the owner asks for them."""
        steps: list[Rung] = []
        further, below, names = 0, last, [source.source for source in self.funding]
        for _ in range(self.scope.steps):
            step = next_step(self.works, self.sources, held, further)
            if step is None:
                break
            money = last.money + step.further * CENT
            below = self._made("", money, below, step.scope, [*names, ""], 0)
            steps.append(below)
            held, further = step.scope, step.further
        return steps
