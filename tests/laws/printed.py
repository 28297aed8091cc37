"""Printed pages as they stand on paper: every word with its box, taken from a PDF by poppler."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

_SPACE = "{http://www.w3.org/1999/xhtml}"
FOOT = 21.0 * 72 / 25.4
"""The margin at the foot of a page, which holds its number, pt."""
HEAD = 21.0 * 72 / 25.4
"""The margin at the head of a page, pt."""


@dataclass(frozen=True)
class Word:
    """A word and its box, in points from the top left corner."""

    text: str
    left: float
    top: float
    right: float
    bottom: float

    def overlap(self, other: Word) -> float:
        """Give the share of the smaller box that both cover."""
        wide = min(self.right, other.right) - max(self.left, other.left)
        high = min(self.bottom, other.bottom) - max(self.top, other.top)
        if wide <= 0 or high <= 0:
            return 0.0
        return wide * high / min(self.area, other.area)

    @property
    def area(self) -> float:
        """Give the area of the box."""
        return max((self.right - self.left) * (self.bottom - self.top), 1e-6)


@dataclass(frozen=True)
class Line:
    """Words on one line of a block."""

    words: tuple[Word, ...]

    @property
    def text(self) -> str:
        """Give the words with spaces between."""
        return " ".join(word.text for word in self.words)


@dataclass(frozen=True)
class Page:
    """A page of a PDF."""

    number: int
    width: float
    height: float
    blocks: tuple[tuple[Line, ...], ...]

    @property
    def landscape(self) -> bool:
        """Tell whether it lies on its side, as sheets of drawings do."""
        return self.width > self.height

    def words(self) -> Iterator[Word]:
        """Give every word."""
        for block in self.blocks:
            for line in block:
                yield from line.words

    def standing(self) -> list[Word]:
        """Give the words between head and foot."""
        return [word for word in self.words() if word.top > HEAD and word.bottom < self.height - FOOT]

    @property
    def folio(self) -> tuple[str, int, int] | None:
        """Give the part that the foot names, the page within it and how many it has."""
        foot = sorted((word for word in self.words() if word.bottom >= self.height - FOOT), key=lambda word: word.left)
        found = re.search(r"^(.*?) ?· (\d+) of (\d+)", " ".join(word.text for word in foot))
        return (found[1], int(found[2]), int(found[3])) if found else None

    @property
    def fill(self) -> float:
        """Give how far down the page its words reach, as a share of what lies between head and foot."""
        reached = max((word.bottom for word in self.standing()), default=HEAD)
        return (reached - HEAD) / (self.height - HEAD - FOOT)


def printed(pdf: Path) -> list[Page]:
    """Read the pages of a PDF."""
    made = subprocess.run(["pdftotext", "-bbox-layout", str(pdf), "-"], check=True, capture_output=True).stdout
    tree = ElementTree.fromstring(re.sub(rb"[\x00-\x08\x0b\x0c\x0e-\x1f]", b"", made))
    return [
        Page(
            number,
            float(page.attrib["width"]),
            float(page.attrib["height"]),
            tuple(tuple(map(_line, block.iter(f"{_SPACE}line"))) for block in page.iter(f"{_SPACE}block")),
        )
        for number, page in enumerate(tree.iter(f"{_SPACE}page"), start=1)
    ]


def _line(element: ElementTree.Element) -> Line:
    return Line(tuple(_word(word) for word in element.iter(f"{_SPACE}word")))


def _word(element: ElementTree.Element) -> Word:
    left, top, right, bottom = (float(element.attrib[side]) for side in ("xMin", "yMin", "xMax", "yMax"))
    return Word(element.text or "", left, top, right, bottom)


def overprinted(page: Page) -> list[str]:
    """Name the pairs of words that stand on each other."""
    found = []
    words = sorted(page.words(), key=lambda word: word.top)
    for index, word in enumerate(words):
        for other in words[index + 1 :]:
            if other.top >= word.bottom:
                break
            if word.overlap(other) > 0.35:
                found.append(f"page {page.number}: {word.text} on {other.text}")
    return found


def beyond(page: Page) -> list[str]:
    """Name the words that reach past the edge of the page."""
    return [
        f"page {page.number}: {word.text}"
        for word in page.words()
        if word.left < 0 or word.top < 0 or word.right > page.width or word.bottom > page.height
    ]


def broken_early(page: Page) -> list[str]:
    """Name the lines of one word within a paragraph whose next line would have had room on them."""
    if page.landscape:
        return []  # a sheet of drawings has labels, not paragraphs
    found = []
    for block in page.blocks:
        right = max(word.right for line in block for word in line.words)
        for line, after in pairwise(block):
            word, following = line.words[0], after.words[0]
            if len(line.words) > 1 or len(after.words) < 2 or not following.text[0].islower():
                continue
            ended = word.text[-1] in ".:;?!"
            same_type = abs((word.bottom - word.top) - (following.bottom - following.top)) < 0.2
            same_edge = abs(word.left - following.left) < 1
            if not ended and same_type and same_edge and word.right + (following.right - following.left) + 4 < right:
                found.append(f"page {page.number}: {line.text} | {after.text}")
    return found


def hardly_filled(pages: list[Page], least: float) -> list[str]:
    """Name the last pages of a part of several pages that hold next to nothing."""
    return [
        f"page {page.number}: {page.folio[0]}, {page.fill:.2f}"
        for page in pages
        if page.folio and page.folio[1] == page.folio[2] > 1 and page.fill < least and not page.landscape
    ]
