"""The time to the next docking beside the times that she went before."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.thickness.readings import year_of

_YEAR = 365.25 * 86400.0

KEPT = 0.75
"""Share of the shortest time between her dockings below which the next is shorter than she ever kept (judgement, no
source)."""


class Intervals(Struct, frozen=True):
    """The times between dockings, in years, oldest first, and the one planned."""

    between: tuple[float, ...]
    planned: float

    @property
    def shortest(self) -> float:
        """Give the shortest time between dockings, years."""
        return min(self.between)

    @property
    def longest(self) -> float:
        """Give the longest, years."""
        return max(self.between)

    @property
    def kept_before(self) -> bool:
        """Tell whether the time planned is near one that she kept."""
        return self.planned >= KEPT * self.shortest


def intervals(dockings: Sequence[str], planned: str, interval: float) -> Intervals:
    """Set the time to the next docking beside those between her dockings, the one planned included.

    Symbols: dockings, days on which she was docked; planned, the day of the docking planned; interval to the next [s].
    Source: derived. Raises OutOfRange.
    """
    years = sorted(year_of(day) for day in (*dockings, planned))
    if len(years) < 2:
        raise OutOfRange("one docking at least is needed beside the one planned")
    if not interval > 0:
        raise OutOfRange("the time to the next docking must be more than nothing")
    return Intervals(tuple(b - a for a, b in itertools.pairwise(years)), interval / _YEAR)


def outputs_of(found: Intervals) -> Mapping[str, Any]:
    """Give it as the outputs of the method."""
    return {
        "shortest": found.shortest * _YEAR,
        "longest": found.longest * _YEAR,
        "share": found.planned / found.shortest if found.shortest else None,
        "kept_before": found.kept_before,
    }


METHOD = Method(
    name="docking.interval",
    title="The time to the next docking, beside those that she went before",
    formula="share = interval planned/shortest time between dockings",
    source=Citation("Her own history", standing="derived"),
    valid="dockings of which the day is known",
    inputs={
        "dockings": {
            "type": "array",
            "minItems": 1,
            "description": "Days on which she was docked before.",
            "items": {"type": "string", "format": "date", "description": "A day."},
        },
        "planned": {"type": "string", "format": "date", "description": "Day of the docking planned."},
        "interval": quantity("time", "From that docking to the next."),
    },
    outputs=(
        Symbol("shortest", "shortest time between her dockings, the one planned included", "time", "yr"),
        Symbol("longest", "longest of them", "time", "yr"),
        Symbol("share", "time planned, as a share of the shortest", "fraction", "%"),
        Symbol("kept_before", "whether the time planned is near one that she kept", "truth", ""),
    ),
    kernel=intervals,
    figures=outputs_of,
    example={"dockings": ["1988-04-18", "2007-09-10"], "planned": "2027-04-21", "interval": "5 yr"},
)
