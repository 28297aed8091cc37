"""Blasting nozzles: what they use and how fast they go."""

from __future__ import annotations

from dataclasses import dataclass

from tenderwright.calculations.coatings.ranges import require_positive
from tenderwright.calculations.method import Citation

_INCH = 0.0254
_POUND_PER_HOUR = 0.45359237 / 3600.0
_CUBIC_FOOT_PER_MINUTE = 0.3048**3 / 60.0

SOURCE = Citation("Blasting reference information, fssurfacesolutions.com", "nozzle table at 100 psi")


@dataclass(frozen=True)
class Nozzle:
    """A nozzle at 100 psi (0.69 MPa): bore in m, abrasive in kg/s, air in m³/s."""

    bore: float
    abrasive: float
    air: float


NOZZLES = tuple(
    Nozzle(bore * _INCH, abrasive * _POUND_PER_HOUR, air * _CUBIC_FOOT_PER_MINUTE)
    for bore, abrasive, air in (
        (1 / 4, 494.0, 81.0),
        (5 / 16, 812.0, 137.0),
        (3 / 8, 1152.0, 196.0),
        (7 / 16, 1584.0, 254.0),
        (1 / 2, 2024.0, 338.0),
    )
)
"""Nozzles at 100 psi, smallest first, from `SOURCE`."""


def blasting_speed(abrasive: float, rate: float) -> float:
    """Find the area blasted in a time, m²/s: abrasive flow in kg/s by rate in kg/m².

    Source: derived; the table of `SOURCE` is reproduced at 5 lb/ft². Raises OutOfRange.
    """
    require_positive("abrasive flow", abrasive)
    require_positive("abrasive rate", rate)
    return abrasive / rate
