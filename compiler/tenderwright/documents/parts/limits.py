"""How a limit and its verdict are told: figures in the unit of their dimension, and a word or two for the result."""

from __future__ import annotations

from tenderwright.calculations.verdict import Limit
from tenderwright.quantities.display import plus_minus, show

_COARSER = {"moment": -1, "angle": -1}


def shown(number: float | None, limit: Limit) -> str:
    """Show a figure of a limit in the unit of its dimension."""
    if number is None:
        return "not known"
    return show(number, limit.purpose, more=_COARSER.get(limit.dimension, 0))


def both(one: Limit) -> str:
    """Show the demand, with what it may be out by where that was worked out, and beside it what estimates say."""
    known = shown(one.demand, one)
    if one.demand is not None and one.uncertainty > 0:
        known = plus_minus(one.demand, one.uncertainty, one.purpose)
    return known if one.estimate is None else f"{known} rigid, {shown(one.estimate, one)} elastic by estimates"


def word(met: bool | None) -> str:
    """Say a verdict in a word or two."""
    return {True: "Pass", False: "Fail", None: "Not known"}[met]


def judged(limit: Limit) -> str:
    """Say a figure, what is allowed and the verdict; both figures where the worse rests on estimates."""
    if limit.demand is None:
        return "not known" if limit.limit is None else f"not known, {shown(limit.limit, limit)} allowed"
    allowed = f"{shown(limit.limit, limit)} allowed" if limit.limit is not None else "no limit is given"
    words = f"{word(limit.met).lower()}, {allowed}"
    if limit.estimate is None:
        return f"{shown(limit.demand, limit)}: {words}"
    return f"{shown(limit.demand, limit)} rigid, {shown(limit.estimate, limit)} elastic by estimates: {words}"
