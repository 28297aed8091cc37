"""Forecast of thickness to the dockings ahead, and what it asks of each plate."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, Literal

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.thickness.columns import Floats
from tenderwright.calculations.thickness.limits import renewal_thickness, substantial_thickness
from tenderwright.calculations.thickness.rate import NO_MEASURABLE_LOSS

Call = Literal["sound", "watch", "renew now, ahead of its limit", "renew now"]
CALLS: tuple[Call, ...] = ("sound", "watch", "renew now, ahead of its limit", "renew now")
CALL_SOUND, CALL_WATCH, CALL_NEXT, CALL_NOW = 0, 1, 2, 3
"""Codes of the calls: their places in `CALLS`."""

_YEAR = 365.25 * 86400.0
_ROUND_OFF = 1e-12
_LEAST_RATE = 1e-9
"""A rate under this, m/yr, is nothing: a nanometre in a year."""


class Forecast(Struct, frozen=True, eq=False):
    """What lies ahead of plates; one element per plate."""

    at_docking: Floats
    """Thickness expected at the docking now planned, m."""
    at_next: Floats
    """Thickness expected at the docking after it, m."""
    least_at_next: Floats
    """The same at the upper rate, m."""
    life: Floats
    """Years from the survey until the renewal thickness; nan where there is no measurable loss."""
    call: NDArray[np.int8]
    """Code of `CALLS`."""


def forecast(
    thickness: Floats,
    as_built: Floats,
    allowable: float | Floats,
    rate: Floats,
    upper_rate: Floats,
    to_docking: float | Floats,
    interval: float,
) -> Forecast:
    """Forecast plates and call them.

    Formula: t(T) = t - max(0, r) T; life = (t - t_renew) / r for r > 0. Called for renewal now where t is below
    t0 (1 - a) at the docking planned; now and ahead of its limit where it is below it one interval later; watch where
    it would be so at the upper rate, or where it is below t0 (1 - 0.75 a) by then; else sound.
    Symbols: thickness t, as_built t0 in m; allowable a; rate r and upper_rate in m/yr (nan: not known, taken as
    nothing, and the plate is watched at least); to_docking years from survey to docking (a number or one for each
    plate), interval years to the next.
    Source: rate and forecast by NAVFAC P-1010 (r = loss by years); the calls are derived. Raises OutOfRange.
    """
    for name, years in (("time to the docking", to_docking), ("interval between dockings", interval)):
        if not (np.isfinite(years).all() and np.min(years, initial=0.0) >= 0.0):
            raise OutOfRange(f"the {name} cannot be less than nothing, got {np.min(years):g} yr")
    known = ~np.isnan(rate)
    loss = np.fmax(rate, 0.0)
    upper = np.fmax(np.fmax(upper_rate, 0.0), loss)
    renew, substantial = renewal_thickness(as_built, allowable), substantial_thickness(as_built, allowable)
    now = thickness - loss * to_docking
    later = now - loss * interval
    least = thickness - upper * (to_docking + interval)
    call = np.full(thickness.shape, CALL_SOUND, np.int8)
    call[(later < substantial - _ROUND_OFF) | (least < renew - _ROUND_OFF) | ~known] = CALL_WATCH
    call[later < renew - _ROUND_OFF] = CALL_NEXT
    call[now < renew - _ROUND_OFF] = CALL_NOW
    life = np.full(thickness.shape, np.nan)
    losing = known & (rate > _LEAST_RATE)
    life[losing] = np.maximum((thickness - renew)[losing], 0.0) / rate[losing]
    return Forecast(now, later, least, life, call)


def _kernel(
    as_built: float,
    thickness: float,
    allowable: float,
    rate: float,
    to_docking: float,
    interval: float,
    uncertainty: float = 0.0,
) -> Mapping[str, Any]:
    yearly = np.array([rate * _YEAR])
    found = forecast(
        np.array([thickness]),
        np.array([as_built]),
        allowable,
        yearly,
        yearly + uncertainty * _YEAR,
        to_docking / _YEAR,
        interval / _YEAR,
    )
    life = float(found.life[0])
    return {
        "at_docking": float(found.at_docking[0]),
        "at_next": float(found.at_next[0]),
        "least_at_next": float(found.least_at_next[0]),
        "renewal_thickness": float(renewal_thickness(as_built, allowable)),
        "life": None if math.isnan(life) else life * _YEAR,
        "call": CALLS[found.call[0]],
        "note": NO_MEASURABLE_LOSS if math.isnan(life) else "",
    }


METHOD = Method(
    name="thickness.forecast",
    title="Forecast of thickness to the dockings ahead",
    formula="t(T) = t − max(0, r) T; life = (t − t₀(1 − a)) / r for r > 0",
    source=Citation("NAVFAC P-1010", "loss by years; the calls are derived"),
    valid="loss that goes on as it went; a coating renewed or lost changes it",
    inputs={
        "as_built": _length("Thickness as built."),
        "thickness": _length("Thickness at the survey."),
        "allowable": quantity("fraction", "What the plate may lose before it is renewed."),
        "rate": quantity("rate_of_loss", "Rate of loss; nothing or less is no measurable loss."),
        "uncertainty": quantity("rate_of_loss", "Uncertainty of the rate; nothing unless given."),
        "to_docking": quantity("time", "From the survey to the docking planned."),
        "interval": quantity("time", "From that docking to the next."),
    },
    outputs=(
        Symbol("at_docking", "thickness at the docking planned", "length", "mm"),
        Symbol("at_next", "thickness at the next docking", "length", "mm"),
        Symbol("least_at_next", "thickness at the next docking at the upper rate", "length", "mm"),
        Symbol("renewal_thickness", "thickness below which plate is renewed", "length", "mm"),
        Symbol("life", "time from the survey until renewal", "time", "yr"),
        Symbol("call", "sound, watch, renew now ahead of its limit, or renew now", "text", ""),
        Symbol("note", "what is to be said of the rate", "text", ""),
    ),
    kernel=_kernel,
    example={
        "as_built": "11.1 mm",
        "thickness": "9.2 mm",
        "allowable": "25 %",
        "rate": "0.05 mm/yr",
        "uncertainty": "0.01 mm/yr",
        "to_docking": "1.5 yr",
        "interval": "10 yr",
    },
    optional=frozenset({"uncertainty"}),
    cautions=(
        "a plate that passes its limit before the next docking is decided at this one: it is renewed now, unless the "
        "surveyor agrees how it is looked after till then",
    ),
)
