"""Resistance of a tow by the method of the U.S. Navy Towing Manual."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity, record

POUND_FORCE = 4.4482216152605
KNOT = 1852.0 / 3600.0
SQUARE_FOOT = 0.09290304
LONG_TON = 1016.0469088
TOWLINE = 1.10
"""Pull at the tug for each part of the tow's resistance, while tug and towline are not chosen (the manual)."""
FASTEST = 15 * KNOT
"""No tow is pulled faster: the manual's curves of hull resistance end below it (from memory)."""


def hull_resistance(displacement: float, per_ton: float) -> float:
    """Give R_H = 1.25 (R_H/D) D, N; D displacement [kg], R_H/D [lbf for each long ton], from a curve of like ships."""
    return 1.25 * per_ton * displacement / LONG_TON * POUND_FORCE


def propeller_resistance(area: float, speed: float) -> float:
    """Give R_P = 3.737 A_P V^2 of locked propellers, N; projected area [m2], speed through the water [m/s]."""
    return 3.737 * area / SQUARE_FOOT * (speed / KNOT) ** 2 * POUND_FORCE


def wind_resistance(area: float, relative: float, shape: float, heading: float = 1.0) -> float:
    """Give R_W = 0.00506 C_W A_T K V_R^2, N; frontal area [m2], relative wind [m/s], factors [-]."""
    return 0.00506 * shape * area / SQUARE_FOOT * heading * (relative / KNOT) ** 2 * POUND_FORCE


def read_curve(curve: Sequence[Mapping[str, float]], speed: float) -> float | None:
    """Read R_H/D of a curve at a speed [m/s], straight between its points; None beyond its ends, nothing at rest."""
    if speed == 0:
        return 0.0
    points = sorted((one["speed"], one["per_ton"]) for one in curve)
    for (low, below), (high, above) in pairwise(points):
        if low <= speed <= high:
            return below + (above - below) * (speed - low) / (high - low)
    return next((per_ton for at, per_ton in points if at == speed), None)


def tow_resistance(
    speed: float,
    wind: float,
    displacement: float,
    frontal_area: float,
    wind_shape: float = 0.7,
    heading: float = 1.0,
    propeller_area: float = 0.0,
    hull_curve: Sequence[Mapping[str, float]] = (),
    sea: float | None = None,
) -> Mapping[str, Any]:
    """Give the resistance of a tow term by term, and the pull that it asks of a tug.

    Formula: R_T = R_H + R_P + R_W + R_S; R_H = 1.25 (R_H/D) D; R_P = 3.737 A_P V^2; R_W = 0.00506 C_W A_T K V_R^2 in
        lbf, long tons, square feet and knots, V_R = V + wind; pull 1.10 R_T.
    Symbols: V speed through the water, wind from ahead [m/s]; D [kg]; A_T frontal area, A_P projected area of locked
        propellers [m2]; C_W, K [-]; R_S [N]. R_T is None where the curve does not give R_H/D at the speed, or R_S is
        not known.
    Source: U.S. Navy Towing Manual, as reprinted in TB 55-1900-232-10, App. G.
    Range: 0 to 15 knots. Raises OutOfRange.
    """
    if not 0 <= speed <= FASTEST or wind < 0:
        raise OutOfRange("the method is for tows at 0 to 15 knots, with the wind from ahead or none")
    if displacement <= 0 or frontal_area < 0 or propeller_area < 0 or wind_shape <= 0 or heading <= 0:
        raise OutOfRange("displacement and factors must be more than nothing, and no area less")
    per_ton = read_curve(hull_curve, speed)
    hull = None if per_ton is None else hull_resistance(displacement, per_ton)
    screw = propeller_resistance(propeller_area, speed)
    blown = wind_resistance(frontal_area, speed + wind, wind_shape, heading)
    total = None if hull is None or sea is None else hull + screw + blown + sea
    return {
        "hull": hull,
        "propeller": screw,
        "wind": blown,
        "sea": sea,
        "total": total,
        "pull": None if total is None else TOWLINE * total,
    }


CURVE = listed(
    record(
        "A point of the curve.",
        ("speed", "per_ton"),
        speed=quantity("speed", "Speed through the water."),
        per_ton=number("R_H/D, pounds of force for each long ton.", minimum=0),
    ),
    "R_H/D by speed, from the manual's figure for a ship of like form.",
    0,
)

METHOD = Method(
    name="tow.resistance-navy",
    title="Resistance of a tow, U.S. Navy Towing Manual",
    formula="R_T = 1.25 (R_H/D) D + 3.737 A_P V² + 0.00506 C_W A_T K V_R² + R_S; pull 1.10 R_T (lbf, ft², kn)",
    source=Citation("U.S. Navy Towing Manual, as reprinted in TB 55-1900-232-10", "App. G"),
    valid="tows at 0 to 15 knots; R_H/D and R_S are read from the manual's own figures, which are not reproduced here",
    inputs={
        "speed": quantity("speed", "Speed through the water."),
        "wind": quantity("speed", "Wind from ahead, over the ground."),
        "displacement": quantity("mass", "Displacement of the tow."),
        "frontal_area": quantity("area", "Area seen from ahead above the water, A_T."),
        "wind_shape": number("C_W; 0.7 to 0.8 is from memory.", exclusiveMinimum=0),
        "heading": number("K: 1.0 with the wind ahead, up to 1.2 oblique (from memory).", exclusiveMinimum=0),
        "propeller_area": quantity("area", "Projected area of locked propellers; nothing where none is fitted."),
        "hull_curve": CURVE,
        "sea": quantity("force", "Resistance in waves, R_S, from the manual's curve or the tow master."),
    },
    outputs=(
        Symbol("hull", "resistance of the hull; not known beyond the curve given", "force", "kN"),
        Symbol("propeller", "resistance of locked propellers", "force", "kN"),
        Symbol("wind", "resistance to the relative wind", "force", "kN"),
        Symbol("sea", "resistance in waves, as given", "force", "kN"),
        Symbol("total", "resistance; not known where a term is not", "force", "kN"),
        Symbol("pull", "pull asked at the tug, the towline's own drag included", "force", "kN"),
    ),
    kernel=tow_resistance,
    example={
        "speed": "5 kn",
        "wind": "15 kn",
        "displacement": "1200 long_ton",
        "frontal_area": "1500 ft2",
        "propeller_area": "60 ft2",
        "hull_curve": [{"speed": "4 kn", "per_ton": 0.4}, {"speed": "6 kn", "per_ton": 0.8}],
        "sea": "1000 lbf",
    },
    optional=frozenset({"wind_shape", "heading", "propeller_area", "hull_curve", "sea"}),
    cautions=("The constant of the wind term is about 1.5 times half the density of air: the manual's own margin.",),
)
