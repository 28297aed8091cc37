"""Outlines in metres of what is drawn: the hull from the side and from above, her appendages, and tanks."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import NEAR, HullForm
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.ship.shafts import placed_propellers
from tenderwright.calculations.tanks.polyhedron import Polyhedron
from tenderwright.documents.drawings.pen import Point
from tenderwright.model.package import Package
from tenderwright.model.particulars import Particulars, SideOutline
from tenderwright.model.vessel import Appendage


def profile(form: HullForm) -> list[Point]:
    """Outline the hull from the side: along the keel and stem forward, and back along the deck edge."""
    return [*keel_line(form), *reversed(deck_line(form))]


def keel_line(form: HullForm) -> list[Point]:
    """Give the lowest point of the hull at every station."""
    return list(zip(form.stations.tolist(), form.keel_heights.tolist(), strict=True))


def deck_line(form: HullForm) -> list[Point]:
    """Give the deck edge at every station, from the side."""
    return list(zip(form.stations.tolist(), form.deck_heights.tolist(), strict=True))


def deck_plan(form: HullForm) -> list[Point]:
    """Outline the deck edge from above, port side first."""
    port = list(zip(form.stations.tolist(), form.deck_half_breadths.tolist(), strict=True))
    return [*port, *((x, -y) for x, y in reversed(port))]


def waterline_plan(form: HullForm, height: float, steps: int = 240) -> list[Point]:
    """Outline the hull at a height from above, port side first; empty where the hull does not reach it."""
    cuts = np.unique(np.append(np.linspace(form.stations[0], form.stations[-1], steps + 1), form.stations))
    port: list[Point] = []
    for x in cuts.tolist():
        if form.keel_at(x) <= height <= form.deck_at(x):
            port.append((x, float(form.half_breadth_at(x, np.array([height]))[0])))
    return [*port, *((x, -y) for x, y in reversed(port))]


def bar_keel(particulars: Particulars) -> list[Point]:
    """Outline a bar keel below the keel line along its straight part; empty for another kind of keel."""
    keel = particulars.keel
    if keel.kind != "bar" or keel.depth is None:
        return []
    aft, forward, depth = keel.straight.from_.x, keel.straight.to.x, keel.depth.si
    return [(aft, 0.0), (forward, 0.0), (forward, -depth), (aft, -depth)]


def keel_underside(particulars: Particulars | None) -> float:
    """Give the height of the underside of the keel, m above the keel line."""
    keel = particulars.keel if particulars else None
    return -keel.depth.si if keel and keel.kind == "bar" and keel.depth else 0.0


def centreline_appendages(package: Package, form: HullForm) -> list[tuple[Appendage, list[Point]]]:
    """Outline what stands on the centreline and has a lowest point: between its ends, from there up to the hull."""
    drawn = []
    for one in package.appendages:
        if one.side == "centreline" and one.lowest is not None:
            aft, forward = sorted((one.extent.from_.x, one.extent.to.x))
            cuts = [aft, *(x for x in form.stations.tolist() if aft < x < forward), forward]
            top = [(x, form.keel_at(x)) for x in cuts if form.keel_at(x) >= one.lowest.si]
            drawn.append((one, [(aft, one.lowest.si), (forward, one.lowest.si), *reversed(top)]))
    return [(one, outline) for one, outline in drawn if len(outline) > 2]


def propellers(package: Package) -> list[list[Point]]:
    """Outline each propeller from the side; those of equal place are drawn once."""
    outlines = []
    for one in placed_propellers(package.particulars, package.openings):
        x, z, tip = one.x, one.z, one.propeller.diameter.si / 2
        outlines.append([(x, z - tip), (x + 0.08 * tip, z), (x, z + tip), (x - 0.08 * tip, z)])
    return [outline for i, outline in enumerate(outlines) if outline not in outlines[:i]]


def over_deck(package: Package) -> tuple[SideOutline, ...]:
    """Give what is seen over the hull from the side."""
    return package.particulars.outlines if package.particulars else ()


def superstructure(package: Package, height: float) -> list[tuple[Point, Point]]:
    """Give the lines of what is seen over the hull from the side, cut off at a height, m."""
    lines = []
    for one in over_deck(package):
        for first, last in pairwise(one.points):
            low, high = sorted(((first.at.x, first.height.si), (last.at.x, last.height.si)), key=lambda end: end[1])
            if low[1] >= height:
                continue
            share = 1.0 if high[1] <= height else (height - low[1]) / (high[1] - low[1])
            lines.append((low, (low[0] + share * (high[0] - low[0]), low[1] + share * (high[1] - low[1]))))
    return lines


def highest(package: Package) -> float:
    """Give how high the lines of what is seen over the hull reach, m; 0 where none are given."""
    return max((point.height.si for one in over_deck(package) for point in one.points), default=0.0)


def bilge_keels(package: Package) -> list[tuple[Point, Point]]:
    """Give the run of bilge keels and other long appendages at the sides, at their lowest height, each once."""
    runs = [
        ((one.extent.from_.x, one.lowest.si), (one.extent.to.x, one.lowest.si))
        for one in package.appendages
        if one.side != "centreline" and one.lowest is not None
    ]
    return list(dict.fromkeys(runs))


def from_side(body: Polyhedron) -> list[Point]:
    """Outline a tank from the side: lowest and highest point of each of its sections."""
    return _silhouette(body.vertices[:, 0], body.vertices[:, 2])


def from_above(body: Polyhedron, inboard: float = 0.0) -> list[list[Point]]:
    """Outline a tank from above: one outline, or two for wings that begin a distance inboard of the shell, m."""
    x, y = body.vertices[:, 0], body.vertices[:, 1]
    if inboard > NEAR and y.min() < -NEAR and y.max() > NEAR:
        return [_silhouette(x[side * y > NEAR], y[side * y > NEAR]) for side in (1, -1)]
    return [_silhouette(x, y)]


def _silhouette(x: Floats, v: Floats) -> list[Point]:
    cuts = np.unique(np.round(x, 6))
    low = [(float(c), float(v[np.abs(x - c) < 1e-5].min())) for c in cuts]
    high = [(float(c), float(v[np.abs(x - c) < 1e-5].max())) for c in cuts]
    return [*low, *reversed(high)]
