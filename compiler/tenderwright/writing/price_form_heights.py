"""How many lines a text takes in a cell, in the face of the price form and in the one that stands in for it.

Arial is on every machine that has Excel. Where LibreOffice finds neither it nor a face of the same widths, it takes
DejaVu Sans, whose letters are wider, and makes the columns wider by the width of its figures. A row is high enough
for both. Widths are in thousandths of the size: of Arial those of Helvetica, which it shares (Adobe Core 14 font
metrics), of DejaVu Sans those of its own tables.
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

FACE = "Arial"
LINE = 1.3
"""Height of a line by the size of its letters."""
_SURE = 0.95
"""The share of a cell's width that is counted on, for letters that a screen makes wider."""
_PADDING = 4.0
"""What stands clear left and right of the text of a cell, pt."""


@dataclass(frozen=True)
class _Face:
    regular: tuple[int, ...]
    bold: tuple[int, ...]
    column: float
    """Width of a column for each of the characters that it is said to hold, in points."""

    def width(self, text: str, size: float, *, bold: bool) -> float:
        letters = self.bold if bold else self.regular
        return sum(_letter(letters, one) for one in text) * size / 1000


def _table(figures: str) -> tuple[int, ...]:
    return tuple(int(figure) for figure in figures.split())


_ARIAL = _Face(
    _table(
        "278 278 355 556 556 889 667 191 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 "
        "278 278 584 584 584 556 1015 667 667 722 722 667 611 778 722 278 500 667 556 833 722 778 667 778 722 667 "
        "611 722 667 944 667 667 611 278 278 278 469 556 333 556 556 500 556 556 278 556 556 222 222 500 222 833 "
        "556 556 556 556 333 500 278 556 500 722 500 500 500 334 260 334 584"
    ),
    _table(
        "278 333 474 556 556 889 722 238 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 "
        "333 333 584 584 584 611 975 722 722 722 722 667 611 778 722 278 556 722 611 833 722 778 667 778 722 667 "
        "611 722 667 944 667 667 611 333 278 333 584 556 333 556 611 556 611 556 333 611 611 278 278 556 278 889 "
        "611 611 611 611 389 556 333 611 556 778 556 556 500 389 280 389 584"
    ),
    5.25,
)
_DEJAVU = _Face(
    _table(
        "318 401 460 838 636 950 780 275 390 390 500 838 318 361 318 337 636 636 636 636 636 636 636 636 636 636 "
        "337 337 838 838 838 531 1000 684 686 698 770 632 575 775 752 295 295 656 557 863 748 787 603 787 695 635 "
        "611 732 684 989 685 611 685 390 337 390 838 500 500 613 635 550 635 615 352 635 634 278 278 579 278 974 "
        "634 612 635 635 411 521 392 634 592 818 592 592 525 636 337 636 838"
    ),
    _table(
        "348 456 521 838 696 1002 872 306 457 457 523 838 380 415 380 365 696 696 696 696 696 696 696 696 696 696 "
        "400 400 838 838 838 580 1000 774 762 734 830 683 683 821 837 372 372 775 637 995 837 850 733 850 770 720 "
        "682 812 774 1103 771 724 725 457 365 457 838 500 500 675 716 593 716 678 435 716 712 343 343 665 343 "
        "1042 712 687 716 716 493 595 478 712 652 924 645 652 582 712 365 712 838"
    ),
    6.35,
)
_FACES = (_ARIAL, _DEJAVU)
_FIRST, _WIDEST = ord(" "), 1000


def _letter(letters: tuple[int, ...], letter: str) -> int:
    """Give the width of a letter: of one with an accent that of the letter below it, of one unknown an em."""
    base = unicodedata.normalize("NFKD", letter)[0]
    place = ord(base) - _FIRST
    return letters[place] if 0 <= place < len(letters) else _WIDEST


@lru_cache(maxsize=4096)
def lines_of(text: str, characters: float, size: float, *, bold: bool = False, indent: int = 0) -> int:
    """Count the lines of a text in a cell as wide as so many characters: the most of any face that may show it."""
    return max(_lines(face, text, characters, size, bold=bold, indent=indent) for face in _FACES)


def _lines(face: _Face, text: str, characters: float, size: float, *, bold: bool, indent: int) -> int:
    room = (face.column * characters - _PADDING) * _SURE - indent * 9.0
    return sum(_paragraph(face, words, room, size, bold=bold) for words in text.split("\n"))


def _paragraph(face: _Face, text: str, room: float, size: float, *, bold: bool) -> int:
    """Break a paragraph at its blanks as late as may be, and a word that is too long by itself where it must be."""
    starts = [0, *(place + 1 for place, letter in enumerate(text) if letter == " "), len(text)]
    lines, used = 1, 0.0
    for start, end in pairwise(starts):
        word = face.width(text[start:end].rstrip(), size, bold=bold)
        if used and used + word > room:
            lines, used = lines + 1, 0.0
        if word > room:
            lines += int(word // room)
            word %= room
        used += word + face.width(" " * (end - start - len(text[start:end].rstrip())), size, bold=bold)
    return lines
