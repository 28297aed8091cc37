"""Length of seam and butt to be tested by hose after shell plate is renewed."""

from __future__ import annotations

import math

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length
from tenderwright.quantities.display import plainly


def hosed(renewed: float, contingent: float = 0.0) -> dict[str, float]:
    """Sum the joints to be tested, m.

    Formula: L = renewed + contingent. Symbols: joints of the inserts named, and of those that a denser survey would
    likely add, in m. Range: joints opened by the renewal; those caulked or riveted besides are counted apart.
    Source: derived. Raises OutOfRange.
    """
    for name, value in (("joints of the inserts named", renewed), ("joints likely to be added", contingent)):
        if not (math.isfinite(value) and value >= 0.0):
            raise OutOfRange(f"the length of {name} cannot be less than nothing, got {plainly(value, 'centre')}")
    return {"hose": renewed + contingent}


METHOD = Method(
    name="tightness.hosed",
    title="Seam and butt to be tested by hose",
    formula="L = joints of the inserts named + joints of those that a denser survey would likely add",
    source=Citation("Sum of lengths", standing="derived"),
    valid="joints opened by renewal of shell plate; joints caulked or riveted besides are the item's own",
    inputs={
        "renewed": length("Joints of the inserts named."),
        "contingent": length("Joints of those that a denser survey would likely add."),
    },
    outputs=(Symbol("hose", "length of joint to be tested", "length", "m"),),
    kernel=hosed,
    example={"renewed": "84 m", "contingent": "21 m"},
    optional=frozenset({"contingent"}),
)
