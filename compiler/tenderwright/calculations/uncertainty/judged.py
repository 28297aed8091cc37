"""Figures against their limits, each with how well it is known."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.method import Citation, Method
from tenderwright.calculations.verdict import (
    LIMITS_INPUT,
    VERDICT_SYMBOLS,
    Limit,
    Verdict,
    limits_from_input,
    verdict,
    verdict_outputs,
)


def judged(limits: Sequence[Mapping[str, Any] | Limit]) -> Verdict:
    """Judge figures by their limits; see `verdict`. Raises OutOfRange."""
    return verdict(limits_from_input(limits))


METHOD = Method(
    name="uncertainty.judged",
    title="Figures against their limits, by how well each is known",
    formula="fail where a figure is beyond its limit; not known where it is within by less than 2 u; otherwise pass",
    source=Citation("JCGM 100:2008, Guide to the expression of uncertainty in measurement", "6.3.3, for 2 u"),
    valid="figures that have nothing to do with each other may fail together more often than each alone",
    inputs={"limits": LIMITS_INPUT},
    outputs=VERDICT_SYMBOLS,
    kernel=judged,
    figures=verdict_outputs,
    example={
        "limits": [
            {"name": "metacentric height as she settles", "dimension": "length", "demand": "0.55 m", "limit": "0.45 m",
             "at_least": True, "uncertainty": "30 mm"},
        ]
    },
)  # fmt: skip
