"""Spreading rate of a paint: theoretical and practical."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.coatings.ranges import require_loss, require_positive, require_volume_solids
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity


def theoretical_spreading_rate(volume_solids: float, dry_film: float) -> float:
    """Find the area that a volume of paint covers with nothing lost.

    Formula: TSR = VS / DFT, in m²/m³; in the trade's units TSR[m²/L] = 10 VS[%] / DFT[µm].
    Symbols: volume_solids VS as a fraction by volume (not weight); dry_film DFT in m.
    Range: smooth, non-porous, flat surface; paint not thinned.
    Source: MIL-HDBK-1110, 2.1.5 (in UFC 3-190-06). Raises OutOfRange outside 0 < VS <= 1 or DFT > 0.
    """
    require_volume_solids(volume_solids)
    require_positive("dry film thickness", dry_film)
    return volume_solids / dry_film


def practical_spreading_rate(theoretical: float, loss: float) -> float:
    """Find the area covered in practice when a fraction of the paint is lost.

    Formula: PSR = TSR (1 - LF). Symbols: theoretical in m²/m³ (or any unit, kept); loss LF, the fraction of
    the paint used that does not end on the surface, 0 <= LF < 1.
    Source: definition of practical coverage (common practice, no source). Raises OutOfRange.
    """
    require_positive("spreading rate", theoretical)
    require_loss(loss)
    return theoretical * (1.0 - loss)


def consumption_factor(loss: float) -> float:
    """Give the consumption factor of a loss fraction: CF = 1/(1 - LF), so 0.30 gives 1.43, not 1.30.

    Source: derived. Raises OutOfRange.
    """
    require_loss(loss)
    return 1.0 / (1.0 - loss)


def loss_from_consumption_factor(factor: float) -> float:
    """Give the loss fraction that a consumption factor stands for: LF = 1 - 1/CF, with CF >= 1.

    Source: derived. Raises OutOfRange below 1, which is likely a loss or a yield written as a factor.
    """
    if not factor >= 1.0:
        raise OutOfRange(f"a consumption factor is at least 1, got {factor:g}; a loss fraction is another thing")
    return 1.0 - 1.0 / factor


def _kernel(
    volume_solids: float, dry_film: float, loss: float | None = None, factor: float | None = None
) -> Mapping[str, float]:
    if loss is not None and factor is not None:
        raise OutOfRange("give a loss or a consumption factor: each says the other")
    if loss is None:
        loss = 0.0 if factor is None else loss_from_consumption_factor(factor)
    theoretical = theoretical_spreading_rate(volume_solids, dry_film)
    return {
        "theoretical": theoretical,
        "practical": practical_spreading_rate(theoretical, loss),
        "consumption_factor": consumption_factor(loss),
    }


METHOD = Method(
    name="coating.spreading-rate",
    title="Spreading rate of a paint",
    formula="TSR = VS / DFT; PSR = TSR (1 − loss); consumption factor = 1 / (1 − loss)",
    source=Citation("MIL-HDBK-1110 (in UFC 3-190-06)", "2.1.5"),
    valid="smooth, flat, non-porous surface; volume solids of the paint as applied",
    inputs={
        "volume_solids": quantity("fraction", "Solids by volume, of the paint as supplied."),
        "dry_film": quantity("length", "Dry film thickness of the coat."),
        "loss": quantity("fraction", "Fraction of the paint used that does not end on the surface; none unless given."),
        "factor": number("Consumption factor, in place of the loss; 1.43 for a loss of 30 %.", minimum=1),
    },
    outputs=(
        Symbol("theoretical", "theoretical spreading rate", "spreading_rate", "m2/L"),
        Symbol("practical", "practical spreading rate", "spreading_rate", "m2/L"),
        Symbol("consumption_factor", "paint used for each part that ends on the surface", "fraction", ""),
    ),
    kernel=_kernel,
    example={"volume_solids": "71 %", "dry_film": "125 um", "loss": "30 %"},
    optional=frozenset({"loss", "factor"}),
    cautions=("a loss of 30 % multiplies the paint by 1.43, not by 1.30",),
)
