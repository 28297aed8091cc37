"""Weights and tanks as inputs, and how they become a loading."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.schema import length, listed, quantity, record, text
from tenderwright.calculations.tanks.tank_input import SHAPE, tank_from_input


def _mass(description: str) -> dict[str, Any]:
    return quantity("mass", description)


WEIGHTS: Mapping[str, Any] = listed(
    record(
        "A weight.",
        ("name", "mass", "x", "z"),
        name=text("Name."),
        mass=_mass("Mass."),
        x=length("Forward of AP."),
        y=length("To port; 0 where left out."),
        z=length("Above the baseline."),
        free_surface_moment=quantity("moment", "Free-surface moment, for a tank given as a weight."),
    ),
    "Lightship and fixed weights.",
)

TANK_FIELDS: Mapping[str, Any] = {
    "name": text("Name."),
    "shape": SHAPE,
    "density": quantity("density", "Density of the liquid."),
    "mass": _mass("Mass of liquid in the tank."),
    "permeability": quantity("fraction", "Part of the moulded volume that liquid can fill."),
}

TANKS: Mapping[str, Any] = {
    "type": "array",
    "description": "Tanks with the liquid in them.",
    "items": record("A tank.", ("name", "shape", "density", "mass"), **TANK_FIELDS),
}


def weights_from_input(weights: Sequence[Mapping[str, Any] | Weight]) -> list[Weight]:
    """Make weights from converted input, or take those that are made."""
    return [
        w
        if isinstance(w, Weight)
        else Weight(w["name"], w["mass"], w["x"], w.get("y", 0.0), w["z"], w.get("free_surface_moment", 0.0))
        for w in weights
    ]


def tanks_from_input(tanks: Sequence[Mapping[str, Any] | TankLoad]) -> list[TankLoad]:
    """Make loaded tanks from converted input, or take those that are made. Raises OutOfRange."""
    return [t if isinstance(t, TankLoad) else _load(t) for t in tanks]


def _load(tank: Mapping[str, Any]) -> TankLoad:
    built = tank_from_input(tank["shape"], permeability=tank.get("permeability", 1.0))
    return TankLoad(tank["name"], built, tank["density"], tank["mass"])


def _box(x_aft: str, x_forward: str, y_starboard: str, y_port: str, bottom: str, top: str) -> dict[str, Any]:
    sides = {"y_starboard": y_starboard, "y_port": y_port}
    return {"box": {"x_aft": x_aft, "x_forward": x_forward, **sides, "bottom": bottom, "top": top}}


EXAMPLE_WEIGHTS: Sequence[Mapping[str, Any]] = [
    {"name": "lightship", "mass": "440 t", "x": "18.9 m", "z": "3.1 m"},
    {"name": "stores", "mass": "6 t", "x": "30 m", "z": "3.5 m"},
]

EXAMPLE_TANKS: Sequence[Mapping[str, Any]] = [
    {
        "name": "fore peak",
        "shape": _box("34 m", "37 m", "-1 m", "1 m", "1.5 m", "4 m"),
        "density": "1025 kg/m3",
        "mass": "2 t",
    },
    {
        "name": "after peak",
        "shape": _box("2 m", "5 m", "-1 m", "1 m", "2 m", "4 m"),
        "density": "1025 kg/m3",
        "mass": "8 t",
    },
    {
        "name": "fuel port",
        "shape": _box("15 m", "20 m", "0.5 m", "3 m", "1 m", "3 m"),
        "density": "880 kg/m3",
        "mass": "10 t",
    },
    {
        "name": "fuel starboard",
        "shape": _box("15 m", "20 m", "-3 m", "-0.5 m", "1 m", "3 m"),
        "density": "880 kg/m3",
        "mass": "10 t",
    },
]
