"""Limits, and the verdict over all that apply: the one comparison by which anything is held against a limit."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from math import inf, isclose
from typing import Any

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray

from tenderwright.calculations.method import BY_ROW, OutOfRange, Symbol
from tenderwright.calculations.schema import as_dimension, listed, record, text
from tenderwright.quantities.display import METRIC_UNITS
from tenderwright.quantities.purposes import purpose_of

TOLERANCE = 1e-9
"""Share of the greater of two figures, and in SI units the least difference, below which they are the same figure.

So what reaches its limit is judged alike whichever way its last digit was rounded.
"""


DOUBT = 2.0
"""Standard uncertainties of a figure within which of its limit it may lie on either side: about 95 % (JCGM 100:2008,
6.3.3)."""


def within(figure: float, limit: float, *, strict: bool = False, at_least: bool = False) -> bool:
    """Tell whether a figure is no more than its limit, or with `at_least` no less.

    Formula: x <= l, or x >= l; x < l or x > l where `strict`, so that reaching the limit already passes it. Figures
        that differ by less than TOLERANCE are the same.
    """
    if isclose(figure, limit, rel_tol=TOLERANCE, abs_tol=TOLERANCE):
        return not strict
    return figure > limit if at_least else figure < limit


def within_each(
    figures: NDArray[np.float64],
    limits: NDArray[np.float64] | float,
    *,
    strict: bool = False,
    at_least: bool = False,
) -> NDArray[np.bool_]:
    """Tell it of many figures at once, by the same comparison; a figure that is not a number is within nothing."""
    same = np.isclose(figures, limits, rtol=0.0, atol=TOLERANCE)
    same |= np.abs(figures - limits) <= TOLERANCE * np.maximum(np.abs(figures), np.abs(limits))
    beyond = figures > limits if at_least else figures < limits
    found: NDArray[np.bool_] = beyond & ~same if strict else beyond | same
    return found


class Limit(Struct, frozen=True):
    """One named limit: the figure, what is allowed (None where not known), in SI units of `dimension`."""

    name: str
    dimension: str
    demand: float | None
    """None where it is not known, as where the hull cannot stand."""
    limit: float | None
    strict: bool = False
    """Whether reaching the limit already passes it."""
    at_least: bool = False
    """Whether the figure must be no less than the limit, in place of no more."""
    source: str = ""
    """Of what is allowed."""
    uncertainty: float = 0.0
    """Standard uncertainty of the figure; nothing where none was worked out."""
    estimate: float | None = None
    """The figure by estimates, where that is more than the demand: within the limit or not, it is then not known."""
    rests_on: str = ""
    """What that rests on."""

    def or_estimate(self, figure: float | None, rests_on: str) -> Limit:
        """Hold another way of finding the figure against the limit too: one that rests on estimates, or on none.

        The worse of the two is judged. Of a limit that is not to be passed upward.
        """
        if figure is None or (self.demand is not None and within(figure, self.demand)):
            return self
        if rests_on:
            return replace(self, estimate=figure, rests_on=rests_on)
        return replace(self, demand=figure)

    @property
    def purpose(self) -> str:
        """Name what its figures are for."""
        return "clearance" if self.dimension == "length" else purpose_of(self.dimension, METRIC_UNITS[self.dimension])

    @property
    def worse(self) -> float | None:
        """Give the figure that is worse: the demand, or what estimates say."""
        return self.demand if self.estimate is None else self.estimate

    @property
    def margin(self) -> float | None:
        """Give what is left to the limit by the worse figure; less than nothing where the limit is passed."""
        if self.worse is None or self.limit is None:
            return None
        return self.worse - self.limit if self.at_least else self.limit - self.worse

    @property
    def use(self) -> float | None:
        """Give the demand as a fraction of the limit; 0 for no demand, even where no limit is known."""
        if self.worse is not None and self.worse <= TOLERANCE and not self.at_least:
            return 0.0
        if self.worse is None or self.limit is None:
            return None
        asked, there = (self.limit, self.worse) if self.at_least else (self.worse, self.limit)
        return asked / there if there > 0.0 else inf

    @property
    def met(self) -> bool | None:
        """Tell whether the demand is within the limit; None where either is not known and there is a demand.

        None too where it is so by estimates only, or by less than twice its standard uncertainty: what passes may as
        well fail.
        """
        if self.demand is None or self.limit is None:
            return True if self.use == 0.0 else None
        if not within(self.demand, self.limit, strict=self.strict, at_least=self.at_least):
            return False
        return None if self.doubted or self.estimate is not None else True

    @property
    def doubted(self) -> bool:
        """Tell whether the demand is within the limit by less than twice its standard uncertainty."""
        margin = self.margin
        return margin is not None and self.uncertainty > 0 and 0 <= margin < DOUBT * self.uncertainty

    def as_input(self) -> dict[str, Any]:
        """Give it as the input of a method."""
        found: dict[str, Any] = {"name": self.name, "dimension": self.dimension}
        figures = {"demand": self.demand, "limit": self.limit, "estimate": self.estimate}
        found |= {key: value for key, value in figures.items() if value is not None}
        found |= {key: True for key in ("strict", "at_least") if getattr(self, key)}
        found |= {"uncertainty": self.uncertainty} if self.uncertainty else {}
        return found | {key: getattr(self, key) for key in ("source", "rests_on") if getattr(self, key)}


class Verdict(Struct, frozen=True):
    """The verdict over all limits that apply."""

    met: bool | None
    """None where none is passed and a limit is not known, or is kept by estimates only."""
    limits: tuple[Limit, ...]
    governs: Limit
    """The worst passed; failing that, the first not known; failing that, the one used most."""

    @property
    def words(self) -> str:
        """Say it: pass, fail or not known."""
        return {True: "pass", False: "fail", None: "not known"}[self.met]

    @property
    def margin(self) -> float | None:
        """Give what is left of the limit that governs, in SI units of its dimension; None where it is not known."""
        return self.governs.margin

    @property
    def passed(self) -> tuple[Limit, ...]:
        """Give the limits that are passed: the reasons of a failure."""
        return tuple(limit for limit in self.limits if limit.met is False)

    @property
    def unknown(self) -> tuple[Limit, ...]:
        """Give the limits that could not be judged."""
        return tuple(limit for limit in self.limits if limit.met is None)

    @property
    def doubted(self) -> tuple[Limit, ...]:
        """Give the limits that are met by less than the figure is known to."""
        return tuple(limit for limit in self.limits if limit.doubted)

    @property
    def wanting(self) -> tuple[Limit, ...]:
        """Give the limits of which the figure or what is allowed is not there."""
        return tuple(limit for limit in self.unknown if limit.demand is None or limit.limit is None)

    @property
    def estimated(self) -> tuple[Limit, ...]:
        """Give the limits that are kept by one way of finding the figure, and by another on estimates alone."""
        return tuple(limit for limit in self.unknown if limit.limit is not None and limit.estimate is not None)

    @property
    def why_unknown(self) -> str:
        """Say why the verdict is not known, without figures; empty where it is."""
        if self.met is not None:
            return ""
        reasons = []
        if self.wanting:
            reasons.append(f"no limit is given for {', '.join(limit.name for limit in self.wanting)}")
        if self.doubted:
            names = ", ".join(limit.name for limit in self.doubted)
            reasons.append(f"it is met by less than the figure is known to: {names}")
        if self.estimated:
            reasons.append(f"the worse figure rests on estimates: {', '.join(one.name for one in self.estimated)}")
        return "; ".join(reasons)

    @property
    def tightest(self) -> Limit | None:
        """Give the known limit used most; None where none is known."""
        known = [limit for limit in self.limits if limit.use is not None]
        return max(known, key=_use) if known else None


def verdict(limits: Iterable[Limit]) -> Verdict:
    """Judge a list of limits: fail where one is passed, not known where one is not known or doubted, otherwise pass.

    Raises OutOfRange where there are none.
    """
    everything = tuple(limits)
    if not everything:
        raise OutOfRange("there are no limits to judge by")
    passed = [limit for limit in everything if limit.met is False]
    unknown = [limit for limit in everything if limit.met is None]
    if passed:
        return Verdict(False, everything, max(passed, key=_use))
    if unknown:
        return Verdict(None, everything, unknown[0])
    return Verdict(True, everything, max(everything, key=_use))


def least(limits: Iterable[Limit]) -> Limit | None:
    """Give the least of the limits that are known, where all bound one figure from above; None where none is."""
    known = [(one.limit, one) for one in limits if one.limit is not None]
    return min(known, key=lambda pair: pair[0])[1] if known else None


def _use(limit: Limit) -> float:
    return limit.use or 0.0


LIMITS = Symbol(
    "limits",
    "each limit, with what is asked and what is left of it",
    "table",
    "",
    (
        Symbol("name", "the limit", "text", ""),
        Symbol("dimension", "what is limited", "text", ""),
        Symbol("demand", "what is asked", BY_ROW, ""),
        Symbol("estimate", "what is asked by estimates, where that is more", BY_ROW, ""),
        Symbol("limit", "what is allowed", BY_ROW, ""),
        Symbol("margin", "limit less the greater of both", BY_ROW, ""),
        Symbol("uncertainty", "standard uncertainty of the demand", BY_ROW, ""),
        Symbol("met", "whether the demand is within the limit", "truth", ""),
        Symbol("source", "where what is allowed comes from", "text", ""),
    ),
)
"""The limits as an output of a method; `limit_rows` gives its figure."""

VERDICT_SYMBOLS = (
    Symbol("result", "pass, fail or not known", "text", ""),
    Symbol("deciding", "limit that decides", "text", ""),
    Symbol("use", "demand by limit of that one; not known where the limit is nothing", "fraction", "%"),
    LIMITS,
)
"""A verdict as outputs of a method."""

LIMITS_INPUT = listed(
    record(
        "A limit.",
        ("name", "dimension"),
        name=text("What is limited."),
        dimension={"type": "string", "enum": list(METRIC_UNITS), "description": "What it measures."},
        demand=text("The figure, in a unit of that dimension; left out where it is not known."),
        limit=text("What is allowed, in a unit of that dimension; left out where it is not known."),
        strict={"type": "boolean", "description": "Whether reaching the limit already passes it."},
        at_least={"type": "boolean", "description": "Whether the figure must be no less, in place of no more."},
        source=text("Where the limit comes from."),
        uncertainty=text(
            "Standard uncertainty of the figure, in such a unit; a pass by less than twice it is not known."
        ),
        estimate=text("The figure by estimates, in such a unit, where that is more; then it is not known."),
        rests_on=text("What that figure rests on."),
    )
    | {"allOf": [as_dimension(one, "demand", "limit", "uncertainty", "estimate") for one in METRIC_UNITS]},
    "Limits, each with its demand.",
    0,
)
"""Limits as an input of a method."""


def limits_from_input(limits: Sequence[Mapping[str, Any] | Limit]) -> list[Limit]:
    """Make limits from converted input, or take those that are made."""
    return [one if isinstance(one, Limit) else Limit(**{"demand": None, "limit": None} | dict(one)) for one in limits]


def limit_rows(limits: Iterable[Limit]) -> list[dict[str, Any]]:
    """Give limits as rows of plain data, in SI units of each dimension."""
    return [{column.name: getattr(limit, column.name) for column in LIMITS.columns} for limit in limits]


def verdict_outputs(found: Verdict) -> Mapping[str, Any]:
    """Give the verdict by name, for a method's outputs."""
    return {
        "result": found.words,
        "deciding": found.governs.name,
        "use": None if found.governs.use == inf else found.governs.use,
        "limits": limit_rows(found.limits),
    }
