"""Published figures of tightness tests, each with its source."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.method import Citation


class TestFigure(Struct, frozen=True):
    """A figure of a test and who gives it: a pressure in Pa, or a head in m; None where it is not of that kind."""

    __test__ = False

    figure: str
    source: Citation
    pressure: float | None = None
    head: float | None = None


HOSE = TestFigure(
    "at the nozzle, bore 12 mm or more, at most 1.5 m away and square to the joint",
    Citation("Bureau Veritas NR600", "Ch. 6, Sec. 3, 1.6.3"),
    pressure=2.0e5,
)
TANK_AIR = TestFigure(
    "above the atmosphere, with indicating solution on the joints",
    Citation("IACS UR S14", "leak test by air", standing="from memory"),
    pressure=0.15e5,
)
RIVETED_AIR = TestFigure(
    "greatest, above the atmosphere, with indicating solution",
    Citation("Lloyd's Register, Inland Waterways Ships", "Part 3, Ch. 1, 7, leak air 0.07 kgf/cm²"),
    pressure=0.007e6,
)
RIVETED_HEAD = TestFigure(
    "above the tank top, or to the overflow",
    Citation("Lloyd's Register, Inland Waterways Ships", "Part 3, Ch. 1, 7, hydrostatic"),
    head=1.0,
)
TANK_HEAD = TestFigure(
    "above the tank top, or to the top of the air pipe, whichever is greater",
    Citation("IACS UR S14", "structural test of tanks", standing="from memory"),
    head=2.4,
)
VACUUM_BOX = TestFigure(
    "of vacuum in the box, 0.20 to 0.26 bar",
    Citation("IACS UR S14", "vacuum test", standing="from memory"),
    pressure=0.20e5,
)
FILLET_AIR = TestFigure(
    "put in at one end of the fillet and proved at the other",
    Citation("IACS UR S14", "compressed air fillet weld test", standing="from memory"),
    pressure=0.15e5,
)
RUDDER_AIR = TestFigure(
    "for a rudder of two plates; the means used must be unable to pass 0.15 bar",
    Citation("Lloyd's Register, Inland Waterways Ships", "Part 3, Ch. 1, 7, double-plate rudder"),
    pressure=0.010e6,
)
RUDDER_AIR_GREATEST = 0.015e6
"""What the air of a double-plate rudder must be unable to pass, Pa; source as `RUDDER_AIR`."""

AFTER_REPAIR = Citation("LR Naval Survey Guidance", "Ch. 14, 2")
