"""The battery that lights and alarms of an unmanned tow need."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity, record

MARGIN = 1.5
"""What is carried for each part used (common practice, no source)."""


def battery_asked(
    loads: Sequence[Mapping[str, float]], voltage: float, time: float, margin: float = MARGIN
) -> Mapping[str, float]:
    """Give the charge that lights and alarms use on passage, with a margin.

    Formula: Q = margin x sum(n P h)/U x time/day.
    Symbols: n pieces of power P [W], h share of the day that they burn [s]; U voltage [V]; time of the passage [s].
    Source: derived. Raises OutOfRange.
    """
    if voltage <= 0 or time <= 0 or margin < 1:
        raise OutOfRange("voltage and time must be more than nothing, and the margin 1 or more")
    if any(not 0 <= one["hours"] <= 86400 for one in loads):
        raise OutOfRange("no light burns more than 24 h a day")
    a_day = sum(one.get("count", 1) * one["power"] * one["hours"] for one in loads) / voltage
    return {"a_day": a_day, "charge": a_day * margin * time / 86400}


METHOD = Method(
    name="tow.battery",
    title="Battery for lights and alarms of a tow",
    formula="Q = margin · Σ(n P h)/U · days",
    source=Citation("Charge of what is lit, by its power and hours", standing="derived"),
    valid="a battery in good order at the temperature for which its charge is stated",
    inputs={
        "loads": listed(
            record(
                "What draws on it.",
                ("power", "hours"),
                count=number("How many there are.", minimum=0),
                power=quantity("power", "Power of each."),
                hours=quantity("time", "Time for which it burns each day."),
            ),
            "Lights, alarms and the like.",
        ),
        "voltage": quantity("potential", "Voltage of the battery."),
        "time": quantity("time", "Time that it must last."),
        "margin": number("What is carried for each part used.", minimum=1),
    },
    outputs=(
        Symbol("a_day", "charge used in a day", "charge", "Ah"),
        Symbol("charge", "charge that the battery must hold, margin included", "charge", "Ah"),
    ),
    kernel=battery_asked,
    example={
        "loads": [
            {"count": 2, "power": "25 W", "hours": "13 h"},
            {"count": 2, "power": "15 W", "hours": "13 h"},
            {"count": 6, "power": "5 W", "hours": "24 h"},
        ],
        "voltage": "24 V",
        "time": "3 d",
    },
    optional=frozenset({"margin"}),
)
