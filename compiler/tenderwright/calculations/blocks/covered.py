"""Strips of the bottom that blocks have covered at dockings running, and the area under blocks."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.blocks.footprint import NEAR, Footprint, footprints_from_input, rectangles, sizes
from tenderwright.calculations.distinct import distinct
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed


class Strip(Struct, frozen=True):
    """A rectangle of the bottom covered at dockings running; m, x forward of AP, y to port."""

    aft: float
    forward: float
    starboard: float
    port: float
    first: int
    """Number of the first docking of the run, from 0 in order of time."""
    last: int

    @property
    def dockings(self) -> int:
        """Give the number of dockings running."""
        return self.last - self.first + 1

    @property
    def area(self) -> float:
        """Give its area, m2."""
        return (self.forward - self.aft) * (self.port - self.starboard)


def covered_running(dockings: Sequence[Sequence[Footprint]], least: int = 2) -> list[Strip]:
    """Find what has been under blocks at `least` or more dockings running, and so was painted at none of them.

    Formula: the plan is cut at every edge of every footprint; in each cell the longest run of dockings that cover it
        (the latest of equal ones); cells alike are joined along and then across the ship.
    Symbols: footprints of each docking, in order of time, the planned one last. Gives strips from aft.
    Source: geometry (derived); IMO MEPC.207(62) counts dry-dock support strips as niche areas. Raises OutOfRange.
    """
    if least < 1:
        raise OutOfRange("a run has at least one docking")
    x, y, cover = _cells([sizes(one) for one in dockings])
    if not cover.size:
        return []
    first, last = _longest_runs(cover)
    wanted = last - first + 1 >= least
    rows = [strip for j in range(y.size - 1) for strip in _row(x, y, j, first[:, j], last[:, j], wanted[:, j])]
    return sorted(_joined_across(rows), key=lambda s: (s.aft, s.starboard))


def union_area(footprints: Sequence[Footprint]) -> float:
    """Give the area under the footprints, where they overlap counted once, m2. Source: geometry (derived)."""
    x, y, cover = _cells([sizes(footprints)])
    return float(np.diff(x) @ cover[0] @ np.diff(y)) if cover.size else 0.0


def _cells(groups: Sequence[Floats]) -> tuple[Floats, Floats, NDArray[np.bool_]]:
    """Cut the plan at every edge; tell which groups cover each cell, shape (groups, x, y)."""
    everything = np.concatenate([*groups, np.zeros((0, 4))])
    x, y = (_edges(everything[:, i], everything[:, i + 2]) for i in (0, 1))
    if x.size < 2 or y.size < 2:
        return x, y, np.zeros((len(groups), 0, 0), dtype=np.bool_)
    at = [0.5 * (edges[:-1] + edges[1:]) for edges in (x, y)]
    cover = np.zeros((len(groups), x.size - 1, y.size - 1), dtype=np.bool_)
    for g, group in enumerate(groups):
        along, across = (
            np.abs(middle[None, :] - group[:, i, None]) < group[:, i + 2, None] for i, middle in enumerate(at)
        )
        cover[g] = (along.astype(np.float64).T @ across.astype(np.float64)) > 0
    return x, y, cover


def _edges(middle: Floats, half: Floats) -> Floats:
    edges = distinct(np.append(middle - half, middle + half))
    if edges.size == 0:
        return edges
    kept: Floats = edges[np.append(True, np.diff(edges) > NEAR)]
    return kept


def _longest_runs(cover: NDArray[np.bool_]) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Find first and last docking of the longest run in each cell; last is before first where there is none."""
    shape = cover.shape[1:]
    run = np.zeros(shape, dtype=np.intp)
    first, last = np.zeros(shape, dtype=np.intp), np.full(shape, -1, dtype=np.intp)
    for g, covers in enumerate(cover):
        run = np.where(covers, run + 1, 0)
        better = (run > 0) & (run >= last - first + 1)
        first, last = np.where(better, g - run + 1, first), np.where(better, g, last)
    return first, last


def _row(
    x: Floats, y: Floats, j: int, first: NDArray[np.intp], last: NDArray[np.intp], wanted: NDArray[np.bool_]
) -> list[Strip]:
    found: list[Strip] = []
    for i in np.flatnonzero(wanted).tolist():
        one = Strip(float(x[i]), float(x[i + 1]), float(y[j]), float(y[j + 1]), int(first[i]), int(last[i]))
        if found and found[-1].forward == one.aft and (found[-1].first, found[-1].last) == (one.first, one.last):
            one = Strip(found.pop().aft, one.forward, one.starboard, one.port, one.first, one.last)
        found.append(one)
    return found


def _joined_across(rows: Sequence[Strip]) -> list[Strip]:
    open_strips: dict[tuple[float, float, int, int, float], Strip] = {}
    for one in rows:
        below = open_strips.pop((one.aft, one.forward, one.first, one.last, one.starboard), None)
        starboard = one.starboard if below is None else below.starboard
        joined = Strip(one.aft, one.forward, starboard, one.port, one.first, one.last)
        open_strips[(one.aft, one.forward, one.first, one.last, one.port)] = joined
    return list(open_strips.values())


def _kernel(dockings: Sequence[Sequence[Mapping[str, Any]]]) -> Mapping[str, Any]:
    groups = [footprints_from_input(one, "block") for one in dockings]
    found = covered_running(groups)
    return {
        "strips": [
            {
                "aft": s.aft,
                "forward": s.forward,
                "starboard": s.starboard,
                "port": s.port,
                "dockings": s.dockings,
                "now": s.last == len(groups) - 1,
            }
            for s in found
        ],
        "area_running": sum(s.area for s in found),
        "area_now": union_area(groups[-1]),
    }


METHOD = Method(
    name="blocks.covered",
    title="Strips of the bottom under blocks at two or more dockings running",
    formula="cells of the plan covered at docking n and n + 1; area under blocks counted once",
    source=Citation("Geometry; IMO MEPC.207(62), niche areas (dry-dock support strips)"),
    valid="footprints in plan along the ship; earlier positions only as good as their record",
    inputs={
        "dockings": listed(
            rectangles("Footprints of one docking."), "Each docking in order of time, the planned one last."
        )
    },
    outputs=(
        Symbol(
            "strips",
            "each strip under blocks at two or more dockings running",
            "table",
            "",
            (
                Symbol("aft", "after end, forward of AP", "length", "m"),
                Symbol("forward", "fore end, forward of AP", "length", "m"),
                Symbol("starboard", "starboard edge, to port", "length", "m"),
                Symbol("port", "port edge, to port", "length", "m"),
                Symbol("dockings", "dockings running", "each", "each"),
                Symbol("now", "whether the last in the list is one of them", "truth", ""),
            ),
        ),
        Symbol("area_running", "area covered at two or more dockings running", "area", "m2"),
        Symbol("area_now", "area under the blocks of the last docking in the list", "area", "m2"),
    ),
    kernel=_kernel,
    example={
        "dockings": [
            [{"x": "10 m", "y": "0 m", "length": "0.3 m", "width": "1 m"}],
            [{"x": "10.1 m", "y": "0 m", "length": "0.3 m", "width": "1 m"}],
        ]
    },
)
