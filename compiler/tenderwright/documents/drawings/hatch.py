"""Hatchings: ruled lines that tell liquids and coatings apart without colour."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.plane import Outline, rulings


@dataclass(frozen=True)
class Hatch:
    """One hatching: angles in degrees, spacing in mm, weight, dash, and a colour that only adds."""

    angles: tuple[float, ...]
    spacing: float
    weight: float = pen.FINE
    dash: str = ""
    colour: str = pen.INK

    def over(self, outlines: Sequence[Outline]) -> str:
        """Draw the hatching over outlines on paper."""
        drawn = [one for one in outlines if len(one) > 2]
        marks = []
        for angle in self.angles:
            if not self.dash:
                marks.append(pen.strokes(rulings(drawn, angle, self.spacing), self.weight, "", self.colour))
                continue
            for phase in (0.0, self.spacing):
                ruled = rulings(drawn, angle, 2 * self.spacing, phase)
                marks.append(pen.strokes(ruled, self.weight, self.dash, self.colour, 1.5 * phase))
        return "".join(marks)

    def swatch(self, left: float, middle: float, width: float = 7.0, height: float = 2.6) -> str:
        """Draw a small sample for a legend."""
        top, bottom = middle - height / 2, middle + height / 2
        box = [(left, top), (left + width, top), (left + width, bottom), (left, bottom)]
        return pen.polygon(box, 0, fill=pen.PAPER) + self.over([box]) + pen.polygon(box)


LIQUIDS = {
    "sea water": Hatch((0,), 0.9, pen.FINE, "2.2 0.8", pen.BLUE),
    "fresh water": Hatch((0,), 1.3, pen.FINE, "", pen.BLUE),
    "diesel oil": Hatch((45,), 1.0, pen.FINE, "", pen.RED),
    "heavy oil": Hatch((45, 135), 1.1, pen.FINE, "", pen.RED),
    "lubricating oil": Hatch((135,), 1.2, pen.FINE, "", pen.OCHRE),
    "oily water": Hatch((90,), 1.0, pen.FINE, "", pen.PURPLE),
    "none": Hatch((), 1.0),
}
"""By liquid; a dry tank is left white."""
OTHER_LIQUID = Hatch((20,), 1.2, pen.FINE, "1 0.6")

BANDS = (
    Hatch((45,), 1.7, pen.FINE, "", pen.RED),
    Hatch((45, 135), 1.5, pen.FINE, "", pen.INK),
    Hatch((90,), 2.0, pen.FINE, "", pen.BLUE),
    Hatch((135,), 1.2, pen.FINE, "1.6 0.7", pen.GREEN),
    Hatch((0,), 1.5, pen.FINE, "1.2 0.8", pen.OCHRE),
    Hatch((0, 90), 1.8, pen.FINE, "", pen.PURPLE),
)
"""For bands of the hull, one after another from the keel up."""
STATED = Hatch((135,), 1.0, pen.FINE, "", pen.OCHRE)
"""For zones whose area is stated, such as a rudder."""


def liquid_hatch(liquid: str) -> Hatch:
    """Give the hatching of a liquid."""
    return LIQUIDS.get(liquid, OTHER_LIQUID)
