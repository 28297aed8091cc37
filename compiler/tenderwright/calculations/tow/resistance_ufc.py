"""Resistance of a tow by the steady current drag of UFC 4-159-03, with the wind and the sea beside it."""

from __future__ import annotations

from collections.abc import Mapping
from math import log10
from typing import Any

from tenderwright.calculations.blocks.wind import AIR
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, number, quantity
from tenderwright.calculations.tow.resistance_navy import FASTEST, TOWLINE

VISCOSITY = 1.19e-6
"""Kinematic viscosity of sea water at 15 degC, m2/s."""
FORM = 0.1
"""Form drag coefficient of a ship end on."""
DEVELOPED = 0.838
"""A_p = A_Tpp/0.838 for a pitch as great as the diameter: 1.067 - 0.229 p/d."""


def wetted(length: float, draft: float, displacement: float, density: float) -> float:
    """Give S = 1.7 T L + D/(T gamma), m2; lengths [m], displacement [kg], density [kg/m3]."""
    return 1.7 * draft * length + displacement / (draft * density)


def blade_area(length: float, beam: float, area_ratio: float) -> float:
    """Give A_p = L B/(0.838 A_R), m2: the blades of ships of a type, A_R 240 for cargo ships, 100 for destroyers."""
    return length * beam / area_ratio / DEVELOPED


def tow_drag(
    speed: float,
    wind: float,
    length: float,
    beam: float,
    draft: float,
    displacement: float,
    frontal_area: float = 0.0,
    density: float = 1025.0,
    blades: float = 0.0,
    fouling: float = 1.0,
    wind_shape: float = 0.7,
    sea: float | None = None,
) -> Mapping[str, Any]:
    """Give the drag of a tow term by term, and the pull that it asks of a tug.

    Formula: F_form = 0.1 (1/2) rho V^2 B T; F_fric = k (1/2) rho V^2 S C, C = 0.075/(log10 Re - 2)^2, Re = V L/nu,
        S = 1.7 T L + D/(T gamma); F_prop = (1/2) rho V^2 A_p; F_wind = C_W (1/2) rho_air (V + wind)^2 A_T; pull 1.10 of
        the sum.
    Symbols: V speed through the water, wind from ahead [m/s]; L, B, T [m]; D [kg]; A_p developed area of the blades of
        locked propellers, A_T [m2]; k fouling [-]; sea [N]. The sum is None where the sea is not known.
    Source: UFC 4-159-03, 4-5.2; fouling 2 for heavy weed to 4 for thick barnacles is common practice, no source; 1.10
        for the towline as TB 55-1900-232-10, App. G.
    Range: 0 to 15 knots. Raises OutOfRange.
    """
    if not 0 <= speed <= FASTEST or wind < 0:
        raise OutOfRange("the method is for tows at 0 to 15 knots, with the wind from ahead or none")
    if min(length, beam, draft, displacement, density, wind_shape) <= 0 or min(frontal_area, blades) < 0 or fouling < 1:
        raise OutOfRange("sizes and factors must be more than nothing, no area less, and fouling 1 or more")
    pressure = 0.5 * density * speed**2
    friction = 0.0
    if speed > 0:
        coefficient = 0.075 / (log10(speed * length / VISCOSITY) - 2) ** 2
        friction = fouling * pressure * wetted(length, draft, displacement, density) * coefficient
    form, screw = FORM * pressure * beam * draft, pressure * blades
    blown = 0.5 * AIR * wind_shape * frontal_area * (speed + wind) ** 2
    total = None if sea is None else form + friction + screw + blown + sea
    return {
        "form": form,
        "friction": friction,
        "propeller": screw,
        "wind": blown,
        "sea": sea,
        "total": total,
        "pull": None if total is None else TOWLINE * total,
    }


METHOD = Method(
    name="tow.resistance-ufc",
    title="Resistance of a tow, UFC 4-159-03",
    formula="½ρV² (0.1 B T + k S C + A_p) + ½ρ_a C_W A_T (V + wind)² + sea; C = 0.075/(log Re − 2)²; pull 1.10 of it",
    source=Citation("UFC 4-159-03, Design: Moorings", "4-5.2"),
    valid="tows at 0 to 15 knots in deep water; wind, sea and fouling are not in that section and stand beside it",
    inputs={
        "speed": quantity("speed", "Speed through the water."),
        "wind": quantity("speed", "Wind from ahead, over the ground."),
        "length": length("Length on the waterline."),
        "beam": length("Greatest breadth."),
        "draft": length("Mean draft."),
        "displacement": quantity("mass", "Displacement of the tow."),
        "frontal_area": quantity("area", "Area seen from ahead above the water."),
        "density": quantity("density", "Density of the water."),
        "blades": quantity("area", "Developed area of the blades of locked propellers; nothing where none is fitted."),
        "fouling": number("Times the friction of a clean hull: 2 heavy weed, 3 to 4 thick barnacles.", minimum=1),
        "wind_shape": number("Wind coefficient; 0.7 to 0.8 is from memory.", exclusiveMinimum=0),
        "sea": quantity("force", "Resistance in waves, as the tow master gives it."),
    },
    outputs=(
        Symbol("form", "form drag of the hull", "force", "kN"),
        Symbol("friction", "friction of the hull", "force", "kN"),
        Symbol("propeller", "drag of locked propellers", "force", "kN"),
        Symbol("wind", "resistance to the relative wind", "force", "kN"),
        Symbol("sea", "resistance in waves, as given", "force", "kN"),
        Symbol("total", "resistance; not known where that in waves is not", "force", "kN"),
        Symbol("pull", "pull asked at the tug, the towline's own drag included", "force", "kN"),
    ),
    kernel=tow_drag,
    example={
        "speed": "5 kn",
        "wind": "15 kn",
        "length": "60 m",
        "beam": "10 m",
        "draft": "4 m",
        "displacement": "1200 t",
        "frontal_area": "80 m2",
        "blades": "2.98 m2",
        "sea": "5 kN",
    },
    optional=frozenset({"frontal_area", "density", "blades", "fouling", "wind_shape", "sea"}),
)
