"""Clearances that a ship needs in a facility: inputs, with sets of figures to start from and their sources."""

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

NEW_GRAVING_DOCK = Clearances(
    0.6,
    0.6,
    1.5,
    4.6,
    3.0,
    0.3,
    Citation("UFC 4-213-10, 15 August 2002", "par. 3-2.1, least of each range; air assumed"),
)
"""Allowances for the design of a new dock: keel over blocks 0.6 m, head 1.5 to 3.0, outboard end 4.6 to 12.2, each side
3.0 to 4.6; the sill is taken as the blocks."""

FLOATING_DOCK = Clearances(
    0.61,
    0.61,
    0.3,
    0.3,
    1.52,
    0.3,
    Citation(
        "A. Amirikian, Analysis and Design of Floating Drydocks, SNAME Transactions, 1957", "ends and air assumed"
    ),
)
"""Sides 5 ft and keel over blocks 2 ft."""
