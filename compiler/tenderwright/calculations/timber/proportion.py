"""The share of a whole that is bad, from a sample of it, with exact bounds."""

from __future__ import annotations

from collections.abc import Mapping
from math import comb

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity

SOURCE = Citation("ISO 11453", "two-sided confidence interval for a proportion", standing="from memory")
MOST_DRAWN = 1000
_HALVINGS = 60


def bounds_of_share(drawn: int, bad: int, confidence: float) -> tuple[float, float]:
    """Give the least and the greatest share of the whole that the sample allows, by the exact method.

    Formula: lower p with P(X >= k | n, p) = (1 - c)/2; upper p with P(X <= k | n, p) = (1 - c)/2; X binomial.
    Symbols: n drawn, k of them bad, confidence c. Range: 1 to 1000 drawn at random, c of 50 % to 99.9 %; of a small
        whole, drawn without putting back, the bounds are wider than they need be.
    Source: C. J. Clopper and E. S. Pearson, Biometrika 26 (1934), p. 404; ISO 11453 (from memory). Raises OutOfRange.
    """
    if not 1 <= drawn <= MOST_DRAWN:
        raise OutOfRange(f"from 1 to {MOST_DRAWN} are drawn, not {drawn}")
    if not 0 <= bad <= drawn:
        raise OutOfRange(f"{bad} of {drawn} cannot be bad")
    if not 0.5 <= confidence <= 0.999:
        raise OutOfRange(f"the confidence is from 50 % to 99.9 %, not {100 * confidence:g} %")
    tail = 0.5 * (1 - confidence)
    # The chance of k or fewer falls as the share grows.
    lower = 0.0 if bad == 0 else _share_at(drawn, bad - 1, 1 - tail)
    upper = 1.0 if bad == drawn else _share_at(drawn, bad, tail)
    return lower, upper


def _share_at(drawn: int, bad: int, chance: float) -> float:
    """Find the share at which `bad` or fewer of those drawn have this chance, by halving."""
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        share = 0.5 * (low + high)
        if _at_most(drawn, bad, share) > chance:
            low = share
        else:
            high = share
    return 0.5 * (low + high)


def _at_most(drawn: int, bad: int, share: float) -> float:
    return sum(comb(drawn, k) * share**k * (1 - share) ** (drawn - k) for k in range(bad + 1))


def _kernel(drawn: int, bad: int, confidence: float) -> Mapping[str, float]:
    lower, upper = bounds_of_share(drawn, bad, confidence)
    return {"share": bad / drawn, "lower": lower, "upper": upper}


METHOD = Method(
    name="timber.proportion",
    title="Share of a whole that is bad, from a sample",
    formula="P(X ≥ k | n, p) = (1 − c)/2 at the lower bound, P(X ≤ k | n, p) = (1 − c)/2 at the upper, X binomial",
    source=SOURCE,
    valid="1 to 1000 drawn at random from the whole; confidence of 50 % to 99.9 %",
    inputs={
        "drawn": {"type": "integer", "minimum": 1, "maximum": MOST_DRAWN, "description": "How many were drawn."},
        "bad": {"type": "integer", "minimum": 0, "description": "How many of them were bad."},
        "confidence": quantity("fraction", "Confidence that the share lies between both bounds."),
    },
    outputs=(
        Symbol("share", "share of the sample that is bad", "fraction", "%"),
        Symbol("lower", "least share of the whole", "fraction", "%"),
        Symbol("upper", "greatest share of the whole", "fraction", "%"),
    ),
    kernel=_kernel,
    example={"drawn": 16, "bad": 3, "confidence": "95 %"},
    cautions=("those drawn because they looked bad tell nothing of the others",),
)
