"""Whether old plate may be welded, by its analysis: held against acceptance figures before the first weld."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.verdict import VERDICT_SYMBOLS, Limit, Verdict, verdict, verdict_outputs

CARBON, SULPHUR, PHOSPHORUS, NITROGEN = 0.0025, 0.0005, 0.0005, 0.00012
"""Greatest shares by mass in old plate that is welded (common practice, no source)."""
PRACTICE = "common practice, no source"
EQUIVALENT = 0.45
"""Greatest carbon equivalent, % by mass, for welding without preheat of thin plate."""
EQUIVALENT_SOURCE = "EN 1011-2, Annex C.2 (from memory)"

Share = float | None


def carbon_equivalent(carbon: float, manganese: float) -> float:
    """Find the carbon equivalent of plain steel, % by mass: C + Mn/6.

    Symbols: percentages by mass; chromium, molybdenum, vanadium, nickel and copper, which plain steel of old plates
    hardly holds, are left out. Source: `EQUIVALENT_SOURCE`.
    """
    return carbon + manganese / 6.0


def weldability(
    carbon: Share = None,
    manganese: Share = None,
    sulphur: Share = None,
    phosphorus: Share = None,
    nitrogen: Share = None,
) -> Verdict:
    """Hold an analysis against acceptance figures: welded where every one is met, riveted only where one is passed.

    Symbols: shares by mass; None where it was not analysed, and then not known. Source: `PRACTICE`;
    `EQUIVALENT_SOURCE`. Raises OutOfRange.
    """
    shares = {
        "carbon": carbon, "manganese": manganese, "sulphur": sulphur, "phosphorus": phosphorus, "nitrogen": nitrogen,
    }  # fmt: skip
    for name, share in shares.items():
        if share is not None and not 0.0 <= share <= 0.05:
            raise OutOfRange(f"{name} in plate is a few tenths of a per cent, got {100.0 * share:g} %")
    limits = [
        Limit("carbon", "fraction", carbon, CARBON, source=PRACTICE),
        Limit("sulphur", "fraction", sulphur, SULPHUR, source=PRACTICE),
        Limit("phosphorus", "fraction", phosphorus, PHOSPHORUS, source=PRACTICE),
        Limit("nitrogen", "fraction", nitrogen, NITROGEN, source=PRACTICE),
        Limit(
            "carbon equivalent",
            "fraction",
            _equivalent(carbon, manganese),
            EQUIVALENT / 100.0,
            source=EQUIVALENT_SOURCE,
        ),
    ]
    return verdict(limits)


def _equivalent(carbon: Share, manganese: Share) -> Share:
    if carbon is None or manganese is None:
        return None
    return carbon_equivalent(100.0 * carbon, 100.0 * manganese) / 100.0


JOINING = {True: "may be welded by a proved procedure", False: "riveted only", None: "no weld until it is known"}


def outputs_of(found: Verdict) -> Mapping[str, Any]:
    """Give the verdict as the outputs of the method."""
    return {"joining": JOINING[found.met], **verdict_outputs(found)}


def _share(name: str) -> Mapping[str, Any]:
    return quantity("fraction", f"{name} by mass; left out where it was not analysed.")


METHOD = Method(
    name="steel.weldability",
    title="Whether old plate may be welded, by its analysis",
    formula="CE = C + Mn/6; it and each element against its acceptance figure",
    source=Citation("EN 1011-2", "Annex C.2; shares of elements by common practice, no source", "from memory"),
    valid="plain carbon steel and iron, of which other elements are traces",
    inputs={
        "carbon": _share("Carbon"),
        "manganese": _share("Manganese"),
        "sulphur": _share("Sulphur"),
        "phosphorus": _share("Phosphorus"),
        "nitrogen": _share("Nitrogen"),
    },
    outputs=(Symbol("joining", "how its repairs are joined", "text", ""), *VERDICT_SYMBOLS),
    kernel=weldability,
    figures=outputs_of,
    example={
        "carbon": "0.18 %",
        "manganese": "0.50 %",
        "sulphur": "0.040 %",
        "phosphorus": "0.040 %",
        "nitrogen": "0.006 %",
    },
    optional=frozenset({"carbon", "manganese", "sulphur", "phosphorus", "nitrogen"}),
    cautions=(
        "a sample speaks for its plate: strakes were rolled of many heats",
        "the welding procedure is proved on cut-out material, bent, before the first weld on the ship",
        "wrought iron is laminar: a weld may tear it in its thickness whatever the analysis says",
    ),
)
