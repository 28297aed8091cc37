"""The framed sheet: a drawing fills its page to the frame, with a title block at the lower right."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.scale_bar import scale_bar, scale_name
from tenderwright.documents.drawings.sheet import CAUTION, named_ship, revision
from tenderwright.documents.drawings.view import Room
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package

ROOMS = {"A4": Room(269.0, 160.0), "Letter": Room(251.0, 166.0)}
"""The frame on a page of drawings, mm: the style of such a page leaves as much, beside its head and its caption."""
MARGIN = 3.0
"""Space between the frame and what is drawn, mm."""
BLOCK = Room(90.0, 47.0)
"""The title block, mm."""
_SHIP, _SCALE, _CELLS, _DATA, _CAUTION = 9.4, 14.0, 22.2, 29.9, 36.3
"""Where the rows of the title block begin under the title, mm from its top."""
_SAFE = 0.82
"""Share of the block that words are set in, so that a browser with none of our faces keeps them in it as well."""
_UNNUMBERED = "Sheet"


@dataclass(frozen=True)
class Cell:
    """A part of a sheet that holds one of several alike, mm."""

    left: float
    top: float
    width: float
    height: float


def frame_of(package: Package) -> Room:
    """Give the frame on the pages of a package, mm."""
    return ROOMS["Letter" if package.tender is not None and package.tender.page_size == "Letter" else "A4"]


@dataclass(frozen=True)
class Framed:
    """A framed sheet in millimetres of paper."""

    name: str
    title: str
    ship: str
    frame: Room
    revision: str = ""
    caution: str = CAUTION
    scale: int = 0
    """One to so many; 0 for a diagram that is not to scale."""
    data: str = ""
    """What it is drawn from, such as the table of offsets."""

    @property
    def right(self) -> float:
        """Where the drawing ends at the right, mm."""
        return self.frame.width - MARGIN

    @property
    def foot(self) -> float:
        """Where the drawing ends at its foot, beside the title block, mm."""
        return self.frame.height - MARGIN

    @property
    def beside(self) -> float:
        """Where what stands beside the title block ends at the right, mm."""
        return self.frame.width - BLOCK.width - MARGIN

    @property
    def over(self) -> float:
        """Where what stands over the title block ends, mm."""
        return self.frame.height - BLOCK.height - MARGIN

    def at(self, scale: int) -> Framed:
        """Give the sheet at a scale."""
        return replace(self, scale=scale)

    def mm(self, metres: float) -> float:
        """Give a length on the ship as a length on paper."""
        return metres * 1000.0 / self.scale

    def cells(self, wide: float, high: float, foot: float = 0.0) -> list[Cell]:
        """Divide the sheet, less so much at its foot, into cells no smaller than asked, clear of the title block."""
        end = self.foot - foot
        rows = int((end - MARGIN) / high)
        found = []
        for row in range(rows):
            top, each = MARGIN + row * (end - MARGIN) / rows, (end - MARGIN) / rows
            across = (self.right if top + each <= self.over else self.beside) - MARGIN
            count = int(across / wide)
            found += [Cell(MARGIN + at * across / count, top, across / count, each) for at in range(count)]
        return found

    def figure(self, marks: Sequence[str], caption: str, alternative: str) -> Figure:
        """Put marks on the sheet and give it as a figure."""
        wide, high = self.frame.width, self.frame.height
        edge: dict[str, str | float] = {"x": 0.25, "y": 0.25, "width": wide - 0.5, "height": high - 0.5}
        frame = pen.element("rect", {**edge, "fill": "none", "stroke": pen.INK, "stroke-width": pen.HEAVY})
        sheet = [frame, *marks, *self._block()]
        svg = pen.document(self.name, (wide, high), f"{self.title}, {self.ship}", alternative, sheet)
        return Figure(self.name, svg, caption, alternative, title=self.title)

    def _block(self) -> list[str]:
        """Draw the title block."""
        left, top = self.frame.width - BLOCK.width, self.frame.height - BLOCK.height
        right, inner = self.frame.width - 0.25, BLOCK.width - 4.0
        x = left + 2.0
        titled = pen.wrapped(self.title, 3.6, inner * _SAFE, 2, True)
        first = top + (6.3 if len(titled) == 1 else 4.2)
        rules = [((left, top + row), (right, top + row)) for row in (_SHIP, _SCALE, _CELLS, _DATA, _CAUTION)]
        cells = [left + share for share in (0.0, 34.0, 62.0)]
        ship = pen.shortened(self.ship, pen.NORMAL, inner - 24.0)
        corner = [(left, self.frame.height - 0.25), (left, top), (right, top)]
        return [
            pen.curve(corner, pen.HEAVY),
            pen.strokes([*rules, *(((at, top + _CELLS), (at, top + _DATA)) for at in cells[1:])]),
            *(pen.text((x, first + 4.1 * row), line, 3.6, bold=True, kind="title") for row, line in enumerate(titled)),
            pen.text((x, top + _SHIP + 3.5), ship, pen.NORMAL, kind="ship"),
            pen.text((right - 1.8, top + _SHIP + 3.5), _UNNUMBERED, pen.NORMAL, "end", bold=True, kind="sheet"),
            *self._scale(x, top + _SCALE, right - 10.0),
            *_cell(cells[0], top + _CELLS, "Revision", self.revision.removeprefix("Revision "), "revision"),
            *_cell(cells[1], top + _CELLS, "Drawn from", "commit at foot", "block-word"),
            *_cell(cells[2], top + _CELLS, "Checked, date"),
            *_lines(x, top + _DATA, f"Data: {self.data}", inner * _SAFE, 2, "data"),
            *_lines(x, top + _CAUTION, self.caution, inner * _SAFE, 3, "caution"),
        ]

    def _scale(self, left: float, top: float, right: float) -> list[str]:
        """Write the scale with its bar, or that there is none."""
        if not self.scale:
            return [pen.text((left, top + 5.2), "Not to scale", 3.2, bold=True, kind="scale")]
        return [
            pen.text((left, top + 5.2), scale_name(self.scale), 3.2, bold=True, kind="scale"),
            *scale_bar(self.scale, right, top + 1.9),
        ]


def _cell(left: float, top: float, name: str, words: str = "", kind: str = "") -> list[str]:
    return [
        pen.text((left + 2.0, top + 3.1), name, colour=pen.FAINT, kind="block-word"),
        pen.text((left + 2.0, top + 6.6), words, kind=kind) if words else "",
    ]


def _lines(left: float, top: float, words: str, room: float, rows: int, kind: str) -> list[str]:
    bold = kind == "caution"
    return [
        pen.text((left, top + 2.9 + 2.95 * row), line, bold=bold, kind=kind)
        for row, line in enumerate(pen.wrapped(words, pen.SMALL, room, rows, bold))
    ]


def framed(package: Package, name: str, title: str, data: str, caution: str = CAUTION) -> Framed:
    """Make a sheet of the package's page size with its ship, tender number and revision."""
    return Framed(name, title, named_ship(package), frame_of(package), revision(package), caution, 0, data)


def numbered(figures: Sequence[Figure]) -> list[Figure]:
    """Number framed sheets in their order."""
    return [
        replace(one, svg=one.svg.replace(f">{_UNNUMBERED}<", f">{_UNNUMBERED} {number} of {len(figures)}<"))
        for number, one in enumerate(figures, 1)
    ]
