"""Dust on blasted steel by the tape test: quantity rating and size class."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.verdict import within

SOURCE = Citation("ISO 8502-3", "classes of dust", standing="from memory")
PSPC = Citation("IMO PSPC", "dust quantity 1 for classes 3 to 5", standing="from memory")

SIZE_CLASSES = (
    "not visible at ten times",
    "visible at ten times only, under 50 um",
    "just visible, 50 to 100 um",
    "clearly visible, up to 0.5 mm",
    "0.5 to 2.5 mm",
    "over 2.5 mm",
)
"""Size of the particles by class, 0 to 5."""

SIZES_TO_JUDGE = range(3, 6)
QUANTITY_LIMIT = 1
"""Greatest quantity of classes 3 to 5 (`PSPC`)."""


def dust_passes(quantity: int, size: int, limit: int = QUANTITY_LIMIT) -> bool:
    """Tell whether dust is within the limit: quantity at most `limit` for size classes 3 to 5; finer dust passes.

    Symbols: quantity rating 0 to 5, size class 0 to 5. Finer dust is to be taken off as well where it can be seen.
    Source: `SOURCE`, `PSPC`. Raises OutOfRange.
    """
    for name, value in (("quantity", quantity), ("size class", size), ("limit", limit)):
        if not 0 <= value <= 5:
            raise OutOfRange(f"the {name} of dust runs from 0 to 5, got {value}")
    return size not in SIZES_TO_JUDGE or within(quantity, limit)


def _kernel(quantity: int, size: int, limit: int = QUANTITY_LIMIT) -> Mapping[str, Any]:
    return {"passes": dust_passes(quantity, size, limit), "particles": SIZE_CLASSES[size]}


def _rating(description: str) -> dict[str, Any]:
    return {"type": "integer", "minimum": 0, "maximum": 5, "description": description}


METHOD = Method(
    name="coating.dust",
    title="Dust on steel prepared for paint",
    formula="quantity ≤ 1 for size classes 3, 4 and 5",
    source=SOURCE,
    valid="tape test on steel blasted and blown down",
    inputs={
        "quantity": _rating("Quantity rating, 0 to 5; a tape discoloured all over is 5."),
        "size": _rating("Size class, 0 to 5."),
        "limit": _rating("Greatest quantity; 1 unless given."),
    },
    outputs=(
        Symbol("passes", "whether it is within the limit", "truth", ""),
        Symbol("particles", "size of the particles", "text", ""),
    ),
    kernel=_kernel,
    example={"quantity": 1, "size": 3},
    optional=frozenset({"limit"}),
    cautions=("the limit is from memory of the PSPC", "size classes 1 and 2 are to be checked in the standard"),
)
