"""Immersed area of an ordinary hull from her principal dimensions."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.coatings.hull_area_formulas import require_coefficient, require_dimensions
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import number, quantity


def immersed_area(length: float, beam: float, draught: float, block_coefficient: float) -> float:
    """Find the immersed area of an ordinary hull, m².

    Formula: S = L (1.7 d + Cb B); lengths in one unit give the area in its square.
    Source: Nicholls's Seamanship and Nautical Knowledge, p. 482 (Denny's formula with V = L B d Cb).
    Raises OutOfRange.
    """
    require_dimensions(length, beam, draught)
    require_coefficient(block_coefficient)
    return length * (1.7 * draught + block_coefficient * beam)


def immersed_area_rough(length: float, beam: float, draught: float) -> float:
    """Find a rough immersed area, m²: S = L (B + d).

    Source: Nicholls's Seamanship and Nautical Knowledge, p. 482. Raises OutOfRange.
    """
    require_dimensions(length, beam, draught)
    return length * (beam + draught)


def _kernel(
    length: float, beam: float, draught: float, block_coefficient: float | None = None
) -> Mapping[str, float | None]:
    return {
        "immersed": None if block_coefficient is None else immersed_area(length, beam, draught, block_coefficient),
        "rough": immersed_area_rough(length, beam, draught),
    }


METHOD = Method(
    name="coating.immersed-area",
    title="Immersed area of an ordinary hull from her principal dimensions",
    formula="S = L (1.7 d + Cb B); roughly L (B + d)",
    source=Citation("Nicholls's Seamanship and Nautical Knowledge", "p. 482"),
    valid="ordinary hulls of any trade; bilge keels, rudder, bar keel and appendages are not counted",
    inputs={
        "length": quantity("length", "Length on the waterline."),
        "beam": quantity("length", "Beam on the waterline."),
        "draught": quantity("length", "Mean draught."),
        "block_coefficient": number(
            "Block coefficient at that draught; only the rough area is found without it.", exclusiveMinimum=0, maximum=1
        ),
    },
    outputs=(
        Symbol("immersed", "immersed area", "area", "m2"),
        Symbol("rough", "immersed area, roughly", "area", "m2"),
    ),
    kernel=_kernel,
    example={"length": "46 m", "beam": "9.2 m", "draught": "3.2 m", "block_coefficient": 0.48},
    optional=frozenset({"block_coefficient"}),
    cautions=("measure from the lines where there are any",),
)
