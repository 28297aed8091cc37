"""How she lifts off the blocks as the dock is flooded: a landing backwards."""

from __future__ import annotations

from typing import Any

from tenderwright.calculations.landing.exact import settle_exactly
from tenderwright.calculations.landing.landing import METHOD as LANDING
from tenderwright.calculations.landing.landing import lander
from tenderwright.calculations.landing.settling import LANDING_SYMBOLS, Landing, outputs_of
from tenderwright.calculations.method import Citation, Method


def lifted(**inputs: Any) -> Landing:
    """Float her off, from the inputs of `lander`; see `settle_exactly`. Raises OutOfRange."""
    return settle_exactly(lander(**inputs))


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
