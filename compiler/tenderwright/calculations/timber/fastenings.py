"""The fastenings of a zone, from those drawn: loss of area, and how many are to be renewed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import ceil

from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity, record
from tenderwright.calculations.timber.proportion import MOST_DRAWN, SOURCE, bounds_of_share
from tenderwright.calculations.verdict import within

_ROUND_OFF = 1e-9


def fastenings(
    drawn: Sequence[Mapping[str, float]], limit: float, number: float, confidence: float
) -> Mapping[str, float]:
    """Judge the fastenings drawn of a zone, and reckon how many of all are failed.

    Formula: loss = 1 - (d/d0)^2; failed where loss > limit; failed of all N: N p, between N lower and N upper.
    Symbols: d0 diameter as fitted, d least diameter now [m]; p share of those drawn that failed; bounds as
        `bounds_of_share`.
    Source: geometry (derived); ISO 11453 (from memory). The limit is an input. Raises OutOfRange.
    """
    losses = []
    for one in drawn:
        if not 0 <= one["now"] <= one["new"] * (1 + _ROUND_OFF) or one["new"] <= 0:
            raise OutOfRange("a fastening is no thicker now than it was new")
        losses.append(1 - (one["now"] / one["new"]) ** 2)
    if not losses:
        raise OutOfRange("none is drawn")
    failed = sum(not within(loss, limit) for loss in losses)
    lower, upper = bounds_of_share(len(losses), failed, confidence)
    share = failed / len(losses)
    return {
        "drawn": float(len(losses)),
        "mean_loss": sum(losses) / len(losses),
        "greatest_loss": max(losses),
        "failed": float(failed),
        "share": share,
        "lower": lower,
        "upper": upper,
        "likely": float(ceil(number * share - _ROUND_OFF)),
        "least": float(ceil(number * lower - _ROUND_OFF)),
        "most": float(ceil(number * upper - _ROUND_OFF)),
    }


METHOD = Method(
    name="timber.fastenings",
    title="Fastenings of a zone, from those drawn",
    formula="loss = 1 − (d/d₀)²; to renew: N p, between N times the exact bounds of p",
    source=SOURCE,
    valid="fastenings drawn at random from a zone of one kind; one to a thousand",
    inputs={
        "drawn": listed(
            record(
                "A fastening drawn.",
                ("new", "now"),
                new=quantity("length", "Diameter as fitted."),
                now=quantity("length", "Least diameter now."),
            ),
            "Those drawn.",
        )
        | {"maxItems": MOST_DRAWN},
        "limit": quantity("fraction", "Loss of area above which it counts as failed."),
        "number": number("How many there are in the zone.", minimum=1),
        "confidence": quantity("fraction", "Confidence of the bounds."),
    },
    outputs=(
        Symbol("drawn", "fastenings drawn", "each", "each"),
        Symbol("mean_loss", "mean loss of area", "fraction", "%"),
        Symbol("greatest_loss", "greatest loss of area", "fraction", "%"),
        Symbol("failed", "failed of those drawn", "each", "each"),
        Symbol("share", "share of those drawn that failed", "fraction", "%"),
        Symbol("lower", "least share of all that failed", "fraction", "%"),
        Symbol("upper", "greatest share of all that failed", "fraction", "%"),
        Symbol("likely", "likely number to renew", "each", "each"),
        Symbol("least", "least number to renew", "each", "each"),
        Symbol("most", "greatest number to renew", "each", "each"),
    ),
    kernel=fastenings,
    example={
        "drawn": [{"new": "12 mm", "now": "11.4 mm"}, {"new": "12 mm", "now": "8.9 mm"}],
        "limit": "30 %",
        "number": 620,
        "confidence": "95 %",
    },
    cautions=("a fastening may be sound and the wood round it not: the shipwright judges both",),
)
