"""What stands in the margins of each page: running heads, marks, numbers of pages, caution and stamp.

They are painted as artifacts when the parts are joined, so that a part is the same whoever reads it, and stays as it is
when the commit or the page on which it starts changes.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from tenderwright.writing.faces import FACES, Face
from tenderwright.writing.typesetting.joined_faces import JoinedFace, letters
from tenderwright.writing.typesetting.sheets import Sheet

_POINT = 72 / 25.4
_SANS = {face.weight: face for face in FACES if face.family == "Tender Sans" and face.style == "normal"}
FURNITURE_FACES: tuple[Face, ...] = tuple(_SANS[weight] for weight in (400, 600, 700))
_GREY, _BLACK = "0.2", "0.067"
_ABOVE, _BELOW = 3.5, 3.4
"""Room between the text of a page and what stands above and below it, mm."""
_LEADING = 1.35


@dataclass(frozen=True)
class PageWords:
    """What stands around one page."""

    running: str
    mark: str
    part: str
    folio: str
    page: str
    """The page of the file."""
    caution: str
    stamp: str

    @property
    def text(self) -> str:
        """Give all of it, to look for characters that no face holds."""
        return "".join((self.running, self.mark, self.part, self.folio, self.page, self.caution, self.stamp))


@dataclass(frozen=True)
class _Style:
    weight: int
    size: float
    colour: str = _GREY
    spacing: float = 0.0
    """Room after each letter, in type sizes."""

    @property
    def face(self) -> Face:
        return _SANS[self.weight]

    def width(self, text: str) -> float:
        """Give the width of a text, points."""
        return _width(self, text)

    def lines(self, text: str, room: float) -> list[str]:
        """Break a text at its spaces into lines that fit; a word longer than a line is broken where it must be."""
        return list(_lines(self, text, room))


@lru_cache(maxsize=1024)
def _width(style: _Style, text: str) -> float:
    """Give the width of a text, points; most of what stands around a page stands around the next one, too."""
    known = letters(style.face)
    return sum(known.get(ord(letter), (0, 600.0))[1] / 1000 + style.spacing for letter in text) * style.size


@lru_cache(maxsize=256)
def _lines(style: _Style, text: str, room: float) -> tuple[str, ...]:
    lines, line = [], ""
    for word in text.split():
        longer = f"{line} {word}" if line else word
        if style.width(longer) <= room:
            line = longer
            continue
        lines += [line] if line else []
        while style.width(word) > room and len(word) > 1:
            fits = next(n for n in range(len(word) - 1, 0, -1) if n == 1 or style.width(word[:n]) <= room)
            lines.append(word[:fits])
            word = word[fits:]
        line = word
    return (*lines, line) if line else tuple(lines)


_RUNNING = _Style(400, 7.6)
_MARK = _Style(700, 7.6, _BLACK, 0.14)
_FOLIO = _Style(600, 8.4, _BLACK)
_CAUTION = _Style(400, 6.7)


class Furniture:
    """Paints what stands in the margins, with the faces of a joined PDF."""

    def __init__(self, faces: dict[Face, JoinedFace]) -> None:
        self._faces = faces

    def paint(self, sheet: Sheet, words: PageWords) -> bytes:
        """Give the content stream of one page's margins."""
        left, right = sheet.left * _POINT, (sheet.width - sheet.right) * _POINT
        wide, height = right - left, sheet.height * _POINT
        head = height - (sheet.top - _ABOVE) * _POINT
        foot = (sheet.bottom - _BELOW) * _POINT
        mark = _MARK.width(words.mark)
        sides = (wide - mark) / 2 - 6 if mark else wide / 2
        above = [
            *self._rising(_RUNNING, _RUNNING.lines(words.running, sides * (1.1 if not mark else 1)), head, left, 0.0),
            *self._rising(_MARK, [words.mark] if words.mark else [], head, left + wide / 2, 0.5),
            *self._rising(_RUNNING, _RUNNING.lines(words.part, sides * (0.8 if not mark else 1)), head, right, 1.0),
        ]
        numbers, stamp = max(_FOLIO.width(words.folio) + 8, wide * 0.2), wide * 0.22
        caution = _CAUTION.lines(words.caution, wide - numbers - stamp - 8)
        below = [
            *self._falling(_FOLIO, [words.folio], foot, left, 0.0),
            *self._falling(_CAUTION, caution, foot, left + numbers, 0.0),
            *self._falling(_FOLIO, [words.page], foot, right, 1.0),
            *self._falling(_RUNNING, _RUNNING.lines(words.stamp, stamp), foot - _FOLIO.size * _LEADING, right, 1.0),
        ]
        return b"\n".join((*_artifact(b"Header", above), *_artifact(b"Footer", below)))

    def _rising(self, style: _Style, lines: list[str], base: float, x: float, align: float) -> list[bytes]:
        """Set lines of which the last ends at a height."""
        step = style.size * _LEADING
        last = base + 0.25 * style.size
        count = len(lines)
        return [self._line(style, text, last + step * (count - 1 - n), x, align) for n, text in enumerate(lines)]

    def _falling(self, style: _Style, lines: list[str], base: float, x: float, align: float) -> list[bytes]:
        """Set lines of which the first begins at a height."""
        step = style.size * _LEADING
        return [self._line(style, text, base - style.size - step * n, x, align) for n, text in enumerate(lines)]

    def _line(self, style: _Style, text: str, y: float, x: float, align: float) -> bytes:
        shown = self._faces[style.face].glyphs(text)
        start = x - align * style.width(text)
        return (
            f"BT {style.colour} g /{resource(style.face)} {style.size:g} Tf {style.spacing * style.size:.3f} Tc "
            f"1 0 0 1 {start:.3f} {y:.3f} Tm ".encode()
            + shown
            + b" Tj ET"
        )


def resource(face: Face) -> str:
    """Give the name by which margins ask for a face."""
    return f"Margin{face.weight}"


def _artifact(subtype: bytes, lines: list[bytes]) -> list[bytes]:
    """Mark lines as no part of the text (ISO 32000-1, 14.8.2.2)."""
    if not lines:
        return []
    return [b"/Artifact <</Type /Pagination /Subtype /" + subtype + b">> BDC q", *lines, b"Q EMC"]
