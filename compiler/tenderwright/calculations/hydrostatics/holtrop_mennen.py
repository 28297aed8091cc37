"""Wetted surface by the regression of Holtrop and Mennen."""

from __future__ import annotations

from math import sqrt

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity

BAND = 0.06
"""Half-width of the error band, as a part of the result: spread of common formulas over three hulls
(derived)."""


def holtrop_mennen_surface(
    length: float,
    breadth: float,
    draft: float,
    volume: float,
    midship_coefficient: float,
    waterplane_coefficient: float,
    bulb_area: float = 0.0,
) -> dict[str, float]:
    """Estimate the wetted surface of a bare hull from its principal dimensions and coefficients.

    Formula: S = L*(2T + B)*sqrt(C_M)*(0.453 + 0.4425 C_B - 0.2862 C_M - 0.003467 B/T + 0.3696 C_WP)
    + 2.38 A_BT/C_B, C_B = V/(L*B*T).
    Symbols: L on the waterline, B, mean draft T [m]; V [m3]; C_M, C_WP [-]; bulb section A_BT [m2]; S [m2].
    Source: Holtrop and Mennen, An approximate power prediction method, Int. Shipbuilding Progress 29, 1982.
    Range: C_P 0.55-0.85, L/B 3.9-9.5, B/T 2.1-4.0 (from memory). Raises OutOfRange.
    """
    if min(length, breadth, draft, volume, midship_coefficient, waterplane_coefficient) <= 0 or bulb_area < 0:
        raise OutOfRange("dimensions and coefficients must be positive")
    block = volume / (length * breadth * draft)
    limits = (
        ("prismatic coefficient", block / midship_coefficient, 0.55, 0.85),
        ("length to breadth", length / breadth, 3.9, 9.5),
        ("breadth to draft", breadth / draft, 2.1, 4.0),
        ("midship coefficient", midship_coefficient, 0.5, 1.0),
        ("waterplane coefficient", waterplane_coefficient, block * 0.999, 1.0),
    )
    for name, value, low, high in limits:
        if not low <= value <= high:
            raise OutOfRange(f"{name} is {value:.3f}, outside {low:.3g} to {high:.3g}")
    shape = (
        0.453
        + 0.4425 * block
        - 0.2862 * midship_coefficient
        - 0.003467 * breadth / draft
        + 0.3696 * waterplane_coefficient
    )
    bare = length * (2 * draft + breadth) * sqrt(midship_coefficient) * shape
    surface = bare + 2.38 * bulb_area / block
    return {"wetted_surface": surface, "low": surface * (1 - BAND), "high": surface * (1 + BAND)}


METHOD = Method(
    name="hydrostatics.wetted-surface-estimate",
    title="Wetted surface by the regression of Holtrop and Mennen",
    formula="S = L (2T + B) sqrt(CM) (0.453 + 0.4425 CB - 0.2862 CM - 0.003467 B/T + 0.3696 CWP) + 2.38 ABT/CB",
    source=Citation(
        "Holtrop and Mennen, An approximate power prediction method", "Int. Shipbuilding Progress 29, 1982"
    ),
    valid="prismatic coefficient 0.55-0.85, L/B 3.9-9.5, B/T 2.1-4.0 (limits from memory)",
    inputs={
        "length": quantity("length", "Length on the waterline."),
        "breadth": quantity("length", "Moulded breadth on the waterline."),
        "draft": quantity("length", "Mean draft."),
        "volume": quantity("volume", "Displaced volume."),
        "midship_coefficient": number("Midship section area over B T."),
        "waterplane_coefficient": number("Waterplane area over L B."),
        "bulb_area": quantity("area", "Section area of a bulb at the FP."),
    },
    outputs=(
        Symbol("wetted_surface", "wetted surface", "area", "m2"),
        Symbol("low", "lower end of the usual spread", "area", "m2"),
        Symbol("high", "upper end of the usual spread", "area", "m2"),
    ),
    kernel=holtrop_mennen_surface,
    example={
        "length": "205 m",
        "breadth": "32 m",
        "draft": "10 m",
        "volume": "37500 m3",
        "midship_coefficient": 0.98,
        "waterplane_coefficient": 0.75,
        "bulb_area": "20 m2",
    },
    optional=frozenset({"bulb_area"}),
    cautions=("An estimate, good to about 6 % (derived from the spread of formulas); appendages are extra.",),
)
