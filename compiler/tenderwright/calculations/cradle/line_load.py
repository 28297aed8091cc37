"""Line load of a rigid hull standing on a straight keel line: trapezoid, or triangle with lift-off."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import plainly


class LineLoad(Struct, frozen=True):
    """The load per metre under a straight keel, linear over the length in contact and nothing outside it.

    Lengths in m, x forward from the after perpendicular; loads in kg/m.
    """

    keel_aft: float
    keel_forward: float
    contact_aft: float
    contact_forward: float
    load_aft: float
    """Load at the after end of the contact."""
    load_forward: float
    """Load at the forward end of the contact."""

    @property
    def contact_length(self) -> float:
        """Give the length of keel in contact, m."""
        return self.contact_forward - self.contact_aft

    @property
    def lift_off(self) -> float:
        """Give the length of straight keel that carries nothing, m."""
        return (self.keel_forward - self.keel_aft) - self.contact_length

    @property
    def peak(self) -> float:
        """Give the greatest load, kg/m; it is always at an end of the contact."""
        return max(self.load_aft, self.load_forward)

    def ordinate(self, x: float) -> float:
        """Give the load at x, kg/m; nothing outside the contact."""
        if not self.contact_aft <= x <= self.contact_forward:
            return 0.0
        share = (x - self.contact_aft) / self.contact_length
        return self.load_aft * (1.0 - share) + self.load_forward * share

    def between(self, x1: float, x2: float) -> float:
        """Give the load carried between x1 and x2 (in either order), kg; exact, since the load is linear."""
        low = max(min(x1, x2), self.contact_aft)
        high = min(max(x1, x2), self.contact_forward)
        if high <= low:
            return 0.0
        return 0.5 * (self.ordinate(low) + self.ordinate(high)) * (high - low)

    def peak_between(self, x1: float, x2: float) -> float:
        """Give the greatest load between x1 and x2 (in either order), kg/m."""
        low = max(min(x1, x2), self.contact_aft)
        high = min(max(x1, x2), self.contact_forward)
        if high < low:
            return 0.0
        return max(self.ordinate(low), self.ordinate(high))


def line_load(weight: float, lcg: float, keel_aft: float, keel_forward: float) -> LineLoad:
    """Find the line load of a rigid hull on equal, closely spaced blocks under a straight keel.

    Formula: with L = keel_forward - keel_aft, e = lcg - (keel_aft + keel_forward)/2,
        |e| <= L/6:        ends q = (W/L)(1 -/+ 6e/L), the heavier towards the centre of gravity;
        L/6 < |e| < L/2:   contact L' = 3(L/2 - |e|) from the heavy end, q = 2W/L' there, nothing at L'.
    Symbols: weight W in kg (weight less any buoyancy left); lcg, keel_aft, keel_forward in m forward of AP.
    Source: R. Heger, "Calculating Block Load by the Moment Area Method", Dry Dock Conference, Norfolk,
        May 2008 (the trapezoid and its limits); the triangle is the eccentric rigid footing (derived).
    Raises OutOfRange: no weight, no keel, or a centre of gravity not between the ends of the keel.
    """
    if not all(map(math.isfinite, (weight, lcg, keel_aft, keel_forward))):
        raise OutOfRange("weight, centre of gravity and keel ends must be finite numbers")
    if weight <= 0.0:
        raise OutOfRange(f"the weight must be more than nothing, got {plainly(weight, 'small part')}")
    length = keel_forward - keel_aft
    if length <= 0.0:
        raise OutOfRange(
            f"the keel must end forward of where it starts, got {plainly(keel_aft, 'centre')} to "
            f"{plainly(keel_forward, 'centre')}"
        )
    eccentricity = lcg - 0.5 * (keel_aft + keel_forward)
    if abs(eccentricity) >= 0.5 * length:
        raise OutOfRange(
            f"the centre of gravity at {plainly(lcg, 'centre')} is not over the keel from "
            f"{plainly(keel_aft, 'centre')} to {plainly(keel_forward, 'centre')}, so the hull cannot stand on it"
        )
    mean = weight / length
    if abs(eccentricity) <= length / 6.0:
        slope = 6.0 * eccentricity / length
        aft, forward = max(0.0, mean * (1.0 - slope)), max(0.0, mean * (1.0 + slope))
        return LineLoad(keel_aft, keel_forward, keel_aft, keel_forward, aft, forward)
    contact = 3.0 * (0.5 * length - abs(eccentricity))
    peak = 2.0 * weight / contact
    if eccentricity > 0.0:
        return LineLoad(keel_aft, keel_forward, keel_forward - contact, keel_forward, 0.0, peak)
    return LineLoad(keel_aft, keel_forward, keel_aft, keel_aft + contact, peak, 0.0)


def outputs_of(load: LineLoad) -> Mapping[str, Any]:
    """Give the line load as outputs."""
    return {
        "load_at_keel_aft": load.ordinate(load.keel_aft),
        "load_at_keel_forward": load.ordinate(load.keel_forward),
        "peak": load.peak,
        "contact_aft": load.contact_aft,
        "contact_forward": load.contact_forward,
        "lift_off": load.lift_off,
    }


METHOD = Method(
    name="cradle.line-load",
    title="Line load of a rigid hull on a straight keel line",
    formula="q = (W/L)(1 ± 6e/L) for |e| ≤ L/6; otherwise q = 2W/L' over L' = 3(L/2 − |e|)",
    source=Citation(
        "R. Heger, Calculating Block Load by the Moment Area Method, Dry Dock Conference, Norfolk, May 2008",
        "trapezoidal equation; the triangle is derived (eccentric rigid footing)",
    ),
    valid="stiff hull, equal and equally spaced blocks in one line, |e| < L/2; a stern overhang loads the "
    "last blocks more than this says",
    inputs={
        "weight": quantity("mass", "Weight on the blocks."),
        "lcg": quantity("length", "Centre of gravity, forward of the after perpendicular."),
        "keel_aft": quantity("length", "After end of the straight keel, forward of the after perpendicular."),
        "keel_forward": quantity("length", "Forward end of the straight keel, forward of the after perpendicular."),
    },
    outputs=(
        Symbol("load_at_keel_aft", "load at the after end of the keel", "line_load", "t/m"),
        Symbol("load_at_keel_forward", "load at the forward end of the keel", "line_load", "t/m"),
        Symbol("peak", "greatest load", "line_load", "t/m"),
        Symbol("contact_aft", "after end of the keel in contact", "length", "m"),
        Symbol("contact_forward", "forward end of the keel in contact", "length", "m"),
        Symbol("lift_off", "length of straight keel that carries nothing", "length", "m"),
    ),
    kernel=line_load,
    figures=outputs_of,
    example={"weight": "2000 t", "lcg": "21.5 m", "keel_aft": "0 m", "keel_forward": "40 m"},
    cautions=("a keel that lifts off its blocks is a matter for the naval architect and the dockmaster",),
)
