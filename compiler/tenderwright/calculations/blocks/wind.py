"""Wind pressure and wind force on a hull standing on blocks."""

from __future__ import annotations

from collections.abc import Mapping
from math import log

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity

AIR = 1.25
"""Density of air, kg/m3 (EN 1991-1-4)."""


def velocity_pressure(speed: float, exposure: float = 1.0, topography: float = 1.0, direction: float = 1.0) -> float:
    """Give q = 0.613 Kz Kzt Kd V^2, Pa.

    Symbols: V basic wind speed [m/s]; Kz exposure, Kzt topographic, Kd directionality factors [-].
    Source: ASCE 7, velocity pressure (from memory). Raises OutOfRange.
    """
    if speed < 0 or min(exposure, topography, direction) <= 0:
        raise OutOfRange("the wind speed must not be negative and the factors must be more than nothing")
    return 0.613 * exposure * topography * direction * speed**2


def basic_pressure(speed: float, density: float = AIR) -> float:
    """Give q_b = rho v_b^2/2, Pa. Source: EN 1991-1-4. Raises OutOfRange."""
    if speed < 0 or density <= 0:
        raise OutOfRange("the wind speed must not be negative and the density must be more than nothing")
    return 0.5 * density * speed**2


def peak_pressure(speed: float, height: float, roughness: float, orography: float = 1.0) -> float:
    """Give q_p = (1 + 7 I_v) rho v_m^2/2, Pa, with v_m = c_r c_o v_b, c_r = 0.19 (z0/0.05)^0.07 ln(z/z0) and
    I_v = 1/(c_o ln(z/z0)).

    Symbols: v_b [m/s]; z height, z0 roughness length [m]; c_o [-].
    Source: EN 1991-1-4 (q_p, v_m and c_r read; I_v with k_I = 1 from memory).
    Range: z above 2 m, and above z0. Raises OutOfRange.
    """
    if height < 2.0 or not 0 < roughness < height or orography <= 0:
        raise OutOfRange("the height must be at least 2 m and above the roughness length")
    rise = log(height / roughness)
    mean = 0.19 * (roughness / 0.05) ** 0.07 * rise * orography * speed
    return (1.0 + 7.0 / (orography * rise)) * basic_pressure(mean)


def wind_force(pressure: float, area: float, coefficient: float) -> float:
    """Give F = q A C, N; q [Pa], A lateral area [m2], C coefficient [-], an input with its source.

    Source: UFC 4-159-03, Eq. 2, par. 4-4.1, with q = rho V^2/2 (form from memory). Raises OutOfRange.
    """
    if min(pressure, area, coefficient) < 0:
        raise OutOfRange("pressure, area and coefficient must not be less than nothing")
    return pressure * area * coefficient


def _kernel(
    speed: float,
    area: float,
    coefficient: float,
    exposure: float = 1.0,
    topography: float = 1.0,
    direction: float = 1.0,
    height: float = 10.0,
    roughness: float = 0.01,
) -> Mapping[str, float]:
    plain, american = basic_pressure(speed), velocity_pressure(speed, exposure, topography, direction)
    peak = peak_pressure(speed, height, roughness)
    return {
        "basic_pressure": plain,
        "velocity_pressure": american,
        "peak_pressure": peak,
        "force_basic": wind_force(plain, area, coefficient),
        "force_velocity": wind_force(american, area, coefficient),
        "force_peak": wind_force(peak, area, coefficient),
    }


METHOD = Method(
    name="blocks.wind",
    title="Wind pressure and force on a ship on blocks",
    formula="F = q A C; q_b = ½·1.25 V²; q = 0.613 Kz Kzt Kd V²; q_p = (1 + 7 I_v) ½ρ v_m²",
    source=Citation("EN 1991-1-4; ASCE 7, velocity pressure; UFC 4-159-03, par. 4-4.1"),
    valid="speed, factors and coefficient by one code at a time: the three pressures are not of one return period",
    inputs={
        "speed": quantity("speed", "Basic wind speed of the code used."),
        "area": quantity("area", "Lateral area of hull and houses."),
        "coefficient": number("Force coefficient, by its code: 0.92 ± 0.1 in UFC 4-159-03 is from memory."),
        "exposure": number("Kz of ASCE 7."),
        "topography": number("Kzt of ASCE 7."),
        "direction": number("Kd of ASCE 7."),
        "height": quantity("length", "Height for the peak pressure of EN 1991-1-4."),
        "roughness": quantity("length", "Roughness length z0 of EN 1991-1-4."),
    },
    outputs=(
        Symbol("basic_pressure", "basic velocity pressure, EN 1991-1-4", "pressure", "kPa"),
        Symbol("velocity_pressure", "velocity pressure, ASCE 7", "pressure", "kPa"),
        Symbol("peak_pressure", "peak velocity pressure, EN 1991-1-4", "pressure", "kPa"),
        Symbol("force_basic", "force at the basic pressure", "force", "kN"),
        Symbol("force_velocity", "force at the velocity pressure, ASCE 7", "force", "kN"),
        Symbol("force_peak", "force at the peak pressure", "force", "kN"),
    ),
    kernel=_kernel,
    example={"speed": "28 m/s", "area": "280 m2", "coefficient": 0.92, "height": "8 m", "roughness": "0.01 m"},
    optional=frozenset({"exposure", "topography", "direction", "height", "roughness"}),
)
