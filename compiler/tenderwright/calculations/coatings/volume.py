"""Volume of paint for one coat on an area."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.coatings.ranges import require_not_negative
from tenderwright.calculations.coatings.spreading import (
    practical_spreading_rate,
    theoretical_spreading_rate,
)
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import quantity


def paint_volume(area: float, volume_solids: float, dry_film: float, loss: float) -> float:
    """Find the volume of paint, as supplied, for one coat.

    Formula: V = A DFT / (VS (1 - LF)), in m³; in litres A[m²] DFT[µm] / (10 VS[%] (1 - LF)).
    Symbols: area in m², volume_solids as a fraction, dry_film in m, loss LF as a fraction of the paint used.
    Source: MIL-HDBK-1110, 2.1.5, with the practical rate. Raises OutOfRange.
    """
    require_not_negative("area", area)
    return area / practical_spreading_rate(theoretical_spreading_rate(volume_solids, dry_film), loss)


def _kernel(area: float, volume_solids: float, dry_film: float, loss: float) -> Mapping[str, float]:
    return {"paint": paint_volume(area, volume_solids, dry_film, loss)}


METHOD = Method(
    name="coating.paint-volume",
    title="Volume of paint for one coat",
    formula="V = A · DFT / (VS · (1 − loss))",
    source=Citation("MIL-HDBK-1110 (in UFC 3-190-06)", "2.1.5"),
    valid="smooth surface; profile, stripe coats and thinner are counted apart",
    inputs={
        "area": quantity("area", "Area to coat."),
        "volume_solids": quantity("fraction", "Solids by volume, of the paint as supplied."),
        "dry_film": quantity("length", "Dry film thickness of the coat."),
        "loss": quantity("fraction", "Fraction of the paint used that does not end on the surface."),
    },
    outputs=(Symbol("paint", "paint as supplied", "volume", "L"),),
    kernel=_kernel,
    example={"area": "620 m2", "volume_solids": "71 %", "dry_film": "125 um", "loss": "30 %"},
    cautions=("loss depends on method, wind and shape; no usable published figure: agree it with the yard",),
)
