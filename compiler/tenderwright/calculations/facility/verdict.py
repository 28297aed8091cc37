"""The verdict on a facility: its limits one by one, what decides, and by how much."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from tenderwright.calculations.cradle.cars import LIMITS, Fit, Limit, limit_rows
from tenderwright.calculations.method import OutOfRange, Symbol


@dataclass(frozen=True)
class Verdict:
    """Whether she fits: True, False, or None where a limit is not known and none is passed."""

    fits: bool | None
    limits: tuple[Limit, ...]
    deciding: Limit
    """The worst passed; failing that, the first not known; failing that, the one used most."""

    @property
    def words(self) -> str:
        """Say it: pass, fail or not known."""
        return {True: "pass", False: "fail", None: "not known"}[self.fits]

    @property
    def margin(self) -> float | None:
        """Give what is left of the deciding limit, in SI units of its dimension; None where it is not known."""
        return self.deciding.margin

    @property
    def passed(self) -> tuple[Limit, ...]:
        """Give the limits that are passed: the reasons why she does not fit."""
        return tuple(limit for limit in self.limits if limit.met is False)

    @property
    def unknown(self) -> tuple[Limit, ...]:
        """Give the limits that could not be judged."""
        return tuple(limit for limit in self.limits if limit.met is None)

    @property
    def tightest(self) -> Limit | None:
        """Give the known limit used most; None where none is known."""
        known = [limit for limit in self.limits if limit.use is not None]
        return max(known, key=_use) if known else None


def verdict(limits: Iterable[Limit]) -> Verdict:
    """Judge a list of limits: fail where one is passed, not known where one is not known, otherwise pass.

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


def cradle_limits(fit: Fit) -> tuple[Limit, ...]:
    """Give the limits of a train of cars as those of the facility, each named as the cradle's."""
    return tuple(replace(limit, name=f"cradle: {limit.name}") for limit in fit.limits)


VERDICT_SYMBOLS = (
    Symbol("result", "pass, fail or not known", "text", ""),
    Symbol("deciding", "limit that decides", "text", ""),
    Symbol("use", "demand by limit of that one; not known where the limit is nothing", "fraction", "%"),
    LIMITS,
)


def verdict_outputs(found: Verdict) -> Mapping[str, Any]:
    """Give the verdict by name, for a method's outputs."""
    return {
        "result": found.words,
        "deciding": found.deciding.name,
        "use": None if found.deciding.use == math.inf else found.deciding.use,
        "limits": limit_rows(found.limits),
    }


def _use(limit: Limit) -> float:
    return limit.use or 0.0
