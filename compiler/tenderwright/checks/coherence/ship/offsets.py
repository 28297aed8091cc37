"""Her offsets are fair: no half-breadth stands out of its waterline, no station or waterline out of step.

Ground: differences. A figure is held against the curve through the two stations on either side of it; what the
waterlines beside it show too is the shape of the hull, and only what it shows alone is a slip (derived). The finer
the table, the less is left: 3 % of the half-beam, and more for stations far apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.median import median
from tenderwright.checks.coherence.ship.held import LOOK, held, like, near
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.checks.coherence.ship.slip import slip_of
from tenderwright.model.vessel import Offsets, Station
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

CODE = "offset-unfair"
Floats = NDArray[np.float64]
NEAR = 1e-6
_MOST = 5
"""Half-breadths that are told one by one."""


def check(ship: Ship) -> Iterator[Notice]:
    """Report half-breadths, deck edges, stations and waterlines that stand out of those around them."""
    offsets, shell = ship.package.offsets, ship.shell
    if offsets is None or shell is None or len(offsets.stations) < 5:
        return
    x, z = shell.form.stations, shell.form.waterlines
    y, keel, deck = shell.form.half_breadths, shell.form.keel_heights, shell.form.deck_heights
    half = shell.beam / 2
    live = (z[None, :] > keel[:, None] - NEAR) & (z[None, :] < deck[:, None] - NEAR)
    gross = [(i, j) for i, j in np.argwhere(live & (y > 1.03 * half)).tolist()]
    edge = shell.form.deck_half_breadths
    hollow = (z[None, :] > keel[:, None] + 0.04 * half) & live & (y <= 0) & (edge > 0.1 * half)[:, None]
    empty = [(i, j) for i, j in np.argwhere(hollow).tolist()]
    for i, j in gross:
        yield _told(offsets, i, j, f"her greatest half-breadth is {show(half, 'centre')}", 0.0, half)
    for i, j in empty:
        yield _told(offsets, i, j, f"the section begins at {offsets.stations[i].keel}", half, half)
    if not gross and not empty:
        yield from _unfair(offsets, x, y, live, half)
    yield from _deck_edge(offsets, x, deck, half)
    yield from _steps(offsets, deck)


def _told(offsets: Offsets, i: int, j: int, why: str, low: float, high: float) -> Notice:
    """Tell of a half-breadth, with what would lie in the range that is left to it."""
    station, stated = offsets.stations[i], offsets.stations[i].half_breadths[j]
    what = f"half-breadth {stated} of station {station.station or station.at} at waterline {offsets.waterlines[j]}"
    return Notice(
        CODE, stated.at, f"{what} is not fair: {why}", hints=slip_of(stated, low, high, exact=True) or (LOOK,)
    )


def _unfair(offsets: Offsets, x: Floats, y: Floats, live: NDArray[np.bool_], half: float) -> Iterator[Notice]:
    """Tell the few that stand farthest out, and not those beside them, which they pull with them."""
    off, strain = _off_the_curve(x, y, live)
    alone = _alone(off)
    known = np.abs(alone[np.isfinite(alone)])
    if known.size == 0:
        return
    coarse = float(median(np.diff(x)) / (x[-1] - x[0]))
    limit = max(0.03 + 2.5 * coarse**2, 5 * median(known) / half) * half
    size = np.nan_to_num(np.where(off * alone > 0, np.minimum(np.abs(off), np.abs(alone)), 0.0))
    size /= strain
    size[:, [0, -1]] /= 1.5
    for _ in range(_MOST):
        i, j = divmod(int(size.argmax()), size.shape[1])
        if size[i, j] <= limit:
            return
        fair = float(y[i, j] - off[i, j])
        shown = like(fair, offsets.stations[i].half_breadths[j])
        why = f"the stations beside it and the waterlines above and below give about {shown}"
        yield _told(offsets, i, j, why, *near(fair, 0.0, max(0.35 * abs(y[i, j] - fair), 0.02 * half)))
        size[max(i - 2, 0) : i + 3, max(j - 1, 0) : j + 2] = 0


def _off_the_curve(x: Floats, y: Floats, live: NDArray[np.bool_]) -> tuple[Floats, Floats]:
    """Give how far each half-breadth lies off the curve through its neighbours aft and forward, nan at the ends.

    With it goes by how much a slip of a neighbour would tell there, where that is more than the slip itself.
    """
    off, strain = np.full(y.shape, np.nan), np.ones(y.shape)
    patterns, which = np.unique(live, axis=1, return_inverse=True)
    for k in range(patterns.shape[1]):
        columns, rows = np.flatnonzero(which.ravel() == k), np.flatnonzero(patterns[:, k]).tolist()
        for a in range(1, len(rows) - 1):
            beside = rows[max(0, a - 2) : a] + rows[a + 1 : a + 3]
            if len(beside) >= 3:
                weights = _through(x, rows[a], beside)
                curve = sum(w * y[p, columns] for w, p in zip(weights, beside, strict=True))
                off[rows[a], columns] = y[rows[a], columns] - curve
                strain[rows[a], columns] = max(1.0, *map(abs, weights))
    return off, strain


def _through(x: Floats, at: int, beside: Sequence[int]) -> list[float]:
    """Give what each place beside counts for, on the curve through all of them (Lagrange)."""
    weights = []
    for p in beside:
        weight = 1.0
        for q in beside:
            if q != p:
                weight *= float((x[at] - x[q]) / (x[p] - x[q]))
        weights.append(weight)
    return weights


def _alone(off: Floats) -> Floats:
    """Give what a figure is off by more than both waterlines beside it, or the one there is; nothing between them."""
    pad = np.full((off.shape[0], 1), np.nan)
    below, above = off - np.hstack([pad, off[:, :-1]]), off - np.hstack([off[:, 1:], pad])
    least = np.where(np.abs(below) < np.abs(above), below, above)
    both = np.where(below * above > 0, least, 0.0)
    return np.where(np.isnan(below), above, np.where(np.isnan(above), below, both))


def _deck_edge(offsets: Offsets, x: Floats, deck: Floats, half: float) -> Iterator[Notice]:
    """Hold the deck edge of each station against those on either side: one that juts out alone is a slip."""
    edges = [s.deck.half_breadth for s in offsets.stations]
    yield from _jutting(offsets.stations, edges, x, 0.03 * half, "half-breadth of the deck edge")
    for end, beside in ((0, 1), (-1, -2)):
        station, most = offsets.stations[end], edges[beside].si + 0.15 * half
        what = f"half-breadth of the deck edge at station {station.station or station.at}"
        against = f"the deck is {edges[beside]} out at the station beside it, and narrows to its ends"
        yield from held(CODE, what, edges[end], 0.0, most, against, exact=True)
    heights = [s.deck.height for s in offsets.stations]
    depth = median(deck)
    yield from _jutting(offsets.stations, heights, x, 0.04 * depth, "height of the deck edge")


def _jutting(
    stations: Sequence[Station], values: Sequence[Quantity], x: Floats, limit: float, what: str
) -> Iterator[Notice]:
    out: dict[int, float] = {}
    for i in range(1, len(values) - 1):
        before, here, after = values[i - 1].si, values[i].si, values[i + 1].si
        if not _turns(values, i):
            out[i] = max(here - max(before, after), min(before, after) - here)
    told: set[int] = set()
    for i in sorted(out, key=lambda i: -out[i]):
        if out[i] <= limit or {i - 1, i + 1} & told:
            continue
        told.add(i)
        share = (x[i] - x[i - 1]) / (x[i + 1] - x[i - 1])
        fair = values[i - 1].si + share * (values[i + 1].si - values[i - 1].si)
        room = 0.4 * abs(values[i].si - fair)
        where = stations[i].station or stations[i].at
        message = (
            f"{what} at station {where} is {values[i]}, and the stations beside it give about {like(fair, values[i])}"
        )
        hints = slip_of(values[i], fair - room, fair + room, exact=True) or (LOOK,)
        yield Notice(CODE, values[i].at, message, hints=hints)


def _turns(values: Sequence[Quantity], i: int) -> bool:
    """Tell whether the curve turns there by itself: it falls, or rises, on both sides for two stations running."""
    if i < 2 or i > len(values) - 3:
        return True
    before, after = values[i - 1].si - values[i - 2].si, values[i + 2].si - values[i + 1].si
    step, down = values[i].si - values[i - 1].si, values[i + 1].si - values[i].si
    return before * step > 0 and after * down > 0 and abs(step) < 4 * abs(before) and abs(down) < 4 * abs(after)


def _steps(offsets: Offsets, deck: Floats) -> Iterator[Notice]:
    """Hold each station and waterline against the even spacing about it, and waterlines against the deck."""
    for values, what in ((offsets.waterlines, "waterline"), ([s.at for s in offsets.stations], "station at")):
        gaps = [b.si - a.si for a, b in pairwise(values)]
        for i in range(1, len(gaps)):
            pair = (gaps[i - 1] + gaps[i]) / 2
            outer = [gaps[k] for k in (i - 2, i + 1) if 0 <= k < len(gaps)]
            even = all(abs(gap - pair) < 0.02 * pair for gap in outer)
            if even and abs(gaps[i] - pair) > 0.08 * pair:
                meant = values[i - 1].si + pair
                message = (
                    f"{what} {values[i]} stands between {values[i - 1]} and {values[i + 1]}, and the others are evenly "
                    f"spaced: {like(meant, values[i], 4)}"
                )
                hints = slip_of(values[i], *near(meant, 0.0, 0.02 * pair), exact=True) or (LOOK,)
                yield Notice(CODE, values[i].at, message, hints=hints)
    top, highest = offsets.waterlines[-1], float(deck.max())
    if top.si > highest + NEAR:
        against = f"the highest deck edge stands {like(highest, top)} up, so that no section reaches it"
        yield from held(CODE, "the highest waterline", top, offsets.waterlines[-2].si, highest, against, exact=True)
