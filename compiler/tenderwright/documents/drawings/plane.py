"""Plane geometry of the paper: clipping, crossing lines, and finding room inside an outline."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from tenderwright.documents.drawings.pen import Point, Segment

Outline = Sequence[Point]


def below(outline: Outline, height: float, slope: float = 0.0) -> list[Point]:
    """Cut an outline to what lies at or below the line y = height - slope * x."""
    return _kept(outline, [height - slope * x - y for x, y in outline])


def above(outline: Outline, height: float) -> list[Point]:
    """Cut an outline to what lies at or above a height."""
    return _kept(outline, [y - height for _, y in outline])


def _kept(outline: Outline, inside: Sequence[float]) -> list[Point]:
    """Clip by a half-plane, given how far inside it each corner is (Sutherland and Hodgman, one edge)."""
    kept: list[Point] = []
    for index, (point, depth) in enumerate(zip(outline, inside, strict=True)):
        before, before_depth = outline[index - 1], inside[index - 1]
        if (depth >= 0) != (before_depth >= 0):
            share = before_depth / (before_depth - depth)
            kept.append((before[0] + share * (point[0] - before[0]), before[1] + share * (point[1] - before[1])))
        if depth >= 0:
            kept.append(point)
    return kept


def rulings(outlines: Sequence[Outline], angle: float, spacing: float, phase: float = 0.0) -> list[Segment]:
    """Rule parallel lines over the inside of outlines (even-odd), at an angle in degrees, a spacing and a phase in mm.

    The lines keep step over the whole sheet, so that neighbouring areas of one hatching run on.
    """
    cos, sin = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    turned = [[(x * cos + y * sin, y * cos - x * sin) for x, y in outline] for outline in outlines]
    heights = [v for outline in turned for _, v in outline]
    if not heights:
        return []
    found: list[Segment] = []
    for step in range(math.ceil((min(heights) - phase) / spacing), math.floor((max(heights) - phase) / spacing) + 1):
        level = step * spacing + phase
        crossings = sorted(u for outline in turned for u in _crossings(outline, level))
        for low, high in zip(crossings[::2], crossings[1::2], strict=False):
            if high - low > 0.05:
                ends = [(u * cos - level * sin, u * sin + level * cos) for u in (low, high)]
                found.append((ends[0], ends[1]))
    return found


def _crossings(outline: Outline, level: float) -> list[float]:
    crossings = []
    for (u0, v0), (u1, v1) in pairwise([*outline, outline[0]]):
        if (v0 > level) != (v1 > level):
            crossings.append(u0 + (level - v0) / (v1 - v0) * (u1 - u0))
    return crossings


def holds(outline: Outline, point: Point) -> bool:
    """Tell whether a point lies inside an outline."""
    return sum(u > point[0] for u in _crossings(outline, point[1])) % 2 == 1


def roomiest(
    outline: Outline,
    covers: Sequence[Outline],
    width: float,
    height: float,
    taken: Sequence[Point] = (),
    lines: Sequence[Outline] = (),
) -> Point | None:
    """Find the place for a box of text inside an outline, near its middle and clear of its edges.

    The box is clear of outlines that cover it and of boxes of the same size at places taken, and away from other
    lines where it can be; None for no room.
    """
    xs, ys = [x for x, _ in outline], [y for _, y in outline]
    middle = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    best: tuple[float, Point] | None = None
    for i in range(1, 40):
        for j in range(1, 20):
            point = (min(xs) + (max(xs) - min(xs)) * i / 40, min(ys) + (max(ys) - min(ys)) * j / 20)
            if not _free(point, outline, covers, width, height, taken):
                continue
            clear = min(_distance(point, each) for each in (outline, *covers, *lines))
            worth = min(clear, 2 * height) - 0.03 * math.dist(point, middle)
            if best is None or worth > best[0] + 1e-9:
                best = (worth, point)
    return best[1] if best else None


def _free(
    point: Point, outline: Outline, covers: Sequence[Outline], width: float, height: float, taken: Sequence[Point]
) -> bool:
    x, y = point
    if any(abs(x - tx) < width + 0.8 and abs(y - ty) < height + 0.5 for tx, ty in taken):
        return False
    corners = [(x + sx * width / 2, y + sy * height / 2) for sx in (-1, 0, 1) for sy in (-1, 0, 1)]
    return all(holds(outline, c) and not any(holds(cover, c) for cover in covers) for c in corners)


def _distance(point: Point, outline: Outline) -> float:
    least = math.inf
    for (x0, y0), (x1, y1) in pairwise([*outline, outline[0]]):
        dx, dy = x1 - x0, y1 - y0
        length = dx * dx + dy * dy
        share = min(1.0, max(0.0, ((point[0] - x0) * dx + (point[1] - y0) * dy) / length)) if length else 0.0
        least = min(least, math.hypot(point[0] - x0 - share * dx, point[1] - y0 - share * dy))
    return least


def spread(wanted: Sequence[float], widths: Sequence[float], low: float, high: float, gap: float = 0.8) -> list[float]:
    """Move the middles of labels along a row just so far that they do not overlap, in order, between two ends.

    Where the row is too short for all of them they are packed from its beginning, and run past its end.
    """
    order = sorted(range(len(wanted)), key=lambda i: wanted[i])
    places = [0.0] * len(wanted)
    edge = math.inf
    for i in reversed(order):
        places[i] = min(wanted[i], min(edge, high) - widths[i] / 2)
        edge = places[i] - widths[i] / 2 - gap
    edge = low
    for i in order:
        places[i] = max(places[i], edge + widths[i] / 2)
        edge = places[i] + widths[i] / 2 + gap
    return places
