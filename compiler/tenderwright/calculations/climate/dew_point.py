"""Dew point of air by the Magnus formula."""

from __future__ import annotations

import math
from collections.abc import Mapping

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import plainly

MAGNUS_A, MAGNUS_B = 17.62, 243.12
"""Constants over water, the second in degC (WMO and Sonntag, from memory)."""

COLDEST, HOTTEST = -45.0, 60.0
"""Range of the formula, degC."""

SOURCE = Citation("Magnus formula with the constants of WMO and Sonntag", standing="from memory")


def saturation_pressure(temperature: float) -> float:
    """Find the pressure of saturated vapour over water, Pa: 611.2 exp(a T/(b + T)), temperature T in degC.

    Source: `SOURCE`. Raises OutOfRange outside -45 to 60 degC.
    """
    require_temperature(temperature)
    return 611.2 * math.exp(MAGNUS_A * temperature / (MAGNUS_B + temperature))


def dew_point(temperature: float, humidity: float) -> float:
    """Find the dew point, degC.

    Formula: g = ln(RH) + a T/(b + T); Td = b g/(a - g). Symbols: temperature T of the air in degC, humidity RH a
    fraction. Range: -45 to 60 degC; over water, so below 0 degC a frost point would be a little higher.
    Source: `SOURCE`; within 0.035 K of PsychroLib 2.5.0 from 0 to 40 degC where the dew point is above 0.
    Raises OutOfRange.
    """
    require_temperature(temperature)
    require_humidity(humidity)
    g = math.log(humidity) + MAGNUS_A * temperature / (MAGNUS_B + temperature)
    return MAGNUS_B * g / (MAGNUS_A - g)


def require_temperature(value: float) -> None:
    """Refuse a temperature outside the formula's range."""
    if not COLDEST <= value <= HOTTEST:
        raise OutOfRange(f"the dew point is known from -45 to 60 degC, got {plainly(value, 'temperature')}")


def require_humidity(value: float) -> None:
    """Refuse a relative humidity that is not above 0 and at most 1."""
    if not 0.0 < value <= 1.0:
        raise OutOfRange(f"the relative humidity is above 0 % and at most 100 %, got {100.0 * value:g} %")


def _kernel(temperature: float, humidity: float) -> Mapping[str, float]:
    found = dew_point(temperature, humidity)
    return {
        "dew_point": found,
        "least_steel_3_k": found + 3.0,
        "vapour_pressure": humidity * saturation_pressure(temperature),
    }


METHOD = Method(
    name="climate.dew-point",
    title="Dew point of the air",
    formula="g = ln RH + 17.62 T/(243.12 + T); Td = 243.12 g/(17.62 − g)",
    source=SOURCE,
    valid="-45 to 60 degC, over water; below 0 degC it is not the frost point",
    inputs={
        "temperature": quantity("temperature", "Temperature of the air."),
        "humidity": quantity("fraction", "Relative humidity."),
    },
    outputs=(
        Symbol("dew_point", "dew point", "temperature", "degC"),
        Symbol("least_steel_3_k", "least temperature of the steel to paint, 3 K above it", "temperature", "degC"),
        Symbol("vapour_pressure", "pressure of the vapour", "pressure", "Pa"),
    ),
    kernel=_kernel,
    example={"temperature": "20 degC", "humidity": "80 %"},
    cautions=("measure at the steel, on the side and in the shade where the work is",),
)
