"""Her length, breadth and depth are those of her lines, and her frames run the length of the ship.

Ground: geometry; what is left between two ways of measuring one length is derived, and wide.
"""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

import numpy as np

from tenderwright.checks.coherence.ship.held import held, like, near
from tenderwright.checks.coherence.ship.shell import Shell
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.particulars import Dimensions, Particulars
from tenderwright.notices import Notice, Place
from tenderwright.quantities.display import show

CODE = "dimensions-disagree"


def check(ship: Ship) -> Iterator[Notice]:
    """Report dimensions that contradict the table of offsets, and frames that do not fit her length."""
    particulars = ship.package.particulars
    if particulars is None:
        return
    if ship.shell is not None:
        yield from _lengths(particulars.dimensions, ship.shell)
        yield from _breadth_and_depth(particulars.dimensions, ship.shell)
    yield from _frames(ship, particulars)


def _lengths(stated: Dimensions, shell: Shell) -> Iterator[Notice]:
    between, overall, overhang = stated.length_between_perpendiculars, stated.length_overall, stated.aft_overhang
    end = _waterline_end(shell, stated.draft.si)
    low, high = near(end, 0.04)
    against = f"her lines end at {like(end, between)} on the waterline of her draft"
    wrong = list(held(CODE, "length between perpendiculars", between, low, high, against, exact=True))
    yield from wrong
    table = shell.forward - shell.aft
    if overhang is not None and shell.aft < 0:
        low, high = -shell.aft - 0.01 * shell.length, -shell.aft + max(-shell.aft, 0.03 * shell.length)
        against = f"the aftermost station stands {like(-shell.aft, overhang)} abaft the after perpendicular"
        yield from held(CODE, "overhang aft", overhang, low, high, against, exact=True)
    if wrong:
        return
    closed = shell.aft < -0.01 * shell.length and shell.forward > 1.005 * shell.length
    low, high = 0.985 * table, table * (1.04 if closed else 1.25)
    against = f"the stations of her lines reach over {like(table, overall)}"
    yield from held(CODE, "length overall", overall, low, high, against, exact=closed)


def _waterline_end(shell: Shell, draft: float) -> float:
    """Give where the profile of the stem cuts the waterline of her draft, or the last station where it does not."""
    x, keel = shell.form.stations, shell.form.keel_heights
    forward = x > 0.6 * (x[0] + x[-1])
    over = np.flatnonzero(forward & (keel >= draft - 1e-6))
    if over.size == 0:
        return float(x[-1])
    i = int(over[0])
    return float(np.interp(draft, keel[i - 1 : i + 1], x[i - 1 : i + 1]))


def _breadth_and_depth(stated: Dimensions, shell: Shell) -> Iterator[Notice]:
    widest = shell.beam
    against = f"the widest half-breadths of her lines are {like(widest, stated.beam)} apart"
    yield from held(CODE, "beam", stated.beam, *near(widest, 0.025), against, exact=True)
    against = f"the deck edge of her lines stands {like(shell.depth, stated.depth)} up amidships"
    yield from held(CODE, "depth", stated.depth, *near(shell.depth, 0.04), against, exact=True)


def _frames(ship: Ship, particulars: Particulars) -> Iterator[Notice]:
    frames, length = ship.package.frames, particulars.dimensions.length_between_perpendiculars
    if frames is None or not frames.numbers:
        return
    place = Place("vessel/frames.yaml")
    first, last = frames.distances[0], frames.distances[-1]
    over = max(particulars.dimensions.length_overall.si - length.si, 0.02 * length.si)
    start, end = -over, length.si + over
    if ship.shell is not None:  # lines that end at the perpendiculars leave the overhangs out
        start = ship.shell.aft if ship.shell.aft < -0.005 * length.si else start
        end = ship.shell.forward if ship.shell.forward > 1.005 * length.si else end
    for what, number, x, low, high in (
        ("aftermost", frames.numbers[0], first, start - 0.01 * length.si, 0.08 * length.si),
        ("foremost", frames.numbers[-1], last, 0.92 * length.si, end + 0.01 * length.si),
    ):
        if not low <= x <= high:
            message = (
                f"the {what} frame, {number}, stands {show(x, 'centre')} forward of the after "
                f"perpendicular, and the hull runs from {show(start, 'centre')} to {show(end, 'centre')}"
            )
            hint = "look for a spacing with a slip, another origin, or numbers that grow the other way"
            yield Notice(CODE, place, message, hints=(hint,))
    gaps = [b - a for a, b in zip(frames.distances, frames.distances[1:], strict=False)]
    usual = median(gaps)
    for number, gap in zip(frames.numbers, gaps, strict=False):
        if not usual / 2.5 <= gap <= 2.5 * usual:
            message = (
                f"the space next to frame {number} is {show(gap, 'thickness', more=-1)}, and most are "
                f"{show(usual, 'thickness', more=-1)}"
            )
            yield Notice(CODE, place, message, hints=("is the decimal point in the right place?",))
            return
