"""Plane geometry of the paper: clipping, crossing lines, and finding room inside an outline."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tenderwright.documents.drawings.pen import Point, Segment

Outline = Sequence[Point]
Points = NDArray[np.float64]


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
    crossed: dict[int, list[float]] = {}
    for outline in turned:
        for (u0, v0), (u1, v1) in pairwise([*outline, outline[0]]):
            low, high = ((v - phase) / spacing for v in (min(v0, v1), max(v0, v1)))
            for step in range(math.floor(low), math.ceil(high) + 1):
                level = step * spacing + phase
                if (v0 > level) != (v1 > level):
                    crossed.setdefault(step, []).append(u0 + (level - v0) / (v1 - v0) * (u1 - u0))
    found: list[Segment] = []
    for step in range(math.ceil((min(heights) - phase) / spacing), math.floor((max(heights) - phase) / spacing) + 1):
        level = step * spacing + phase
        crossings = sorted(crossed.get(step, ()))
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
    corners = np.asarray(outline, dtype=np.float64)
    low, high = corners.min(axis=0), corners.max(axis=0)
    covers = [cover for cover in covers if _may_meet(cover, low, high)]
    across, up = np.meshgrid(np.arange(1, 40) / 40, np.arange(1, 20) / 20, indexing="ij")
    points = low + (high - low) * np.stack([across.ravel(), up.ravel()], axis=-1)
    points = points[_free(points, outline, covers, width, height, taken)]
    if not points.size:
        return None
    clear = np.min([_distances(points, each, 2 * height) for each in (outline, *covers, *lines)], axis=0)
    worth = np.minimum(clear, 2 * height) - 0.03 * np.hypot(*(points - (low + high) / 2).T)
    x, y = points[int(np.argmax(worth >= worth.max() - 1e-9))].tolist()
    return x, y


def _may_meet(cover: Outline, low: Points, high: Points) -> bool:
    """Tell whether an outline's box meets another; where not, it neither covers it nor is nearer than its edge."""
    ends = np.asarray(cover, dtype=np.float64)
    return bool(np.all(ends.min(axis=0) <= high) and np.all(ends.max(axis=0) >= low))


def _free(
    points: Points, outline: Outline, covers: Sequence[Outline], width: float, height: float, taken: Sequence[Point]
) -> NDArray[np.bool_]:
    """Tell at which points a box of text is inside the outline, under no cover, and clear of places taken."""
    free = np.ones(len(points), dtype=np.bool_)
    for place in taken:
        apart = np.abs(points - np.asarray(place))
        free &= (apart[:, 0] >= width + 0.8) | (apart[:, 1] >= height + 0.5)
    box = np.array([(sx * width / 2, sy * height / 2) for sx in (-1, 0, 1) for sy in (-1, 0, 1)])
    for wanted, shape in ((True, outline), *((False, cover) for cover in covers)):
        corners = (points[free][:, None] + box).reshape(-1, 2)
        free[free] = (_inside(corners, shape) == wanted).reshape(-1, len(box)).all(axis=1)
    return free


def _edges(outline: Outline) -> tuple[Points, Points]:
    ends = np.asarray(outline, dtype=np.float64)
    return ends, np.roll(ends, -1, axis=0)


def _inside(points: Points, outline: Outline) -> NDArray[np.bool_]:
    """Tell which points lie inside an outline (even-odd), as `holds` does for one."""
    a, b = _edges(outline)
    x, y = points[:, :1], points[:, 1:]
    crosses = (a[:, 1] > y) != (b[:, 1] > y)
    rise = np.where(a[:, 1] == b[:, 1], 1.0, b[:, 1] - a[:, 1])
    at = a[:, 0] + (y - a[:, 1]) / rise * (b[:, 0] - a[:, 0])
    inside: NDArray[np.bool_] = np.sum(crosses & (at > x), axis=1) % 2 == 1
    return inside


def _distances(points: Points, outline: Outline, reach: float) -> Points:
    """Give the distance of each point from the nearest edge of an outline, or `reach` where no edge is so near."""
    a, b = _edges(outline)
    near = np.all(np.minimum(a, b) <= points.max(axis=0) + reach, axis=1)
    near &= np.all(np.maximum(a, b) >= points.min(axis=0) - reach, axis=1)
    if not near.any():
        return np.full(len(points), reach)
    a, b = a[near], b[near]
    along = b - a
    length = np.sum(along**2, axis=1)
    off = points[:, None, :] - a
    share = np.clip(np.sum(off * along, axis=2) / np.where(length == 0, 1.0, length), 0.0, 1.0)
    least: Points = np.hypot(*np.moveaxis(off - share[..., None] * along, 2, 0)).min(axis=1)
    return least


def uncrossed(
    feet: Outline, widths: Sequence[float], row: float, ends: tuple[float, float], gap: float = 0.8
) -> list[float]:
    """Place labels along a row so that no two straight leaders from them to their feet cross.

    They stand in the order of their feet, but where a leader would run across another's the two change places.
    """
    order = sorted(range(len(feet)), key=lambda i: feet[i])
    wanted = sorted(x for x, _ in feet)
    for _ in range(len(feet) ** 2 + 1):
        places = spread(wanted, [widths[i] for i in order], *ends)
        crossing = next(
            (
                at
                for at in range(len(order) - 1)
                if crosses(((places[at], row), feet[order[at]]), ((places[at + 1], row), feet[order[at + 1]]))
            ),
            None,
        )
        if crossing is None:
            break
        order[crossing], order[crossing + 1] = order[crossing + 1], order[crossing]
    found = [0.0] * len(feet)
    for i, place in zip(order, places, strict=True):
        found[i] = place
    return found


def crosses(one: Segment, other: Segment) -> bool:
    """Tell whether two segments cross, their ends not counted."""

    def side(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    (a, b), (c, d) = one, other
    return side(a, b, c) * side(a, b, d) < -1e-9 and side(c, d, a) * side(c, d, b) < -1e-9


def spread(wanted: Sequence[float], widths: Sequence[float], low: float, high: float, gap: float = 0.8) -> list[float]:
    """Move the middles of labels along a row as little as may be so that they do not overlap, between two ends.

    Least squares in their order: labels that would overlap move together about the middle of what they want. Where the
    row is too short for all of them they are packed from its beginning, and run past its end.
    """
    order = sorted(range(len(wanted)), key=lambda i: wanted[i])
    before, packed = 0.0, []
    for at, i in enumerate(order):
        before += widths[i] / 2 + (widths[order[at - 1]] / 2 + gap if at else 0.0)
        packed.append(before)
    groups: list[tuple[float, int]] = []
    for at, i in enumerate(order):
        groups.append((wanted[i] - packed[at], 1))
        while len(groups) > 1 and groups[-2][0] > groups[-1][0]:
            (a, m), (b, n) = groups[-2:]
            groups[-2:] = [((a * m + b * n) / (m + n), m + n)]
    moved = [start for start, count in groups for _ in range(count)]
    most = max(low, high - (packed[-1] + widths[order[-1]] / 2)) if order else low
    places = [0.0] * len(wanted)
    for at, i in enumerate(order):
        places[i] = packed[at] + min(max(moved[at], low), most)
    return places
