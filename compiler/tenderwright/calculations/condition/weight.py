"""What a ship weighs and where its centre is, from her weights and tanks, without floating her."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.condition.condition_input import (
    EXAMPLE_TANKS,
    EXAMPLE_WEIGHTS,
    TANKS,
    WEIGHTS,
    tanks_from_input,
    weights_from_input,
)
from tenderwright.calculations.condition.loading import Loading, TankLoad, Weight, liquids, summed
from tenderwright.calculations.method import Citation, Method, Symbol


def weight_alone(
    weights: Sequence[Mapping[str, Any] | Weight], tanks: Sequence[Mapping[str, Any] | TankLoad] = ()
) -> Loading:
    """Sum weights and tanks on an even keel; see `summed`. Raises OutOfRange."""
    loads = tanks_from_input(tanks)
    return summed(weights_from_input(weights), loads, liquids(loads))


def outputs_of(found: Loading) -> dict[str, float]:
    """Give a loading as the outputs of the method."""
    return {"mass": found.mass, "lcg": found.lcg, "tcg": found.tcg, "vcg": found.vcg}


METHOD = Method(
    name="condition.weight",
    title="Weight and its centre, without floating her",
    formula="W = sum(w); LCG = sum(w x)/W, and so for TCG and VCG; tanks as on an even keel",
    source=Citation("Derrett, Ship Stability for Masters and Mates", "moments of weights"),
    valid="any loading; tells nothing of draft, trim or stability",
    inputs={"weights": WEIGHTS, "tanks": TANKS},
    outputs=(
        Symbol("mass", "weight with what is in her tanks", "mass", "t"),
        Symbol("lcg", "centre of gravity forward of AP", "length", "m"),
        Symbol("tcg", "centre of gravity to port", "length", "m"),
        Symbol("vcg", "centre of gravity above the baseline", "length", "m"),
    ),
    kernel=weight_alone,
    figures=outputs_of,
    example={"weights": EXAMPLE_WEIGHTS, "tanks": EXAMPLE_TANKS},
    optional=frozenset({"tanks"}),
    cautions=("She is not floated by it: whether she floats upright, and how deep, it does not say.",),
)
