"""Wetted surface by the Denny-Mumford formula."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show

BAND = 0.06
"""Half-width of the error band, as a part of the result: spread of common formulas over three hulls
(derived)."""


def denny_surface(length: float, draft: float, volume: float) -> dict[str, float]:
    """Estimate the wetted surface of a bare hull from length, draft and volume.

    Formula: S = 1.7*L*T + V/T. Symbols: L on the waterline [m], T mean draft [m], V displaced volume [m3]; S
    [m2].
    Source: UFC 4-159-03 (2005), Eq. 18 (read; Denny, Mumford). Low and high are S*(1 -/+ 0.06).
    Range: ordinary displacement hulls; V/(L*T) is held between 0.2 T and 10 T. Raises OutOfRange.
    """
    if min(length, draft, volume) <= 0:
        raise OutOfRange("length, draft and volume must be positive")
    breadth = volume / (length * draft)
    if not 0.2 * draft <= breadth <= 10 * draft:
        raise OutOfRange(
            f"a volume of {show(volume, 'capacity', more=-1)} on {show(length, 'centre', more=-1)} by "
            f"{show(draft, 'draft')} is no ordinary hull"
        )
    surface = 1.7 * length * draft + volume / draft
    return {"wetted_surface": surface, "low": surface * (1 - BAND), "high": surface * (1 + BAND)}


METHOD = Method(
    name="hydrostatics.wetted-surface-denny",
    title="Wetted surface by the Denny-Mumford formula",
    formula="S = 1.7 L T + V/T",
    source=Citation("UFC 4-159-03, Design: Moorings", "Eq. 18"),
    valid="ordinary displacement hulls, bare",
    inputs={
        "length": quantity("length", "Length on the waterline."),
        "draft": quantity("length", "Mean draft."),
        "volume": quantity("volume", "Displaced volume."),
    },
    outputs=(
        Symbol("wetted_surface", "wetted surface", "area", "m2"),
        Symbol("low", "lower end of the usual spread", "area", "m2"),
        Symbol("high", "upper end of the usual spread", "area", "m2"),
    ),
    kernel=denny_surface,
    example={"length": "95 m", "draft": "5.5 m", "volume": "4878 m3"},
    cautions=("An estimate, good to about 6 % (derived from the spread of formulas); appendages are extra.",),
)
