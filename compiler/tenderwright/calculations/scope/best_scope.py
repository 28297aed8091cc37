"""The best scope for the money there is, with the proof that there is none better."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor, inf
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, record, text
from tenderwright.calculations.scope.further import shortfall
from tenderwright.calculations.scope.payment import Drawn, missing, pay
from tenderwright.calculations.scope.program import CUTS, NODES, Answer, GaveUp, Program, Row
from tenderwright.calculations.scope.works import Contradiction, Source, Works

TIES = 16
"""How many scopes of equal worth and cost are compared at most."""

MOST_WORTH = 200_000
"""Points that all the items may come to: beyond, the solver's tolerance of 1e-6 in each x could hide one (derived)."""

SOURCE = Citation(
    "H. M. Weingartner, Capital budgeting of interrelated projects", "Management Science 12 (1966), 485", "from memory"
)

_CLEAR = 1e-4
"""Of a point or a cent: a bound this near a whole number is that number."""


@dataclass(frozen=True)
class Scope:
    """Items bought, what they cost and are worth, and who pays for them; money in cents."""

    chosen: tuple[bool, ...]
    value: int
    cost: int
    drawn: Drawn
    """Cents by source and item."""
    bound: int
    """No scope is worth more than this: proved by the solver."""
    proven: bool
    """Whether no scope is worth more, and none as good costs less."""

    @property
    def gap(self) -> float:
        """Give how far the bound lies above the worth, as a fraction of the bound; nothing proves the best worth."""
        return (self.bound - self.value) / self.bound if self.bound else 0.0

    @property
    def items(self) -> tuple[int, ...]:
        """Give the places of the items bought."""
        return tuple(place for place, taken in enumerate(self.chosen) if taken)

    @property
    def by_source(self) -> tuple[int, ...]:
        """Give what is drawn of each source, in cents."""
        return tuple(sum(row) for row in self.drawn)


def best_scope(works: Works, sources: Sequence[Source], keep: Collection[int] = (), nodes: int = NODES) -> Scope | None:
    """Choose the items of the greatest worth that the sources can pay for; None where even what is bound they cannot.

    Method: mixed-integer programming as `Program`, in stages: greatest worth; of those the least cost; of those, up to
    `TIES` of them, the one that draws most on the first source, then on the second and so on; then the one with the
    earlier items. Every choice is paid in whole cents; one that cannot be is ruled out, and the search goes on.
    Symbols: keep, items bought already, which stay; nodes, where the search is given up: the scope then is not
    `proven`. Source: `SOURCE`. Raises Contradiction where bound items exclude each other, and RuntimeError where the
    solver fails.
    """
    program = Program(works, sources, works.bound_to(keep), nodes=nodes)
    best = _payable(program, {item: -value for item, value in program.value.items()})
    if best is None:
        return None
    value = works.value(best.chosen)
    bound = max(value, floor(-best.bound + _CLEAR))
    as_good: Row = (program.value, value - 0.5, inf)
    try:
        cheapest = _payable(program, program.cost, as_good)
    except GaveUp:
        return _scope(works, sources, best.chosen, bound, proven=False)
    if cheapest is None:
        raise RuntimeError("the solver lost the scope that it had found")
    cost = works.cost(cheapest.chosen)
    proven = bound == value and ceil(cheapest.bound * program.unit - _CLEAR) >= cost
    choices = [cheapest.chosen, *(_tied(program, cheapest.chosen, as_good) if proven else ())]
    return min((_scope(works, sources, chosen, bound, proven) for chosen in choices), key=_rank)


def _tied(program: Program, chosen: tuple[bool, ...], as_good: Row) -> Iterator[tuple[bool, ...]]:
    """Yield further choices of the same worth and cost, as many as are compared."""
    as_cheap: Row = (program.cost, -inf, (program.works.cost(chosen) + 0.5) / program.unit)
    for _ in range(TIES - 1):
        program.cut(chosen)
        try:
            other = _payable(program, program.cost, as_good, as_cheap)
        except GaveUp:
            return
        if other is None:
            return
        chosen = other.chosen
        yield chosen


def _rank(scope: Scope) -> tuple[int, int, list[int], list[bool]]:
    return -scope.value, scope.cost, [-drawn for drawn in scope.by_source], [not taken for taken in scope.chosen]


def _scope(works: Works, sources: Sequence[Source], chosen: tuple[bool, ...], bound: int, proven: bool) -> Scope:
    drawn = pay(works.paid(chosen), sources)
    return Scope(chosen, works.value(chosen), works.cost(chosen), drawn, bound, proven)


def _payable(program: Program, objective: Mapping[int, float], *rows: Row) -> Answer | None:
    """Find the choice with the least objective that keeps the rules and is payable to the cent."""
    works = program.works
    for _ in range(CUTS):
        answer = program.least(objective, *rows)
        if answer is None:
            return None
        if not missing(works.paid(answer.chosen), program.sources):
            return answer
        program.rule_out(answer.chosen)
    raise RuntimeError(f"the solver gave {CUTS} scopes that cannot be paid to the cent")


def _kernel(
    items: Sequence[Mapping[str, Any]], budget: float, at_most: Sequence[Mapping[str, Any]] = ()
) -> Mapping[str, Any]:
    names = [item["name"] for item in items]
    places = {name: place for place, name in enumerate(names)}
    if len(places) < len(names):
        raise OutOfRange("each item must have a name of its own")

    def pairs(rule: str) -> tuple[tuple[int, int], ...]:
        found = [(item["name"], other) for item in items for other in item.get(rule, ())]
        for name, other in found:
            if other not in places:
                raise OutOfRange(f"{name} {rule} {other}, which is none of the items")
        return tuple((places[name], places[other]) for name, other in found)

    def group(names: Sequence[str]) -> frozenset[int]:
        for name in names:
            if name not in places:
                raise OutOfRange(f"a group of which not all may be done names {name}, which is none of the items")
        return frozenset(places[name] for name in names)

    if sum(item["value"] for item in items) > MOST_WORTH:
        raise OutOfRange(f"the points of all the items come to more than {MOST_WORTH:,}: give each fewer")
    works = Works(
        tuple(_cents(item["cost"]) for item in items),
        tuple(item["value"] for item in items),
        tuple(item.get("must", False) for item in items),
        pairs("needs"),
        pairs("excludes"),
        tuple((rule["number"], group(rule["of"])) for rule in at_most),
    )
    sources = [Source(_cents(budget))]
    try:
        scope = best_scope(works, sources)
    except Contradiction as both:
        one, other = (names[place] for place in both.places)
        raise OutOfRange(f"{one} and {other} are both to be done, but exclude each other") from both
    if scope is None:
        more = shortfall(works, sources).money
        raise OutOfRange(f"what must be done costs {more / 100:,.2f} more than the budget")
    return {
        "chosen": [names[place] for place in scope.items],
        "value": scope.value,
        "cost": scope.cost / 100,
        "left": (sources[0].amount - scope.cost) / 100,
        "bound": scope.bound,
        "proven": scope.proven,
    }


def _cents(amount: float) -> int:
    cents = round(amount * 100)
    if abs(cents - amount * 100) > 1e-4:
        raise OutOfRange(f"an amount of money has two decimals, got {amount:g}")
    return cents


METHOD = Method(
    name="scope.best",
    title="Best scope for a budget",
    formula="max Σ v_i x_i, then min Σ c_i x_i; Σ c_i x_i ≤ budget; x_i ≤ x_j where i needs j, x_i + x_j ≤ 1 where it "
    "excludes j; Σ x_i ≤ n over a group of which at most n are done",
    source=SOURCE,
    valid="items bought whole or not at all; worths that add up",
    inputs={
        "items": listed(
            record(
                "One item.",
                ("name", "cost", "value"),
                name=text("Name, another for each item."),
                cost=number("What it costs.", minimum=0),
                value={"type": "integer", "minimum": 0, "description": "What it is worth, in points."},
                must={"type": "boolean", "description": "Whether it is done whatever the money."},
                needs=listed(text("Name of an item."), "Items without which it is not done.", 0),
                excludes=listed(text("Name of an item."), "Items with which it is not done.", 0),
            ),
            "The items.",
        ),
        "budget": number("The money there is.", minimum=0),
        "at_most": listed(
            record(
                "A group of items.",
                ("number", "of"),
                number={"type": "integer", "minimum": 0, "description": "How many of them may be done at most."},
                of=listed(text("Name of an item."), "The items of the group."),
            ),
            "Groups of items of which not all may be done.",
            0,
        ),
    },
    outputs=(
        Symbol("chosen", "items bought", "text", ""),
        Symbol("value", "their worth", "", ""),
        Symbol("cost", "their cost", "", ""),
        Symbol("left", "money left over", "", ""),
        Symbol("bound", "no scope is worth more than this", "", ""),
        Symbol("proven", "whether it is proved that none is better", "", ""),
    ),
    kernel=_kernel,
    example={
        "items": [
            {"name": "dock", "cost": 41000, "value": 0, "must": True},
            {"name": "blast", "cost": 26000, "value": 24, "needs": ["dock"]},
            {"name": "coat", "cost": 18500, "value": 22, "needs": ["blast"]},
            {"name": "plate", "cost": 38000, "value": 41, "needs": ["blast"]},
            {"name": "doubler", "cost": 9000, "value": 12, "excludes": ["plate"]},
        ],
        "budget": 110000,
    },
    optional=frozenset({"at_most"}),
    cautions=("the points are judgement; change them a little and see whether the choice stays",),
)
