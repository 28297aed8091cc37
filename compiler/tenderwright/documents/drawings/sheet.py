"""The sheet: size in true millimetres, and a title strip with scale, scale bar, tender number, revision and caution."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.view import IN_FEET
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
        attributes: dict[str, str | float] = {
            "xmlns": "http://www.w3.org/2000/svg",
            "width": f"{pen.number(self.width)}mm",
            "height": f"{pen.number(self.height)}mm",
            "viewBox": f"0 0 {pen.number(self.width)} {pen.number(self.height)}",
            "role": "img",
            "aria-labelledby": f"{self.name}-title {self.name}-desc",
            **pen.FACE,
        }
        ground: dict[str, str | float] = {"x": 0, "y": 0, "width": self.width, "height": self.height, "fill": pen.PAPER}
        return pen.element(
            "svg",
            attributes,
            pen.element("title", {"id": f"{self.name}-title"}, pen.words(f"{self.title}, {self.ship}")),
            pen.element("desc", {"id": f"{self.name}-desc"}, pen.words(description)),
            pen.element("rect", ground),
            *(f"\n{mark}" for mark in marks if mark),
            *(f"\n{mark}" for mark in self._title_strip()),
            "\n",
        )

    def _title_strip(self) -> list[str]:
        top = self.foot
        bar = self._bar() if self.scale else 0.0
        bar_left = self.width - 8 - (self.mm(bar * axis_unit("distance")) if self.scale else 0.0)
        scale = _named(self.scale) if self.scale else self.unscaled
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
            *(self._bar_marks(bar, bar_left, top + 4) if self.scale else ()),
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

    def _bar(self) -> float:
        """Choose the length of the scale bar, in the unit of distances: the longest that stays within 42 mm."""
        unit = axis_unit("distance")
        return max((length for length in _BAR_LENGTHS if self.mm(length * unit) <= 42), default=1.0)

    def _bar_marks(self, length: float, left: float, top: float) -> list[str]:
        marks = []
        wide = self.mm(length * axis_unit("distance"))
        for part in range(5):
            a, b = left + wide * part / 5, left + wide * (part + 1) / 5
            box = [(a, top), (b, top), (b, top + 1.4), (a, top + 1.4)]
            marks.append(pen.polygon(box, pen.FINE, fill=pen.INK if part % 2 == 0 else pen.PAPER))
        for part in range(6):
            share = part / 5
            shown = f"{length * share:g}"
            marks.append(pen.text((left + wide * share, top + 4.6), shown, pen.SMALL, "middle"))
        marks.append(pen.text((left + wide + 3, top + 4.6), axis("", "distance").removeprefix(", "), pen.SMALL))
        return marks


def _named(scale: int) -> str:
    """Name a scale, such as `Scale 1:100` or `Scale 1/8 in = 1 ft`."""
    return f"Scale {IN_FEET[scale]} in = 1 ft" if system() == "us" and scale in IN_FEET else f"Scale 1:{scale}"


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
