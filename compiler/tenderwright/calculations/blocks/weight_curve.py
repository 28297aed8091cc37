"""A ship's weight curve where only weight, length and centre of gravity are known: rectangle plus parabola."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show

NEAR = 1e-12


class Segment(Struct, frozen=True):
    """A stretch of line load, linear from aft to forward; x in m forward of AP, loads in kg/m."""

    aft: float
    forward: float
    load_aft: float
    load_forward: float

    @property
    def total(self) -> float:
        """Give the load on the stretch, kg."""
        return 0.5 * (self.load_aft + self.load_forward) * (self.forward - self.aft)

    @property
    def moment(self) -> float:
        """Give its moment about x = 0, kg m."""
        h = self.forward - self.aft
        return self.aft * self.total + h * h * (self.load_aft + 2 * self.load_forward) / 6


class WeightCurve(Struct, frozen=True):
    """Weight per length q(x) = (W/L)(2/3 + (1 - s^2)/2 + 6 e s/L), s from -1 aft to 1 forward."""

    weight: float
    aft: float
    length: float
    lcg: float

    @property
    def eccentricity(self) -> float:
        """Give the centre of gravity forward of the middle, m."""
        return self.lcg - self.aft - 0.5 * self.length

    def ordinate(self, x: float) -> float:
        """Give the weight per length at x, kg/m."""
        s = 2 * (x - self.aft) / self.length - 1
        if abs(s) > 1 + NEAR:
            return 0.0
        lean = 6 * self.eccentricity * s / self.length
        return self.weight / self.length * (2 / 3 + 0.5 * (1 - s * s) + lean)

    def segments(self, count: int = 40) -> list[Segment]:
        """Give linear stretches, each of the curve's own weight and moment, so that the sums are exact."""
        edges = np.linspace(self.aft, self.aft + self.length, count + 1).tolist()
        found = []
        for low, high in pairwise(edges):
            ends = self.ordinate(low), self.ordinate(high)
            # A parabola of sagitta b over a bay has the weight and moment of the chord raised by 2b/3.
            raised = 2 / 3 * (self.weight / self.length * 0.5 * (1 / count) ** 2)
            found.append(Segment(low, high, ends[0] + raised, ends[1] + raised))
        return found


def weight_curve(weight: float, aft: float, length: float, lcg: float | None = None) -> WeightCurve:
    """Make the weight curve: a rectangle and a parabola of half its area, leant to the centre of gravity.

    Formula: without lean the ends carry (2/3) W/L and the middle (7/6) W/L; the lean 12 W e s'/L^3 over s' from the
        middle carries no weight and the moment W e.
    Symbols: W [kg]; L, aft end and LCG forward of AP [m].
    Source: Lloyd's Register, Rules for Floating Docks and Dock Gates, Pt 2 Ch 1 s.3.3.1; lean derived.
    Range: |e| <= L/9, where the lighter end still weighs something. Raises OutOfRange.
    """
    if weight <= 0 or length <= 0:
        raise OutOfRange("the weight and the length must be more than nothing")
    curve = WeightCurve(weight, aft, length, aft + 0.5 * length if lcg is None else lcg)
    if abs(curve.eccentricity) > length / 9 * (1 + 1e-12):
        raise OutOfRange(
            f"the centre of gravity is {show(abs(curve.eccentricity), 'centre')} from the middle, more "
            "than a ninth of the length"
        )
    return curve


def _kernel(weight: float, aft: float, length: float, lcg: float | None = None) -> Mapping[str, Any]:
    curve = weight_curve(weight, aft, length, lcg)
    x = np.linspace(aft, aft + length, 11).tolist()
    return {"x": x, "load": [curve.ordinate(one) for one in x]}


METHOD = Method(
    name="blocks.weight-curve",
    title="Weight curve from weight, length and centre of gravity",
    formula="q = (W/L)(2/3 + (1 − s²)/2 + 6 e s/L), s = −1 … 1",
    source=Citation(
        "Lloyd's Register, Rules for Floating Docks and Dock Gates, July 2022",
        "Pt 2 Ch 1 s.3.3.1; the lean to the centre of gravity is derived",
    ),
    valid="centre of gravity within a ninth of the length from the middle",
    inputs={
        "weight": quantity("mass", "Weight of the ship."),
        "aft": quantity("length", "After end of the weight, forward of AP."),
        "length": quantity("length", "Length over which the weight lies."),
        "lcg": quantity("length", "Centre of gravity, forward of AP; the middle where left out."),
    },
    outputs=(
        Symbol("x", "eleven places from aft to forward", "length", "m"),
        Symbol("load", "weight per length there", "line_load", "t/m"),
    ),
    kernel=_kernel,
    example={"weight": "600 t", "aft": "-2 m", "length": "50 m", "lcg": "22.5 m"},
    optional=frozenset({"lcg"}),
)
