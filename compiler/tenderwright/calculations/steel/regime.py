"""Regimes of shell material: what wrought iron and early steel ask that mild steel does not."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity, text
from tenderwright.calculations.thickness.limits import require_allowable

Material = Literal["mild steel", "early steel", "wrought iron"]
MATERIALS: tuple[Material, ...] = ("mild steel", "early steel", "wrought iron")

OLD_ALLOWABLE = 0.20
"""What plate of wrought iron or early steel may lose, where its owner's naval architect says nothing else."""
OLD_SOURCE = Citation(
    "no rule for old metal", "stricter than the 25 % of USCG NVIC 7-68, Appendix E", "common practice, no source"
)


class Regime(Struct, frozen=True):
    """What a material asks."""

    material: Material
    allowable: float | None
    """The most that its plate may lose, whatever the zone allows; None where the zone alone says it."""
    source: str
    laminated: bool
    """Whether it is tested by ultrasonics for laminations before it is cut, drilled or welded."""
    analysed: bool
    """Whether no weld is made on it before an analysis of it has passed; riveted only where it fails."""


def regime_of(material: str, allowable: float | None = None, source: str = "") -> Regime:
    """Give what a material asks; allowable and source, where the owner's naval architect sets another limit.

    Source: limits `OLD_SOURCE`; that old metal is laminar and its analysis unknown is common practice, no source.
    Raises OutOfRange.
    """
    if material not in MATERIALS:
        raise OutOfRange(f"`{material}` is no material that is known here: {', '.join(MATERIALS)}")
    if allowable is not None:
        require_allowable(allowable)
    old = material != "mild steel"
    limit = allowable if allowable is not None else OLD_ALLOWABLE if old else None
    told = source if allowable is not None else str(OLD_SOURCE) if old else ""
    return Regime(MATERIALS[MATERIALS.index(material)], limit, told, old, old)


def outputs_of(found: Regime) -> Mapping[str, Any]:
    """Give the regime as the outputs of the method; without a limit where the zone alone says it."""
    outputs = {"source": found.source, "laminated": found.laminated, "analysed": found.analysed}
    return outputs if found.allowable is None else {"allowable": found.allowable, **outputs}


METHOD = Method(
    name="steel.regime",
    title="What a shell's material asks",
    formula="allowable diminution no more than the material's, whatever the zone allows",
    source=OLD_SOURCE,
    valid="plates of mild steel, early steel and wrought iron; the naval architect decides which limit holds",
    inputs={
        "material": {"type": "string", "enum": list(MATERIALS), "description": "What the plate is made of."},
        "allowable": quantity("fraction", "What its plate may lose; 20 % for old metal unless given.", "18 %"),
        "source": text("Who says so, where it is given."),
    },
    outputs=(
        Symbol("allowable", "most that its plate may lose, whatever its zone allows", "fraction", "%"),
        Symbol("source", "who says so", "text", ""),
        Symbol("laminated", "whether it is tested for laminations", "truth", ""),
        Symbol("analysed", "whether no weld is made before an analysis has passed", "truth", ""),
    ),
    kernel=regime_of,
    figures=outputs_of,
    example={"material": "wrought iron"},
    optional=frozenset({"allowable", "source"}),
)
