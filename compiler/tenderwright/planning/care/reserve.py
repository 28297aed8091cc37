"""What is set aside each year for the docking after the one planned, at P50 and P80."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from decimal import Decimal

from msgspec import Struct

from tenderwright.calculations.cost.set_aside import SetAside, set_aside
from tenderwright.calculations.method import OutOfRange
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.rates import PriceIndex
from tenderwright.pricing.money import cents

_YEAR = timedelta(days=365.25)
LEVELS = (0.50, 0.80)


class Saving(Struct, frozen=True):
    """What is set aside at one level of certainty."""

    today: Decimal
    """What it would cost at the prices of this docking."""
    then: Decimal
    yearly: Decimal
    years: tuple[tuple[int, Decimal], ...]
    """Each year with what is to have been set aside by its end."""


class Reserved(Struct, frozen=True):
    """What is set aside, by level."""

    due: date
    rise: float
    rise_source: str
    share: float
    share_source: str
    interest: float
    saved: Decimal
    levels: Mapping[float, Saving]


def reserved(papers: OwnerPapers, costs: Mapping[float, Decimal], from_: date, due: date) -> Reserved | str:
    """Work out what is set aside from one docking to the next; words for what is wanting where it cannot be.

    `costs` are those of this docking by level, `from_` the day from which money is set aside.
    """
    told = papers.reserve
    found = _rise(papers)
    if found is None:
        return "it needs `rise` in owner/reserve.yaml, or an index in owner/indices.yaml"
    rise, rise_source = found
    share = told.share.si if told is not None and told.share is not None else 1.0
    interest = told.interest.si if told is not None and told.interest is not None else 0.0
    saved = told.saved if told is not None and told.saved is not None else Decimal(0)
    years = (due - from_) / _YEAR
    levels = {}
    for level, cost in costs.items():
        today = cents(cost * Decimal(repr(share)))
        try:
            made = set_aside(float(today), years, rise, interest, float(saved))
        except OutOfRange as error:
            return str(error)
        levels[level] = Saving(
            today, _money(made.cost_then), _money(made.yearly), _by_year(made, saved, interest, from_)
        )
    why = told.because if told is not None and told.share is not None else "as this docking, options left out"
    return Reserved(due, rise, rise_source, share, why or "the owner", interest, saved, levels)


def _by_year(made: SetAside, saved: Decimal, interest: float, from_: date) -> tuple[tuple[int, Decimal], ...]:
    sum_, rows = float(saved), []
    for number in range(1, made.payments + 1):
        sum_ = sum_ * (1 + interest) + made.yearly
        rows.append((from_.year + number, _money(sum_)))
    return tuple(rows)


def _money(amount: float) -> Decimal:
    return cents(Decimal(repr(round(amount, 6))))


def _rise(papers: OwnerPapers) -> tuple[float, str] | None:
    told = papers.reserve
    if told is not None and told.rise is not None:
        return told.rise.si, told.rise_because or "the owner"
    index = papers.indices.indices[0] if papers.indices is not None and papers.indices.indices else None
    rise = mean_rise(index) if index is not None else None
    return None if index is None or rise is None else (rise, f"mean of {index.name}, {_span(index)}")


def mean_rise(index: PriceIndex) -> float | None:
    """Give the mean rise of an index in a year, from its first month to its last; None where it has one alone."""
    first, last = min(index.months), max(index.months)
    years = _years(last) - _years(first)
    return float((index.months[last] / index.months[first]) ** (1 / years) - 1) if years > 0 else None


def _span(index: PriceIndex) -> str:
    return f"{min(index.months)} to {max(index.months)}"


def _years(month: str) -> float:
    year, _, number = month.partition("-")
    return int(year) + int(number) / 12
