"""Capacity of a tank from its bounds."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.tanks.tank_input import POINT, SHAPE, tank_from_input

METHOD = Method(
    name="tank.capacity",
    title="Capacity of a tank from its bounds and the hull",
    formula="V = permeability x volume of the polyhedron between the bounds and the shell",
    source=Citation("divergence theorem on a polyhedron", "", "derived"),
    valid="plane bounds; shell straight between stations and waterlines and half-way between them",
    inputs={
        "shape": SHAPE,
        "permeability": quantity("fraction", "Part of the moulded volume that liquid can fill."),
        "pipe_foot": {**POINT, "description": "Foot of the sounding pipe (striking plate)."},
        "pipe_head": {**POINT, "description": "Head of the pipe; upright to the tank's top where left out."},
    },
    outputs=(Symbol("capacity", "capacity, 100 % full", "volume", "m3"),),
    kernel=tank_from_input,
    figures=lambda tank: {"capacity": tank.capacity},
    example={
        "shape": {
            "box": {
                "x_aft": "10 m",
                "x_forward": "22 m",
                "y_starboard": "-4 m",
                "y_port": "4 m",
                "bottom": "0 m",
                "top": "2 m",
            }
        },
        "permeability": "98 %",
    },
    optional=frozenset({"permeability", "pipe_foot", "pipe_head"}),
)
