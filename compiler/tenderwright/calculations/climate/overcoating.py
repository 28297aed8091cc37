"""Overcoating windows: how soon and how late the next coat goes on, by temperature."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

import numpy as np

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity
from tenderwright.calculations.verdict import within
from tenderwright.quantities.display import plainly

Verdict = Literal["too soon", "within the window", "too late: abrade first"]


@dataclass(frozen=True)
class WindowPoint:
    """One column of a data sheet: temperature in degC, least and greatest time before the next coat in s."""

    temperature: float
    least: float
    greatest: float | None = None
    """None where the sheet sets no limit."""

    def __post_init__(self) -> None:
        if not (self.least > 0.0 and math.isfinite(self.least)):
            raise OutOfRange("the least time before the next coat must be more than nothing")
        if self.greatest is not None and not self.greatest > self.least:
            raise OutOfRange("the greatest time before the next coat must be more than the least")


@dataclass(frozen=True)
class OvercoatingWindow:
    """Least and greatest time before the next coat at one temperature, s."""

    least: float
    greatest: float | None

    def verdict(self, time: float) -> Verdict:
        """Judge a time between coats, s."""
        if not within(time, self.least, at_least=True):
            return "too soon"
        late = self.greatest is not None and not within(time, self.greatest)
        return "too late: abrade first" if late else "within the window"


def overcoating_window(points: Sequence[WindowPoint], temperature: float) -> OvercoatingWindow:
    """Find the window at a temperature from a data sheet's columns.

    Formula: between two columns the logarithm of the time runs straight with temperature, as curing does nearly; at
    a temperature beyond the columns nothing is guessed. Symbols: points in any order; temperature in degC.
    Source: the paint's data sheet; the way between its columns is derived. Raises OutOfRange.
    """
    ordered = sorted(points, key=lambda point: point.temperature)
    heats = [point.temperature for point in ordered]
    if not ordered or len(set(heats)) != len(heats):
        raise OutOfRange("give one column or more of the data sheet, each for its own temperature")
    if not heats[0] <= temperature <= heats[-1]:
        raise OutOfRange(
            f"the data sheet runs from {heats[0]:g} to {plainly(heats[-1], 'temperature')}, and gives "
            f"nothing at {plainly(temperature, 'temperature')}"
        )

    def between(times: Sequence[float]) -> float:
        return math.exp(float(np.interp(temperature, heats, np.log(times))))

    greatest = [point.greatest for point in ordered if point.greatest is not None]
    if greatest and len(greatest) != len(ordered):
        raise OutOfRange("the data sheet sets a greatest time at some temperatures and none at others")
    return OvercoatingWindow(between([point.least for point in ordered]), between(greatest) if greatest else None)


def _kernel(points: Sequence[Mapping[str, Any]], temperature: float, time: float | None = None) -> Mapping[str, Any]:
    columns = [WindowPoint(point["temperature"], point["least"], point.get("greatest")) for point in points]
    found = overcoating_window(columns, temperature)
    return {
        "least": found.least,
        "greatest": found.greatest,
        "verdict": None if time is None else found.verdict(time),
    }


def _time(description: str) -> dict[str, Any]:
    return quantity("time", description)


_TEMPERATURE = quantity("temperature", "Temperature of the steel.")

METHOD = Method(
    name="coating.overcoating-window",
    title="Time between coats at a temperature",
    formula="ln(time) runs straight between the columns of the data sheet",
    source=Citation("The paint's data sheet, straight between its columns in ln(time)", standing="derived"),
    valid="temperatures within the data sheet's own",
    inputs={
        "points": listed(
            {
                "type": "object",
                "properties": {
                    "temperature": _TEMPERATURE,
                    "least": _time("Least time before the next coat."),
                    "greatest": _time("Greatest time; leave out where the sheet sets none."),
                },
                "required": ["temperature", "least"],
                "additionalProperties": False,
            },
            "Columns of the data sheet.",
        ),
        "temperature": _TEMPERATURE,
        "time": _time("Time planned between the coats."),
    },
    outputs=(
        Symbol("least", "least time", "time", "h"),
        Symbol("greatest", "greatest time", "time", "h"),
        Symbol("verdict", "too soon, within the window, or too late", "text", ""),
    ),
    kernel=_kernel,
    example={
        "points": [
            {"temperature": "5 degC", "least": "16 h", "greatest": "21 d"},
            {"temperature": "20 degC", "least": "5 h", "greatest": "10 d"},
        ],
        "temperature": "12 degC",
        "time": "24 h",
    },
    optional=frozenset({"time"}),
    cautions=("times hold for the film, ventilation and thinning of the data sheet",),
)
