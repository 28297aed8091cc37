"""Stiffness of a block built up in layers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record


def block_stiffness(layers: Sequence[tuple[float, float, float]]) -> float:
    """Give the stiffness of a block, 1/k = sum(h/(E A)), N/m.

    Symbols: layers of (height h [m], modulus across the grain E [Pa], bearing area A [m2]).
    Source: springs in series (derived). Range: elastic, loaded squarely. Raises OutOfRange.
    """
    if not layers or min(min(layer) for layer in layers) <= 0:
        raise OutOfRange("a block needs layers, each with height, modulus and area more than nothing")
    return 1.0 / sum(h / (modulus * area) for h, modulus, area in layers)


def _kernel(layers: Sequence[Mapping[str, float]], spacing: float) -> Mapping[str, float]:
    if spacing <= 0:
        raise OutOfRange("the spacing of the blocks must be more than nothing")
    stiffness = block_stiffness([(one["height"], one["modulus"], one["area"]) for one in layers])
    return {"stiffness": stiffness, "modulus": stiffness / spacing}


METHOD = Method(
    name="blocks.stiffness",
    title="Stiffness of a layered block, and foundation modulus of a line of them",
    formula="1/k = Σ h/(E A); modulus = k/spacing",
    source=Citation("Springs in series", standing="derived"),
    valid="elastic, loaded squarely; timber across the grain creeps and crushes beyond its elastic limit",
    inputs={
        "layers": listed(
            record(
                "One layer of the block.",
                ("height", "modulus", "area"),
                height=quantity("length", "Height of the layer."),
                modulus=quantity("pressure", "Modulus of elasticity in the direction of the load."),
                area=quantity("area", "Bearing area."),
            ),
            "The layers, in any order.",
        ),
        "spacing": quantity("length", "Distance from block to block."),
    },
    outputs=(
        Symbol("stiffness", "stiffness of a block", "stiffness", "MN/m"),
        Symbol("modulus", "foundation modulus, force per length and sinkage", "pressure", "MPa"),
    ),
    kernel=_kernel,
    example={
        "layers": [
            {"height": "300 mm", "modulus": "300 MPa", "area": "0.36 m2"},
            {"height": "900 mm", "modulus": "25000 MPa", "area": "0.9 m2"},
        ],
        "spacing": "1.2 m",
    },
)
