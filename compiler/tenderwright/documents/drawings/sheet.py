"""The sheet: size in true millimetres, and a title strip with scale, scale bar, tender number, revision and caution."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.view import CUSTOMARY
from tenderwright.model.package import Package
from tenderwright.quantities.customs import system
from tenderwright.quantities.display import axis, axis_unit

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
_BAR_LENGTHS = (1.0, 2.5, 5.0, 10.0, 25.0, 50.0, 100.0, 250.0)


@dataclass(frozen=True)
class Sheet:
    """A drawing sheet in millimetres of paper."""

    name: str
    title: str
    ship: str
    tender: str
    scale: int
    """One to so many; 0 for a diagram that is not to scale."""
    width: float
    height: float
    revision: str = ""
    caution: str = CAUTION
    """Written on two lines, broken after its colon."""
    unscaled: str = "Not to scale"
    """What stands in place of the scale where there is none, such as `1 day = 4.7 mm`."""

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
        bar_left = self.width - 8 - (_bar(self.scale)[1] if self.scale else 0.0)
        scale = scale_name(self.scale) if self.scale else self.unscaled
        scale_right = min(bar_left - 4, self.width - 62) if self.scale else self.width - 2
        room = scale_right - pen.text_width(scale, 3.2, True) - 5
        tender = f"{self.ship} · Tender {self.tender}" if self.tender else self.ship
        named = pen.shortened(tender, pen.NORMAL, room * 0.6)
        titled = pen.shortened(self.title, pen.TITLE, room - pen.text_width(named, pen.NORMAL) - 5, True)
        end = 1 + pen.text_width(titled, pen.TITLE, True) + 4
        return [
            pen.line((0, top + 0.3), (self.width, top + 0.3), pen.MEDIUM),
            pen.text((1, top + 5.4), titled, pen.TITLE, bold=True),
            pen.text((end, top + 5.4), named, pen.NORMAL),
            pen.text((scale_right, top + 5.4), scale, 3.2, "end", bold=True),
            pen.text((scale_right, top + 9.3), self.revision, pen.SMALL, "end", kind="revision")
            if self.revision
            else "",
            *self._caution(bar_left - 5, scale_right - pen.text_width(self.revision, pen.SMALL) - 4),
            *(scale_bar(self.scale, self.width - 8, top + 4) if self.scale else ()),
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

    def mm(self, metres: float) -> float:
        """Give a length on the ship as a length on paper."""
        return metres * 1000.0 / self.scale


def scale_bar(scale: int, right: float, top: float) -> list[str]:
    """Draw the bar of a scale so that it ends at the right: in the unit of distances, as long as stays in 42 mm."""
    length, wide = _bar(scale)
    left, marks = right - wide, []
    for part in range(5):
        a, b = left + wide * part / 5, left + wide * (part + 1) / 5
        box = [(a, top), (b, top), (b, top + 1.4), (a, top + 1.4)]
        marks.append(pen.polygon(box, pen.FINE, fill=pen.INK if part % 2 == 0 else pen.PAPER))
    for part in range(6):
        share = part / 5
        shown = f"{length * share:g}"
        marks.append(pen.text((left + wide * share, top + 4.6), shown, pen.SMALL, "middle", kind="bar"))
    marks.append(pen.text((right + 3, top + 4.6), axis("", "distance").removeprefix(", "), pen.SMALL, kind="bar"))
    return marks


def _bar(scale: int) -> tuple[float, float]:
    """Choose the length of the scale bar, in the unit of distances and in mm."""
    unit = axis_unit("distance") * 1000.0 / scale
    length = max((length for length in _BAR_LENGTHS if length * unit <= 42), default=1.0)
    return length, length * unit


def scale_name(scale: int) -> str:
    """Name a scale, such as `Scale 1:100` or `Scale 1/8 in = 1 ft`."""
    return f"Scale {CUSTOMARY[scale]}" if system() == "us" and scale in CUSTOMARY else f"Scale 1:{scale}"


def named_ship(package: Package) -> str:
    """Name the ship and the tender."""
    ship = package.particulars.name if package.particulars else package.tender.ship if package.tender else ""
    return f"{ship} · Tender {package.tender.tender.number}" if package.tender else ship


def sheet_of(
    package: Package, name: str, title: str, scale: int, width: float, height: float, caution: str = CAUTION
) -> Sheet:
    """Make a sheet with the ship, tender number and revision of the package."""
    ship = package.particulars.name if package.particulars else package.tender.ship if package.tender else ""
    number = package.tender.tender.number if package.tender else ""
    return Sheet(name, title, ship, number, scale, width, height, revision(package), caution)


def revision(package: Package) -> str:
    """Name the revision: the first issue with its day, or the last addendum; empty without a tender."""
    if package.tender is None:
        return ""
    last = max(package.tender.addenda, key=lambda one: one.number, default=None)
    if last is None:
        issued = package.tender.dates.issued
        return f"Revision 0, {issued.isoformat()}" if issued is not None else "Revision 0, not issued"
    return f"Revision {last.number}, {last.date.isoformat()}"
