"""Clearances that a ship needs in a facility: inputs, with a set of figures to start from and its source."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.method import Citation, OutOfRange


class Clearances(Struct, frozen=True):
    """Clearances in m, each a least one."""

    blocks: float
    """Keel over the blocks."""
    sill: float
    """Deepest part over the sill."""
    head: float
    """Beyond the end of the ship at the head of the dock."""
    entrance: float
    """Beyond the end of the ship at the entrance."""
    side: float
    """Each side, fenders included."""
    air: float
    """Highest part of the ship under a bridge or cable."""
    source: Citation

    def __post_init__(self) -> None:
        """Check that none is less than nothing. Raises OutOfRange."""
        if min(self.blocks, self.sill, self.head, self.entrance, self.side, self.air) < 0:
            raise OutOfRange("a clearance must not be less than nothing")


IN_SERVICE = Clearances(
    0.3, 0.3, 0.3, 0.3, 0.3, 0.3, Citation("Clearances in service, 0.3 m all round", "", "common practice, no source")
)
"""For docking one ship in an existing facility."""
