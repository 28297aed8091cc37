"""Whether the air and the steel let paint be put on: margin over the dew point, and humidity."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.climate.dew_point import dew_point, require_temperature
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.verdict import within
from tenderwright.quantities.display import show

Rule = Literal["3 K", "5 degF"]

MARGINS: dict[Rule, tuple[float, Citation]] = {
    "3 K": (3.0, Citation("ISO 8502-4", "guidance on condensation", standing="from memory")),
    "5 degF": (25.0 / 9.0, Citation("UFC 3-190-06", "5 degF above the dew point and rising")),
}
"""Least margins of the steel over the dew point, K, and who asks them; they are not equal."""

HUMIDITY_LIMIT = 0.85
HUMIDITY_SOURCE = Citation("IMO MSC.215(82)", "relative humidity", standing="from memory")


class Window(Struct, frozen=True):
    """Whether conditions are within the limits, and why not."""

    dew_point: float
    """degC."""
    margin: float
    """Steel above the dew point, K."""
    least: float
    """Margin asked, K."""
    open: bool
    reasons: tuple[str, ...]


def paint_window(
    air: float, humidity: float, steel: float, rule: Rule = "3 K", humidity_limit: float = HUMIDITY_LIMIT
) -> Window:
    """Judge whether paint may be put on.

    Formula: Ts - Td at least the margin of the rule, and RH at most its limit. Symbols: temperatures of air and
    steel in degC; humidity and its limit fractions. Source: `MARGINS`, `HUMIDITY_SOURCE`. Raises OutOfRange.
    """
    if not 0.0 < humidity_limit <= 1.0:
        raise OutOfRange(f"a limit of humidity is above 0 % and at most 100 %, got {100.0 * humidity_limit:g} %")
    require_temperature(steel)
    dew, least = dew_point(air, humidity), MARGINS[rule][0]
    reasons = []
    if not within(steel - dew, least, at_least=True):
        reasons.append(
            f"the steel is {show(steel - dew, 'temperature difference')} above the dew point, and "
            f"{show(least, 'temperature difference')} are asked"
        )
    if not within(humidity, humidity_limit):
        reasons.append(
            f"the relative humidity is {100 * humidity:.0f} %, and at most {100 * humidity_limit:.0f} % is allowed"
        )
    return Window(dew, steel - dew, least, not reasons, tuple(reasons))


def _kernel(
    air: float, humidity: float, steel: float, rule: Rule = "3 K", humidity_limit: float = HUMIDITY_LIMIT
) -> Mapping[str, Any]:
    found = paint_window(air, humidity, steel, rule, humidity_limit)
    return {
        "dew_point": found.dew_point,
        "margin": found.margin,
        "open": found.open,
        "reasons": list(found.reasons),
    }


METHOD = Method(
    name="climate.paint-window",
    title="Margin of the steel over the dew point",
    formula="Ts − Td ≥ 3 K (or 5 °F), RH ≤ 85 %",
    source=MARGINS["3 K"][1],
    valid="before and while paint is put on, checked again about every four hours; the paint's own limits come first",
    inputs={
        "air": quantity("temperature", "Temperature of the air."),
        "humidity": quantity("fraction", "Relative humidity."),
        "steel": quantity("temperature", "Temperature of the steel."),
        "rule": {"type": "string", "enum": list(MARGINS), "description": "Margin asked; 3 K unless given."},
        "humidity_limit": quantity("fraction", "Greatest relative humidity; 85 % unless given.", "85 %"),
    },
    outputs=(
        Symbol("dew_point", "dew point", "temperature", "degC"),
        Symbol("margin", "steel above the dew point", "temperature_difference", "K"),
        Symbol("open", "whether paint may be put on", "truth", ""),
        Symbol("reasons", "why not", "text", ""),
    ),
    kernel=_kernel,
    example={"air": "20 degC", "humidity": "80 %", "steel": "19.5 degC"},
    optional=frozenset({"rule", "humidity_limit"}),
    cautions=("3 K and 5 degF are not the same margin: name one in a specification",),
)
