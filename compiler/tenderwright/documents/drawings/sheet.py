"""The sheet of a diagram in the text, with its title strip; the cautions of diagrams and drawings; and the revision."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.documents.drawings import pen
from tenderwright.model.package import Package

TITLE_HEIGHT = 13.0
"""Height of the title strip at the foot of every sheet, mm."""
CAUTION = (
    "For tender. Not a docking plan: docking, stability and strength are for the dockmaster and a naval architect."
)
PROPOSAL = (
    "For tender. Planning figures: the plan that she is docked by, "
    "stability and strength are for the dockmaster and a naval architect."
)
"""The caution on sheets of the owner's own docking plan."""
OWNERS = (
    "Owner's papers, not for the yard: planning figures by the owner's own judgement. "
    "The yard bids its own price and programme."
)
"""The caution on sheets of what the owner foresees."""


@dataclass(frozen=True)
class Sheet:
    """The sheet of a diagram in millimetres of paper."""

    name: str
    title: str
    ship: str
    tender: str
    width: float
    height: float
    revision: str = ""
    caution: str = CAUTION
    """Written on two lines, broken after its colon."""
    unscaled: str = "Not to scale"
    """What stands in place of a scale, such as `1 day = 4.7 mm`."""

    @property
    def foot(self) -> float:
        """Where the drawing's own field ends and the title strip begins, mm from the top."""
        return self.height - TITLE_HEIGHT

    def svg(self, marks: Sequence[str], description: str) -> str:
        """Put marks on the sheet and give it as an SVG document."""
        title = f"{self.title}, {self.ship}"
        strip = self._title_strip()
        return pen.document(self.name, (self.width, self.height), title, description, [*marks, *strip])

    def _title_strip(self) -> list[str]:
        top = self.foot
        right = self.width - 2
        room = right - pen.text_width(self.unscaled, 3.2, True) - 5
        tender = f"{self.ship} · Tender {self.tender}" if self.tender else self.ship
        named = pen.shortened(tender, pen.NORMAL, room * 0.6)
        titled = pen.shortened(self.title, pen.TITLE, room - pen.text_width(named, pen.NORMAL) - 5, True)
        end = 1 + pen.text_width(titled, pen.TITLE, True) + 4
        return [
            pen.line((0, top + 0.3), (self.width, top + 0.3), pen.MEDIUM),
            pen.text((1, top + 5.4), titled, pen.TITLE, bold=True),
            pen.text((end, top + 5.4), named, pen.NORMAL),
            pen.text((right, top + 5.4), self.unscaled, 3.2, "end", bold=True),
            pen.text((right, top + 9.3), self.revision, pen.SMALL, "end", kind="revision") if self.revision else "",
            *self._caution(right, right - pen.text_width(self.revision, pen.SMALL) - 4),
        ]

    def _caution(self, room: float, beside_revision: float) -> list[str]:
        """Write the caution on two lines, the first of them beside the revision."""
        first, second = self.caution.split(": ", 1)
        lines = ((first + ":", 9.3, beside_revision), (second, 12.2, room))
        return [
            pen.text(
                (1, self.foot + down),
                pen.shortened(words, pen.SMALL, space, True),
                pen.SMALL,
                bold=True,
                kind="caution",
            )
            for words, down, space in lines
        ]


def named_ship(package: Package) -> str:
    """Name the ship and the tender."""
    ship = package.particulars.name if package.particulars else package.tender.ship if package.tender else ""
    return f"{ship} · Tender {package.tender.tender.number}" if package.tender else ship


def sheet_of(package: Package, name: str, title: str, width: float, height: float, caution: str = CAUTION) -> Sheet:
    """Make a sheet with the ship, tender number and revision of the package."""
    ship = package.particulars.name if package.particulars else package.tender.ship if package.tender else ""
    number = package.tender.tender.number if package.tender else ""
    return Sheet(name, title, ship, number, width, height, revision(package), caution)


def revision(package: Package) -> str:
    """Name the revision: the first issue with its day, or the last addendum; empty without a tender."""
    if package.tender is None:
        return ""
    last = max(package.tender.addenda, key=lambda one: one.number, default=None)
    if last is None:
        issued = package.tender.dates.issued
        return f"Revision 0, {issued.isoformat()}" if issued is not None else "Revision 0, not issued"
    return f"Revision {last.number}, {last.date.isoformat()}"
