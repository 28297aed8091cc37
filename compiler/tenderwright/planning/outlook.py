"""What the trials tell: how dear, how long, how sure, and what drives it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from tenderwright.calculations.cost.totals import contributions, percentiles, share_at_or_below
from tenderwright.planning.trials import GENERAL, Days, Floats, Trials
from tenderwright.pricing.money import cents, share_out, total
from tenderwright.pricing.price import Estimate
from tenderwright.pricing.sections import UNCOUNTED

LEVELS = (0.05, 0.10, 0.20, 0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.90, 0.95)
"""The levels at which the curves are drawn."""


@dataclass(frozen=True)
class Driver:
    """A line or a risk, and its share in the spread of the total."""

    part: str
    item: str
    share: float
    mean: Decimal
    is_risk: bool


@dataclass(frozen=True)
class CostOutlook:
    """The cost of everything but the options, as the trials have it."""

    point: Decimal
    """The sum of the likely amounts, priced on the tendered quantities."""
    point_at: float
    """The share of the trials that cost no more than that."""
    mean: Decimal
    deviation: Decimal
    levels: Mapping[float, Decimal]
    drivers: tuple[Driver, ...]
    """From the greatest share down."""
    by_item: Mapping[str, Mapping[float, Decimal]]
    """What each item has to be given at P50 and at P80, so that the parts add up to the whole; options apart."""

    def at(self, level: float) -> Decimal:
        """Give the cost that is not exceeded in a share of the trials."""
        return self.levels[level]

    @property
    def contingency(self) -> Decimal:
        """Give what has to be laid by over the sum of the likely amounts to be covered in four trials of five."""
        return self.levels[0.80] - self.point


@dataclass(frozen=True)
class TimeOutlook:
    """The days on blocks and in the yard, as the trials have them."""

    dock: Mapping[float, float]
    yard: Mapping[float, float]
    mean_dock: float
    within_tendered: float | None
    """The share of the trials in which the days tendered are enough."""
    critical: Mapping[str, float]
    """Share of the trials in which each activity is critical."""
    together: float
    """Correlation of the cost with the days on blocks."""


@dataclass(frozen=True)
class Outlook:
    """Cost and time as the trials have them."""

    trials: int
    seed: int
    within: float
    across: float
    cost: CostOutlook
    time: TimeOutlook | None


def outlook(trials: Trials, estimate: Estimate, dock_days_tendered: int | None) -> Outlook:
    """Sum up the trials."""
    cost = _cost(trials, estimate)
    time = _time(trials.days, trials.total, dock_days_tendered) if trials.days is not None else None
    settings = trials.prices
    return Outlook(settings.trials, settings.seed, settings.within, settings.across, cost, time)


def money(amount: float) -> Decimal:
    """Give an amount of the trials as money."""
    return cents(Decimal(repr(float(amount))))


def _cost(trials: Trials, estimate: Estimate) -> CostOutlook:
    counted = [line.amount for line in estimate.lines if line.section.code not in UNCOUNTED]
    point = total(counted)
    levels = dict(zip(LEVELS, map(money, percentiles(trials.total, LEVELS)), strict=True))
    lines = {line.number for line in estimate.lines}
    places = {part: place for place, part in enumerate(trials.parts)}
    drivers = [
        Driver(part, trials.items[places[part]], share, money(trials.costs[places[part]].mean()), part not in lines)
        for part, share in trials.shares.items()
    ]
    return CostOutlook(
        point,
        share_at_or_below(float(point), trials.total),
        money(trials.total.mean()),
        money(trials.total.std()),
        levels,
        tuple(sorted(drivers, key=lambda driver: (-driver.share, driver.part))),
        allocated(trials, (0.50, 0.80)),
    )


def allocated(trials: Trials, wanted: Sequence[float]) -> dict[str, dict[float, Decimal]]:
    """Give each item its part of the whole at some levels, options apart, so that the parts add up to the cent.

    Risks of no item stand under `general`. See `parts_at`.
    """
    rows: dict[str, Floats] = {}
    for place, option in enumerate(trials.options):
        if not option:
            item = trials.items[place]
            rows[item] = rows[item] + trials.costs[place] if item in rows else trials.costs[place]
    rows = {name: rows[name] for name in sorted(rows, key=lambda name: (name == GENERAL, name))}
    found: dict[str, dict[float, Decimal]] = {name: {} for name in rows}
    for level, (whole, exact) in zip(wanted, parts_at(rows, trials.total, wanted), strict=True):
        parts = [money(part) for part in exact]
        left = money(whole) - total(parts)
        for name, part, more in zip(rows, parts, _spread(left, len(parts)), strict=True):
            found[name][level] = part + more
    return found


def parts_at(rows: Mapping[str, Floats], whole: Floats, levels: Sequence[float]) -> list[tuple[float, list[float]]]:
    """Give the whole at each level, and what each row is given of it: its mean, and its share of what the level adds.

    a_i = mean_i + c_i (P - mean), c_i = cov(x_i, T)/var(T), by the rule of covariance (Euler) allocation.
    """
    shares = contributions(rows.values(), whole)
    means = np.array([row.mean() for row in rows.values()])
    return [(float(p), (means + shares * (p - whole.mean())).tolist()) for p in percentiles(whole, levels)]


def _spread(left: Decimal, count: int) -> list[Decimal]:
    """Share out the cents that rounding left over."""
    return share_out(left, [Decimal(1)] * count)


def _time(days: Days, cost: Floats, tendered: int | None) -> TimeOutlook:
    def at(row: Floats) -> dict[float, float]:
        return dict(zip(LEVELS, map(float, percentiles(row, LEVELS)), strict=True))

    spread = float(days.dock.std()) * float(cost.std())
    together = float(((days.dock - days.dock.mean()) * (cost - cost.mean())).mean()) / spread if spread else 0.0
    enough = share_at_or_below(tendered + 1e-6, days.dock) if tendered is not None else None
    return TimeOutlook(at(days.dock), at(days.yard), float(days.dock.mean()), enough, days.critical, together)
