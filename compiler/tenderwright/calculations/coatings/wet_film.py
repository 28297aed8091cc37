"""Wet film thickness and the thinner that changes it."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.coatings.ranges import (
    require_not_negative,
    require_positive,
    require_volume_solids,
)
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import quantity


def thinned_volume_solids(volume_solids: float, thinning: float) -> float:
    """Find the volume solids of a thinned paint.

    Formula: VS' = VS / (1 + tau). Symbols: thinning tau, volume of thinner per volume of paint.
    Source: derived; MIL-HDBK-1110, 2.1.5 finds the solids anew after thinning. Raises OutOfRange.
    """
    require_volume_solids(volume_solids)
    require_not_negative("thinning", thinning)
    return volume_solids / (1.0 + thinning)


def wet_film(dry_film: float, volume_solids: float, thinning: float = 0.0) -> float:
    """Find the wet film that dries to a given film.

    Formula: WFT = DFT / VS' = DFT (1 + tau) / VS, in m. Symbols: dry_film DFT in m, volume_solids VS of the
    paint as supplied, thinning tau as volume of thinner per volume of paint.
    Source: MIL-HDBK-1110, 2.1.5 (DFT = WFT VS); the thinned form is derived. Raises OutOfRange.
    """
    require_positive("dry film thickness", dry_film)
    return dry_film / thinned_volume_solids(volume_solids, thinning)


def thinner_volume(paint: float, thinning: float) -> float:
    """Find the volume of thinner for a volume of paint, m³: tau V; it does not change the paint needed.

    Source: derived. Raises OutOfRange.
    """
    require_not_negative("volume of paint", paint)
    require_not_negative("thinning", thinning)
    return thinning * paint


def _kernel(dry_film: float, volume_solids: float, thinning: float = 0.0) -> Mapping[str, float]:
    return {
        "wet_film": wet_film(dry_film, volume_solids, thinning),
        "thinned_volume_solids": thinned_volume_solids(volume_solids, thinning),
    }


METHOD = Method(
    name="coating.wet-film",
    title="Wet film thickness, with thinning",
    formula="WFT = DFT (1 + τ) / VS",
    source=Citation("MIL-HDBK-1110 (in UFC 3-190-06)", "2.1.5; the thinned form is derived"),
    valid="no loss of volume but the solvent; thinner by volume of paint",
    inputs={
        "dry_film": quantity("length", "Dry film thickness of the coat."),
        "volume_solids": quantity("fraction", "Solids by volume, of the paint as supplied."),
        "thinning": quantity("fraction", "Volume of thinner per volume of paint; none unless given."),
    },
    outputs=(
        Symbol("wet_film", "wet film thickness", "length", "um"),
        Symbol("thinned_volume_solids", "solids by volume after thinning", "fraction", "%"),
    ),
    kernel=_kernel,
    example={"dry_film": "100 um", "volume_solids": "50 %", "thinning": "10 %"},
    optional=frozenset({"thinning"}),
)
