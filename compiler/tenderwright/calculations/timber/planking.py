"""Planking to renew: how many planks, their length and area, and the board to buy for them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record

MOST_WASTE = 3.0


def planking(planks: Sequence[Mapping[str, float]], waste: float) -> Mapping[str, float]:
    """Sum up the planks to renew.

    Formula: A = sum l b, V = sum l b t, board = V (1 + w).
    Symbols: length l, greatest width b, thickness t of each plank [m]; w board bought beyond what is fitted, as a share
        of it. A plank that tapers is reckoned at its greatest width, which is what is sawn for it.
    Source: geometry (derived); the waste is an input. Raises OutOfRange.
    """
    if not 0 <= waste <= MOST_WASTE:
        raise OutOfRange(f"waste is a share from nothing to {100 * MOST_WASTE:.0f} %, not {100 * waste:g} %")
    for one in planks:
        if min(one["length"], one["width"], one["thickness"]) <= 0:
            raise OutOfRange("a plank has a length, a width and a thickness above nothing")
    net = sum(one["length"] * one["width"] * one["thickness"] for one in planks)
    return {
        "number": float(len(planks)),
        "length": sum(one["length"] for one in planks),
        "area": sum(one["length"] * one["width"] for one in planks),
        "net": net,
        "board": net * (1 + waste),
    }


METHOD = Method(
    name="timber.planking",
    title="Planking to renew",
    formula="A = Σ l b; V = Σ l b t; board = V (1 + w)",
    source=Citation("Geometry", standing="derived"),
    valid="planks at their greatest width; waste up to three times what is fitted",
    inputs={
        "planks": listed(
            record(
                "A plank.",
                ("length", "width", "thickness"),
                length=quantity("length", "Length from butt to butt."),
                width=quantity("length", "Greatest width."),
                thickness=quantity("length", "Thickness as fitted."),
            ),
            "The planks to renew.",
            0,
        ),
        "waste": quantity("fraction", "Board bought beyond what is fitted, as a share of it."),
    },
    outputs=(
        Symbol("number", "planks to renew", "each", "each"),
        Symbol("length", "length of plank to renew", "length", "m"),
        Symbol("area", "area of planking to renew", "area", "m2"),
        Symbol("net", "volume of wood fitted", "volume", "m3"),
        Symbol("board", "volume of board to buy, waste included", "volume", "m3"),
    ),
    kernel=planking,
    example={"planks": [{"length": "3.6 m", "width": "190 mm", "thickness": "45 mm"}], "waste": "30 %"},
    cautions=("more is found when planks come off: have a rate for further planks",),
)
