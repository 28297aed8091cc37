"""Expected share of working hours in a month when paint may be put on, from monthly figures of the climate.

The day is taken for a sinusoid with its warmest hour at 15 h. The vapour in the air keeps through a day, so humidity
falls as the air warms. The steel follows the air, and at the coldest hour stands off it by a number of kelvins. Days
differ in humidity by a normal spread. Rain falls in its hours of the month at no favoured time; wind speeds have a
Rayleigh distribution. This is a model for planning, derived and plain; it knows no fronts and no shade.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from statistics import NormalDist
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.climate.dew_point import (
    MAGNUS_A,
    MAGNUS_B,
    require_humidity,
    require_temperature,
)
from tenderwright.calculations.climate.paint_window import HUMIDITY_LIMIT
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity
from tenderwright.calculations.verdict import within_each
from tenderwright.quantities.display import plainly

Floats = NDArray[np.float64]

WARMEST_HOUR = 15.0
STEEL_OFFSET = -1.0
"""Steel against air at the coldest hour, K (common practice, no source)."""
HUMIDITY_SPREAD = 0.08
"""Standard deviation of the daily mean humidity from day to day (common practice, no source)."""
LEAST_STEEL = 5.0
"""Least temperature of the steel, degC (common practice, no source; the paint's own limit comes first)."""
WIND_LIMIT = 8.0
"""Greatest wind for spraying in the open, m/s (common practice, no source)."""

_DAYS = 60
"""Kinds of day of equal chance that stand for the spread of humidity."""
_HOURS = np.arange(24) + 0.5


class MonthClimate(Struct, frozen=True):
    """Monthly figures of the climate at the yard."""

    temperature: float
    """Mean of the air, degC."""
    daily_range: float
    """Mean of the day's highest less its lowest, K."""
    humidity: float
    """Mean relative humidity, a fraction."""
    rain_hours: float
    """Hours with rain in the month."""
    wind: float
    """Mean speed, m/s."""
    days: int = 30

    def __post_init__(self) -> None:
        require_humidity(self.humidity)
        if not (math.isfinite(self.daily_range) and self.daily_range >= 0.0):
            raise OutOfRange(
                "the daily range cannot be less than nothing, got "
                f"{plainly(self.daily_range, 'temperature difference')}"
            )
        for extreme in (-0.5, 0.5):
            require_temperature(self.temperature + extreme * self.daily_range)
        if not 28 <= self.days <= 31:
            raise OutOfRange(f"a month has 28 to 31 days, got {self.days}")
        if not 0.0 <= self.rain_hours <= 24.0 * self.days:
            raise OutOfRange(f"a month cannot have {self.rain_hours:g} hours of rain")
        if not (math.isfinite(self.wind) and self.wind >= 0.0):
            raise OutOfRange(f"the wind cannot be less than nothing, got {plainly(self.wind, 'wind speed')}")


class PaintLimits(Struct, frozen=True):
    """What the work asks; None where it does not matter, as under cover."""

    margin: float = 3.0
    """Steel above the dew point, K."""
    humidity: float = HUMIDITY_LIMIT
    least_steel: float = LEAST_STEEL
    wind: float | None = WIND_LIMIT
    """None for brush, roller or work in containment."""
    rain_stops: bool = True
    """False for work under cover."""
    steel_offset: float = STEEL_OFFSET
    humidity_spread: float = HUMIDITY_SPREAD


class Workable(Struct, frozen=True, eq=False):
    """Share of hours when paint may be put on."""

    share: float
    """Of the working hours of the month."""
    hours: float
    """In the month."""
    by_hour: Floats
    """Share of days by hour of the day, 0 to 23."""
    dry: float
    """Share of hours without rain, or 1 where rain does not matter."""
    calm: float
    """Share of hours with wind within the limit, or 1."""


def workable_hours(
    month: MonthClimate, begin: float = 7.0, end: float = 17.0, limits: PaintLimits | None = None
) -> Workable:
    """Expect the share of working hours of a month when paint may be put on.

    Formula: T(h) = Tm + (R/2) cos(2 pi (h - 15)/24); Td from Tm and the day's humidity; RH(h) = es(Td)/es(T(h));
    Ts(h) = T(h) + o (1 - cos(2 pi (h - 15)/24))/2. An hour of a day counts where Ts - Td, RH and Ts are within the
    limits; times (1 - rain hours/hours of the month) and P(wind) = 1 - exp(-(pi/4)(limit/mean)²).
    Symbols: begin and end of the working day in hours, figures as `MonthClimate` and `PaintLimits`.
    Range: open berths in ordinary weather. Source: derived; Magnus formula for es. Raises OutOfRange.
    """
    limits = limits or PaintLimits()
    if not 0.0 <= begin < end <= 24.0:
        raise OutOfRange(f"a working day begins before it ends, from 0 to 24 h, got {begin:g} to {end:g} h")
    if limits.humidity_spread < 0.0:
        raise OutOfRange("the spread of humidity cannot be less than nothing")
    swing = np.cos(2.0 * np.pi * (_HOURS - WARMEST_HOUR) / 24.0)
    air = month.temperature + 0.5 * month.daily_range * swing
    steel = air + 0.5 * limits.steel_offset * (1.0 - swing)
    dew = _dew_points(month, limits.humidity_spread)[:, None]
    humidity = np.exp(_exponent(dew) - _exponent(air))
    fit = within_each(steel - dew, limits.margin, at_least=True) & within_each(humidity, limits.humidity)
    fit &= within_each(steel, limits.least_steel, at_least=True)
    dry = 1.0 - month.rain_hours / (24.0 * month.days) if limits.rain_stops else 1.0
    calm = 1.0 if limits.wind is None else _calm(month.wind, limits.wind)
    by_hour = fit.mean(axis=0) * dry * calm
    worked = np.clip(np.minimum(end, _HOURS + 0.5) - np.maximum(begin, _HOURS - 0.5), 0.0, None)
    share = float((by_hour * worked).sum() / worked.sum())
    return Workable(share, share * (end - begin) * month.days, by_hour, dry, calm)


def _dew_points(month: MonthClimate, spread: float) -> Floats:
    """Give the dew points of days of equal chance."""
    humidity = np.clip(month.humidity + spread * _normal_quantiles(_DAYS), 0.01, 1.0)
    g = np.log(humidity) + MAGNUS_A * month.temperature / (MAGNUS_B + month.temperature)
    dew: Floats = MAGNUS_B * g / (MAGNUS_A - g)
    return dew


def _exponent(temperature: Floats) -> Floats:
    exponent: Floats = MAGNUS_A * temperature / (MAGNUS_B + temperature)
    return exponent


def _calm(mean: float, limit: float) -> float:
    return 1.0 if mean < 1e-3 * limit else 1.0 - math.exp(-0.25 * math.pi * (limit / mean) ** 2)


def _normal_quantiles(number: int) -> Floats:
    """Give the middles of parts of equal chance of the normal distribution."""
    normal = NormalDist()
    return np.array([normal.inv_cdf((index + 0.5) / number) for index in range(number)])


def _kernel(
    temperature: float,
    daily_range: float,
    humidity: float,
    rain: float,
    wind: float,
    days: int = 30,
    begin: float = 7.0,
    end: float = 17.0,
    under_cover: bool = False,
    steel_offset: float = STEEL_OFFSET,
    least_steel: float = LEAST_STEEL,
    humidity_spread: float = HUMIDITY_SPREAD,
) -> Workable:
    limits = PaintLimits(
        least_steel=least_steel,
        wind=None if under_cover else WIND_LIMIT,
        rain_stops=not under_cover,
        steel_offset=steel_offset,
        humidity_spread=humidity_spread,
    )
    month = MonthClimate(temperature, daily_range, humidity, rain / 3600.0, wind, days)
    return workable_hours(month, begin, end, limits)


def outputs_of(found: Workable) -> Mapping[str, Any]:
    """Give the outputs of the method from what is workable."""
    return {
        "share": found.share,
        "hours": 3600.0 * found.hours,
        "by_hour": found.by_hour.tolist(),
        "dry": found.dry,
        "calm": found.calm,
    }


METHOD = Method(
    name="climate.workable-hours",
    title="Workable hours for paint in a month",
    formula="share of hours with Ts − Td ≥ 3 K, RH ≤ 85 % and Ts ≥ least, T(h) a sinusoid; × dry × calm",
    source=Citation("Diurnal sinusoid with vapour that keeps through the day", standing="derived"),
    valid="planning by monthly means, on an open berth or under cover",
    inputs={
        "temperature": quantity("temperature", "Mean temperature of the month."),
        "daily_range": number("Mean of the day's highest less its lowest, in K.", minimum=0),
        "humidity": quantity("fraction", "Mean relative humidity."),
        "rain": quantity("time", "Hours with rain in the month."),
        "wind": quantity("speed", "Mean speed of the wind."),
        "days": {"type": "integer", "minimum": 28, "maximum": 31, "description": "Days; 30 unless given."},
        "begin": number("Hour at which work begins; 7 unless given.", minimum=0, maximum=24),
        "end": number("Hour at which work ends; 17 unless given.", minimum=0, maximum=24),
        "under_cover": {"type": "boolean", "description": "Whether neither rain nor wind stops the work."},
        "steel_offset": number("Steel against air at the coldest hour, in K; -1 unless given."),
        "least_steel": quantity("temperature", "Least temperature of the steel; 5 degC unless given.", "5 degC"),
        "humidity_spread": quantity(
            "fraction", "Spread of the daily humidity (standard deviation); 8 % unless given.", "8 %"
        ),
    },
    outputs=(
        Symbol("share", "share of working hours", "fraction", "%"),
        Symbol("hours", "workable hours in the month", "time", "h"),
        Symbol("by_hour", "share of days, by hour from 0 to 23", "fraction", "%"),
        Symbol("dry", "share of hours without rain", "fraction", "%"),
        Symbol("calm", "share of hours with wind within the limit", "fraction", "%"),
    ),
    kernel=_kernel,
    example={
        "temperature": "11 degC",
        "daily_range": 7,
        "humidity": "78 %",
        "rain": "55 h",
        "wind": "5 m/s",
        "days": 31,
    },
    optional=frozenset({"days", "begin", "end", "under_cover", "steel_offset", "least_steel", "humidity_spread"}),
    cautions=(
        "offset of the steel, spread of humidity and limit of wind are common practice, with no source",
        "rain is taken for independent of humidity, which counts some hours as lost twice",
    ),
    figures=outputs_of,
)
