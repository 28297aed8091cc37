"""How she lifts off the blocks as the dock is flooded: a landing backwards."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import hull_from_offsets
from tenderwright.calculations.landing.exact import Lander, settle_exactly
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.landing.landing import METHOD as LANDING
from tenderwright.calculations.landing.settling import LANDING_SYMBOLS, Landing, outputs_of
from tenderwright.calculations.method import Citation, Method


def lifted(
    offsets: Mapping[str, Any] | HullForm,
    displacement: float,
    lcg: float,
    vcg: float,
    block_aft: float,
    block_forward: float,
    density: float = 1025.0,
    declivity: float = 0.0,
    keel: float = 0.0,
    free_surface_moment: float = 0.0,
) -> Landing:
    """Float her off from converted input; see `settle_exactly`. Raises OutOfRange."""
    form, blocks = hull_from_offsets(offsets), BlockLine(block_aft, block_forward, declivity)
    return settle_exactly(Lander(form, displacement, lcg, vcg, density, blocks, keel, free_surface_moment))


METHOD = Method(
    name="docking.lifting",
    title="Lifting off the blocks: a landing backwards",
    formula=LANDING.formula,
    source=Citation("Statics of a floating body with an upward force at the block", standing="derived"),
    valid=LANDING.valid,
    inputs=LANDING.inputs,
    outputs=LANDING_SYMBOLS,
    kernel=lifted,
    figures=outputs_of,
    example=LANDING.example,
    optional=LANDING.optional,
    cautions=LANDING.cautions,
)
