"""The key under a diagram: small samples with their words, in rows from the left."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.documents.drawings import pen

ROW = 4.0
"""Height of a row of the key, mm."""


@dataclass(frozen=True)
class Entry:
    """One entry: its words, a sample drawn about the origin, and how wide the sample is, mm."""

    words: str
    sample: str
    width: float


def rows(entries: Sequence[Entry], width: float) -> list[list[Entry]]:
    """Break a key into rows that fit the width."""
    made: list[list[Entry]] = [[]]
    for entry in entries:
        if made[-1] and sum(map(_room, [*made[-1], entry])) > width:
            made.append([])
        made[-1].append(entry)
    return made


def legend(entries: Sequence[Entry], left: float, top: float, width: float) -> str:
    """Draw a key from a corner; `top` is the middle of its first row."""
    marks: list[str] = []
    for index, row in enumerate(rows(entries, width)):
        x, y = left, top + index * ROW
        for entry in row:
            move = {"transform": f"translate({pen.number(x + entry.width / 2)} {pen.number(y)})"}
            marks.append(pen.element("g", move, entry.sample))
            marks.append(pen.text((x + entry.width + 1.2, y + 0.9), entry.words, pen.SMALL, kind="legend"))
            x += _room(entry)
    return "".join(marks)


def _room(entry: Entry) -> float:
    return entry.width + 1.2 + pen.text_width(entry.words, pen.SMALL) + 4.0
