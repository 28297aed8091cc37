"""Containers to buy: whole ones, per product and coat, and sets of several components never split."""

from __future__ import annotations

import math
from collections.abc import Mapping

from msgspec import Struct

from tenderwright.calculations.coatings.ranges import require_not_negative, require_positive
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import listed, quantity

_ROUND_OFF = 1e-9


class Purchase(Struct, frozen=True):
    """Whole containers, the volume in them and what is left over, m³."""

    containers: int
    supplied: float
    left_over: float


def purchase(volume: float, container: float) -> Purchase:
    """Round a volume up to whole containers, so that no set of several components is split.

    Formula: n = ceil(V/v - 1e-9), so that an exact multiple does not round up through float error.
    Symbols: volume V and container v in m³; a set of components counts as one container, mixed.
    Source: common practice, no source. Raises OutOfRange.
    """
    require_not_negative("volume of paint", volume)
    require_positive("volume of a container", container)
    containers = max(0, math.ceil(volume / container - _ROUND_OFF))
    supplied = containers * container
    return Purchase(containers, supplied, max(0.0, supplied - volume))


def purchases(volumes: list[float], container: float, carry_remainder: bool = False) -> tuple[list[int], Purchase]:
    """Round the coats of one product up to whole containers: those opened for each coat in turn, and all.

    Each coat is rounded up by itself. With `carry_remainder` what one coat leaves is used in the next; allow
    it only for a product in one component, or within pot life (common practice, no source).
    Symbols: volumes in order of the coats, and container, in m³. Raises OutOfRange.
    """
    opened: list[int] = []
    total = 0.0
    for volume in volumes:
        require_not_negative("volume of paint", volume)
        total += volume
        whole = purchase(total if carry_remainder else volume, container).containers
        opened.append(whole - sum(opened) if carry_remainder else whole)
    supplied = sum(opened) * container
    return opened, Purchase(sum(opened), supplied, max(0.0, supplied - total))


def _kernel(volumes: list[float], container: float, carry_remainder: bool = False) -> Mapping[str, object]:
    opened, bought = purchases(volumes, container, carry_remainder)
    return {
        "containers": float(bought.containers),
        "by_coat": [float(count) for count in opened],
        "supplied": bought.supplied,
        "left_over": bought.left_over,
    }


METHOD = Method(
    name="coating.containers",
    title="Whole containers of one product",
    formula="n = ceil(V / v) for each coat",
    source=Citation("Rounding up to whole containers", standing="common practice, no source"),
    valid="one product; a set of components counts as one container",
    inputs={
        "volumes": listed(quantity("volume", "Paint for one coat."), "Paint for each coat of this product, in order."),
        "container": quantity("volume", "Volume of one container, or of one mixed set."),
        "carry_remainder": {
            "type": "boolean",
            "description": "Whether what one coat leaves is used in the next; not for mixed sets.",
        },
    },
    outputs=(
        Symbol("containers", "containers to buy", "each", "each"),
        Symbol("by_coat", "containers opened for each coat", "each", "each"),
        Symbol("supplied", "paint in them", "volume", "L"),
        Symbol("left_over", "paint left over", "volume", "L"),
    ),
    kernel=_kernel,
    example={"volumes": ["156 L", "160 L"], "container": "20 L"},
    optional=frozenset({"carry_remainder"}),
)
