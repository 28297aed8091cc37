"""The verdict on a facility: its limits one by one, what decides, and by how much."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from tenderwright.calculations.cradle.cars import Fit, Limit
from tenderwright.calculations.method import OutOfRange


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


def rows(limits: Iterable[Limit]) -> list[dict[str, Any]]:
    """Give the limits as rows of plain data, in SI units of each dimension."""
    return [
        {
            "name": limit.name,
            "dimension": limit.dimension,
            "demand": limit.demand,
            "limit": limit.limit,
            "margin": limit.margin,
            "met": limit.met,
        }
        for limit in limits
    ]


def verdict_outputs(found: Verdict) -> Mapping[str, Any]:
    """Give the verdict by name, for a method's outputs."""
    return {
        "result": found.words,
        "deciding": found.deciding.name,
        "use": found.deciding.use,
        "limits": rows(found.limits),
    }


def _use(limit: Limit) -> float:
    return limit.use or 0.0
