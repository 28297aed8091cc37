"""Classes of estimate: how far the cost may lie from it, by how well the work is defined."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number

CLASS_SOURCE = Citation("AACE International, Recommended Practice 18R-97", "widest bounds", standing="from memory")


class EstimateClass(Struct, frozen=True):
    """A class of estimate, with its widest bounds as shares of the estimate."""

    number: int
    """From 5, the least defined, to 1."""
    defined_from: float
    defined_to: float
    """How much of the work is defined, from and to, 0 to 1."""
    below: float
    """How far the cost may lie below the estimate, 0 to 1."""
    above: float
    """How far the cost may lie above the estimate."""

    @property
    def factors(self) -> tuple[float, float]:
        """Give what the estimate is multiplied by for low and for high."""
        return 1.0 - self.below, 1.0 + self.above


CLASSES: dict[int, EstimateClass] = {
    entry.number: entry
    for entry in (
        EstimateClass(5, 0.00, 0.02, 0.50, 1.00),
        EstimateClass(4, 0.01, 0.15, 0.30, 0.50),
        EstimateClass(3, 0.10, 0.40, 0.20, 0.30),
        EstimateClass(2, 0.30, 0.75, 0.15, 0.20),
        EstimateClass(1, 0.50, 1.00, 0.10, 0.15),
    )
}
"""The classes by number (`CLASS_SOURCE`). They come from process plants, and are not calibrated for ship repair."""

EVIDENCE_CLASSES: dict[str, int] = {
    "earlier docking": 5,
    "judgement": 5,
    "survey": 4,
    "specification": 3,
    "tariff": 3,
    "letter": 3,
    "quotation": 2,
    "opened up": 1,
}
"""The class that goes with what a price rests on (common practice, no source): only an earlier docking or judgement;
a survey afloat by diver or ultrasonics; a written specification, priced from a tariff or a yard's letter; prices quoted
for that specification; the work opened up."""


def class_factors(number: int) -> tuple[float, float]:
    """Give the factors for low and high of a class of estimate from 1 to 5.

    Source: `CLASS_SOURCE`. Raises OutOfRange.
    """
    if number not in CLASSES:
        raise OutOfRange(f"the classes of estimate are 1 to 5, got {number}")
    return CLASSES[number].factors


def _kernel(likely: float, estimate_class: int) -> Mapping[str, float]:
    low, high = class_factors(estimate_class)
    if likely < 0.0:
        low, high = high, low
    return {"low": likely * low, "high": likely * high}


METHOD = Method(
    name="cost.estimate-class",
    title="Low and high of an estimate by its class",
    formula="low = likely · (1 − below), high = likely · (1 + above); classes 5 to 1: −50/+100 %, −30/+50 %, "
    "−20/+30 %, −15/+20 %, −10/+15 %",
    source=CLASS_SOURCE,
    valid="classes 1 to 5; from process plants, not calibrated for ship repair",
    inputs={
        "likely": number("The estimate."),
        "estimate_class": {
            "type": "integer",
            "minimum": 1,
            "maximum": 5,
            "description": "Its class: 5 for an earlier docking only, 4 for a survey afloat, 3 for a written "
            "specification, 2 for prices quoted, 1 for work opened up.",
        },
    },
    outputs=(
        Symbol("low", "low", "", ""),
        Symbol("high", "high", "", ""),
    ),
    kernel=_kernel,
    example={"likely": 26000, "estimate_class": 4},
    cautions=(
        "the bounds come from process plants and are not calibrated for ship repair; your own growth comes before them",
        "which evidence makes which class is common practice, with no source",
    ),
)
