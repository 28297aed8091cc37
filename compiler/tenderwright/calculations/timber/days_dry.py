"""The days that planking stands dry, against the days that it may."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.verdict import within


def days_dry(planned: float, limit: float) -> Mapping[str, Any]:
    """Judge how long the planking is to stand dry.

    Formula: planned <= limit; beyond = planned - limit. Symbols: times [s].
    Source: common practice, no source; the limit is an input. Raises OutOfRange.
    """
    if planned < 0 or limit < 0:
        raise OutOfRange("no time is less than nothing")
    met = within(planned, limit)
    return {"planned": planned, "met": met, "beyond": 0.0 if met else planned - limit}


METHOD = Method(
    name="timber.days-dry",
    title="Days that planking stands dry",
    formula="days on blocks ≤ days before the planking shrinks too far",
    source=Citation("Shipwrights' practice", standing="common practice, no source"),
    valid="planking that is not wetted meanwhile; sun and wind shorten the time",
    inputs={
        "planned": quantity("time", "Time that she is to stand dry."),
        "limit": quantity("time", "Time that she may."),
    },
    outputs=(
        Symbol("planned", "time that the planking stands dry", "time", "d"),
        Symbol("met", "whether it may stand dry so long without being wetted", "truth", ""),
        Symbol("beyond", "time beyond what it may", "time", "d"),
    ),
    kernel=days_dry,
    example={"planned": "10 d", "limit": "14 d"},
    cautions=("beyond it keep the planking wet; float her slowly, with pumps ready",),
)
