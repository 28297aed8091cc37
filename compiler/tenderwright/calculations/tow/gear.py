"""The strength asked of towing gear, element by element, and the pull on each leg of a bridle."""

from __future__ import annotations

from collections.abc import Mapping
from math import asin, cos, pi
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, quantity

FACTORS: Mapping[str, tuple[float, float, float, float]] = {
    "automatic": (3, 4, 4, 3),
    "brake": (5, 6, 6, 5),
    "pawl": (7, 8, 8, 7),
    "hook": (7, 8, 8, 7),
    "hook and chain pendant": (4, 5, 6, 4),
    "hook and synthetic spring": (4, 5, 5, 4),
}
"""How the tug holds the line, with the least factors of wire hawser, wire pendant or bridle, chain, and links, shackles
and padeyes (TB 55-1900-232-10, Table 5-4)."""
PARTS = ("wire hawser", "wire pendant or bridle", "chain", "links, shackles and padeyes")
BASES = ("breaking strength", "breaking strength", "proof load", "proof load; yield of padeyes and bitts")


def gear_asked(pull: float, held: str = "hook", spread: float = 0.0, leg: float = 0.0) -> Mapping[str, Any]:
    """Give the least strength of each part of the gear, and the pull on a leg of the bridle.

    Formula: strength = factor x pull; apex = 2 asin(spread/(2 leg)), pull on a leg = pull/(2 cos(apex/2)).
    Symbols: pull [N]; spread of the towing points, length of a leg [m]; both nothing where there is no bridle.
    Source: U.S. Navy Towing Manual, as reprinted in TB 55-1900-232-10, Table 5-4; the bridle is statics (derived).
    Range: a bridle whose legs are longer than half its spread. Raises OutOfRange.
    """
    if pull <= 0:
        raise OutOfRange("the pull must be more than nothing")
    if held not in FACTORS:
        raise OutOfRange(f"the line is held by one of {', '.join(FACTORS)}")
    rows = [
        {"part": part, "factor": factor, "strength": factor * pull, "measured": base}
        for part, factor, base in zip(PARTS, FACTORS[held], BASES, strict=True)
    ]
    found: dict[str, Any] = {"parts": rows, "fittings": FACTORS[held][3] * pull, "apex": None, "leg_pull": None}
    if spread and leg:
        if spread >= 2 * leg:
            raise OutOfRange("a leg of the bridle must be longer than half the spread of the towing points")
        apex = 2 * asin(spread / (2 * leg))
        found |= {"apex": apex, "leg_pull": leg_pull(pull, apex)}
    return found


def leg_pull(pull: float, apex: float) -> float:
    """Give T/(2 cos(apex/2)), N; pull T [N], apex [rad] under 180 degrees. Source: statics (derived)."""
    if not 0 <= apex < pi:
        raise OutOfRange("the angle at the apex must be less than 180 degrees")
    return pull / (2 * cos(apex / 2))


METHOD = Method(
    name="tow.gear",
    title="Strength asked of towing gear",
    formula="strength = factor × pull; apex = 2 asin(spread/(2 leg)); pull on a leg = pull/(2 cos(apex/2))",
    source=Citation("U.S. Navy Towing Manual, as reprinted in TB 55-1900-232-10", "Table 5-4"),
    valid="least factors, for new gear, fair weather and a short time: old fittings and a long tow need more",
    inputs={
        "pull": quantity("force", "Pull on the gear."),
        "held": {"type": "string", "enum": list(FACTORS), "description": "How the tug holds the line."},
        "spread": length("Distance between the two towing points of a bridle."),
        "leg": length("Length of a leg of the bridle."),
    },
    outputs=(
        Symbol(
            "parts",
            "least strength of each part of the gear",
            "table",
            "",
            (
                Symbol("part", "part of the gear", "text", ""),
                Symbol("factor", "least factor of safety", "", ""),
                Symbol("strength", "least strength", "force", "kN"),
                Symbol("measured", "what the strength is of", "text", ""),
            ),
        ),
        Symbol("fittings", "least strength of padeyes, bitts and fairleads", "force", "kN"),
        Symbol("apex", "angle between the legs of the bridle", "angle", "deg"),
        Symbol("leg_pull", "pull on each leg of the bridle, both pulling alike", "force", "kN"),
    ),
    kernel=gear_asked,
    example={"pull": "16816 lbf", "held": "brake", "spread": "6 m", "leg": "6 m"},
    optional=frozenset({"held", "spread", "leg"}),
    cautions=("Each leg is sized for the whole pull: a tow that sheers hangs on one (common practice, no source).",),
)
