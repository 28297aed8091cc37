"""Cost and time together in the same trials: every line, every risk, the days on blocks."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.cost.correlated import CorrelatedDraws
from tenderwright.calculations.cost.event import Event
from tenderwright.calculations.cost.three_point import ThreePoint
from tenderwright.calculations.cost.totals import contributions
from tenderwright.calculations.schedule.elapsed import elapsed_trials
from tenderwright.calculations.schedule.trials import criticality, finish_times
from tenderwright.model.owner import OwnerPapers, Risk
from tenderwright.model.programme import DayLine
from tenderwright.model.rates import Simulation
from tenderwright.planning.durations import DAY
from tenderwright.planning.network import REDELIVERY, Node
from tenderwright.planning.schedule import Schedule
from tenderwright.pricing.amount import DISCOUNT, PERCENT
from tenderwright.pricing.price import Estimate, PricedLine
from tenderwright.pricing.sections import UNCOUNTED

Floats = NDArray[np.float64]
TRIALS, SEED = 100_000, 1
GENERAL = "general"
"""Where a risk that belongs to no item is counted."""


@dataclass(frozen=True, eq=False)
class Days:
    """The time of each trial."""

    dock: Floats
    """Days on blocks, shape (trials,)."""
    yard: Floats
    """Days from arrival to redelivery, shape (trials,)."""
    critical: Mapping[str, float]
    """Share of the trials in which each activity is critical."""


@dataclass(frozen=True, eq=False)
class Trials:
    """What each part of the work costs in each trial, and the time that the same trials take."""

    prices: CorrelatedDraws
    """The draws of rates: prices of one yard, or one market, move together."""
    parts: tuple[str, ...]
    """Lines by number and risks by name."""
    items: tuple[str, ...]
    """The item of each part; `general` for a risk of none."""
    options: tuple[bool, ...]
    """Whether each part is an option, which the total leaves out."""
    costs: Floats
    """Shape (parts, trials)."""
    days: Days | None

    @cached_property
    def total(self) -> Floats:
        """Give the cost of everything but the options in each trial."""
        return np.asarray(self.costs[~np.array(self.options, dtype=bool)].sum(axis=0))

    @cached_property
    def by_item(self) -> Mapping[str, Floats]:
        """Give the cost of each item in each trial, its risks in it."""
        found: dict[str, Floats] = {}
        for row, item in zip(self.costs, self.items, strict=True):
            found[item] = found[item] + row if item in found else row.copy()
        return found

    @cached_property
    def shares(self) -> Mapping[str, float]:
        """Give the share of each counted part in the variance of the total; they add up to 1."""
        counted = [place for place, option in enumerate(self.options) if not option]
        found = contributions((self.costs[place] for place in counted), self.total)
        return {self.parts[place]: float(share) for place, share in zip(counted, found, strict=True)}

    def of_items(self, numbers: Sequence[str]) -> Floats:
        """Give the cost of some items together in each trial, with the risks that belong to none."""
        total = np.zeros(self.prices.trials)
        for number in (*numbers, GENERAL):
            if number in self.by_item:
                total += self.by_item[number]
        return total


def trials(papers: OwnerPapers, estimate: Estimate, schedule: Schedule | None) -> Trials:
    """Run the trials: days first, then every line with its quantity and rate, then the risks.

    A line costs quantity times rate, each a three-point (PERT) quantity; a line that counts days of the programme takes
    the days of the trial, and a percentage what its lines come to in it. Rates move with rates; quantities, durations
    and risks move with each other, so that a trial with more work in it is a slower one. A risk happens or not, and its
    days come on top of the critical path.
    """
    prices, work = _draws(papers.rates.simulation if papers.rates else None)
    risks = [risk for risk in (papers.risks.risks if papers.risks else ()) if risk.bears_on == "cost"]
    happens = {risk.risk: work.uniforms(f"risk {risk.risk}", _risk_group(risk)) for risk in risks}
    days = _days(schedule, work, risks, happens) if schedule is not None else None
    counted = {line.line: line for line in papers.programme.day_lines} if papers.programme and days else {}
    costs = np.empty((len(estimate.lines) + len(risks), work.trials))
    places = {line.number: place for place, line in enumerate(estimate.lines)}
    for place, line in enumerate(estimate.lines):
        costs[place] = _line(line, prices, work, _counted_days(counted.get(line.number), days, schedule))
    for place, line in enumerate(estimate.lines):
        if line.of:  # its row holds the percentage so far
            costs[place] *= costs[[places[one] for one in line.of]].sum(axis=0) / 100
    for place, risk in enumerate(risks, start=len(estimate.lines)):
        low, high = float(risk.low or 0), float(risk.high or risk.low or 0)
        costs[place] = Event(_likelihood(risk), low, high).at_uniforms(happens[risk.risk])
    return Trials(
        prices,
        (*(line.number for line in estimate.lines), *(risk.risk for risk in risks)),
        (*(line.item.number for line in estimate.lines), *(risk.item.name if risk.item else GENERAL for risk in risks)),
        (*(line.section.code in UNCOUNTED for line in estimate.lines), *(False for _ in risks)),
        costs,
        days,
    )


def _draws(simulation: Simulation | None) -> tuple[CorrelatedDraws, CorrelatedDraws]:
    """Give the draws of rates, and those of how much work there is; each has its own common factor."""
    if simulation is None:
        return CorrelatedDraws(TRIALS, SEED, 0.0, 0.0), CorrelatedDraws(TRIALS, SEED + 1, 0.0, 0.0)
    within, across = simulation.within.si, simulation.across.si
    return (
        CorrelatedDraws(simulation.trials, simulation.seed, within, across),
        CorrelatedDraws(simulation.trials, simulation.seed + 1, within, across),
    )


def _group(item: int) -> str:
    """Give the group of an item: its hundred, which is its section."""
    return str(item // 100)


def _risk_group(risk: Risk) -> str:
    return _group(int(risk.item.name)) if risk.item is not None else GENERAL


def _likelihood(risk: Risk) -> float:
    return risk.likelihood.si if risk.likelihood is not None else 1.0


def _line(line: PricedLine, prices: CorrelatedDraws, work: CorrelatedDraws, days: Floats | None) -> Floats:
    if line.form == "fixed":
        return np.full(prices.trials, float(line.amount))
    group = _group(line.item.item)
    price = line.unit_price
    rate = _drawn(f"rate {line.number}", float(price.low), float(price.likely), float(price.high), group, prices)
    if line.form in ("lump", PERCENT):
        return rate
    if line.form == DISCOUNT:
        return -rate
    quantity = days
    if quantity is None:
        ends = float(line.least), float(line.quantity.number), float(line.most)
        quantity = _drawn(f"quantity {line.number}", *ends, group, work)
    if line.form == "markup":
        return quantity * (1 + rate / 100)
    return -quantity * rate if line.form == "credit" else quantity * rate


def _drawn(name: str, low: float, likely: float, high: float, group: str, settings: CorrelatedDraws) -> Floats:
    if low == high:
        return np.full(settings.trials, likely)
    return ThreePoint(low, likely, high).at_scores(settings.scores(name, group))


def _counted_days(line: DayLine | None, days: Days | None, schedule: Schedule | None) -> Floats | None:
    if line is None or days is None or schedule is None:
        return None
    dock, yard = np.ceil(days.dock - 1e-6), np.ceil(days.yard - 1e-6)
    found = {
        "dock days": dock,
        "further dock days": dock - (schedule.dock_days_tendered or 0),
        "yard days": yard,
        "wet days": yard - dock,
    }[line.days]
    return np.asarray(np.maximum(found - line.less, 0.0), np.float64)


def _days(schedule: Schedule, settings: CorrelatedDraws, risks: Sequence[Risk], happens: Mapping[str, Floats]) -> Days:
    network = schedule.network
    durations = np.empty((len(network.nodes), settings.trials))
    for place, node in enumerate(network.nodes):
        durations[place] = _duration(node, settings)
    late = np.zeros(settings.trials)
    for risk in risks:
        if risk.days_high is not None:
            low = risk.days_low.si / DAY if risk.days_low is not None else 0.0
            late += Event(_likelihood(risk), low, risk.days_high.si / DAY).at_uniforms(happens[risk.risk])
    pairs = network.pairs
    finish = finish_times(durations, pairs)
    shares = criticality(durations, pairs, finish)
    dock = finish[network.of_kind("undocking")] - finish[network.of_kind("docking")] + late
    yard = finish[network.index[REDELIVERY]] + late
    names = (node.name for node in network.nodes)
    return Days(dock, yard, {name: float(share) for name, share in zip(names, shares, strict=True)})


def _duration(node: Node, settings: CorrelatedDraws) -> Floats:
    days = node.duration
    group = _group(node.item.item) if node.item is not None else GENERAL
    worked = _drawn(f"days {node.name}", days.low, days.likely, days.high, group, settings)
    return elapsed_trials(worked, days.week, days.workable, _generator(settings.seed, node.name))


def _generator(seed: int, name: str) -> np.random.Generator:
    """Give the generator of an activity's weather, which follows from the seed and its name alone."""
    digest = hashlib.sha256(f"{seed}\0weather\0{name}".encode()).digest()
    return np.random.Generator(np.random.PCG64(int.from_bytes(digest, "big")))
