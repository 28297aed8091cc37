"""Numbers of tanks on a view: inside their outline where there is room, otherwise outside on a leader."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.plane import Outline, roomiest, uncrossed

SIZE = 2.7


@dataclass(frozen=True)
class Numbered:
    """What is to be numbered: the number, the outline on paper, and outlines drawn over it."""

    shown: str
    outline: Outline
    covers: Sequence[Outline] = ()


def place_numbers(
    things: Sequence[Numbered], row: float, ends: tuple[float, float], kind: str, lines: Sequence[Outline] = ()
) -> str:
    """Write each number once; those without room stand in a row at height `row` with a line down to the thing."""
    marks: list[str] = []
    outside: list[tuple[str, Point]] = []
    taken: list[Point] = []
    for thing in things:
        width = pen.text_width(thing.shown, SIZE, True) + 0.5
        place = roomiest(thing.outline, thing.covers, width, SIZE * 0.85, taken, lines)
        if place is None:
            centre = roomiest(thing.outline, thing.covers, 0.2, 0.2)
            outside.append((thing.shown, centre or _middle(thing.outline)))
        else:
            taken.append(place)
            marks.append(pen.label(place, thing.shown, SIZE, bold=True, kind=kind))
    widths = [pen.text_width(shown, SIZE, True) + 0.6 for shown, _ in outside]
    places = uncrossed([foot for _, foot in outside], widths, row, ends)
    for (shown, foot), x in zip(outside, places, strict=True):
        near = row + (1.6 if foot[1] > row else -1.6)
        marks.append(pen.line((x, near), foot, pen.FINE) + pen.circle(foot, 0.35, 0, fill=pen.INK))
        marks.append(pen.label((x, row), shown, SIZE, bold=True, kind=kind))
    return "".join(marks)


def _middle(outline: Outline) -> Point:
    xs, ys = [x for x, _ in outline], [y for _, y in outline]
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
