"""Stripe coats: paint for a band along edges, welds and rivet lines."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.coatings.ranges import require_not_negative
from tenderwright.calculations.coatings.volume import paint_volume
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity


def stripe_volume(
    length: float, width: float, volume_solids: float, dry_film: float, loss: float, coats: int = 1
) -> float:
    """Find the volume of paint for stripe coats.

    Formula: V = n l b DFT / (VS (1 - LF)), in m³. Symbols: length l of edges and welds and band width b in m,
    volume_solids VS and loss LF as fractions, dry_film DFT of one stripe coat in m, coats n.
    Source: derived; MSC.1/Circ.1399 asks for two stripe coats, which is a count and not a volume.
    Raises OutOfRange.
    """
    require_not_negative("length of the stripe", length)
    require_not_negative("width of the stripe", width)
    if coats < 0:
        raise OutOfRange(f"the number of stripe coats cannot be less than nothing, got {coats}")
    return coats * paint_volume(length * width, volume_solids, dry_film, loss)


def _kernel(
    length: float, width: float, volume_solids: float, dry_film: float, loss: float, coats: int = 1
) -> Mapping[str, float]:
    return {
        "paint": stripe_volume(length, width, volume_solids, dry_film, loss, coats),
        "area": length * width,
    }


METHOD = Method(
    name="coating.stripe",
    title="Paint for stripe coats",
    formula="V = n · l · b · DFT / (VS · (1 − loss))",
    source=Citation("Length of edge by width of band by film", standing="derived"),
    valid="length as measured along edges, welds and rivet lines; a flat 5 to 10 % instead has no source",
    inputs={
        "length": quantity("length", "Length of edges, welds and rivet lines."),
        "width": quantity("length", "Width of the band."),
        "volume_solids": quantity("fraction", "Solids by volume, of the paint as supplied."),
        "dry_film": quantity("length", "Dry film thickness of one stripe coat."),
        "loss": quantity("fraction", "Fraction of the paint used that does not end on the band."),
        "coats": {
            "type": "integer",
            "minimum": 0,
            "description": "Number of stripe coats; one unless given.",
        },
    },
    outputs=(
        Symbol("paint", "paint as supplied", "volume", "L"),
        Symbol("area", "area of the band", "area", "m2"),
    ),
    kernel=_kernel,
    example={
        "length": "340 m",
        "width": "80 mm",
        "volume_solids": "71 %",
        "dry_film": "100 um",
        "loss": "10 %",
        "coats": 2,
    },
    optional=frozenset({"coats"}),
)
