"""Her draft marks stand where their names say, on one datum.

Ground: geometry, and that marks on one level keel count from one height (derived).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.coherence.ship.held import FRAME, held, like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.particulars import Particulars
from tenderwright.notices import Notice

CODE = "dimensions-disagree"
_PLACES = (
    (re.compile(r"\b(aft|after|stern)\b"), -0.1, 0.3, "in the after part"),
    (re.compile(r"\b(forward|fore|bow)\b"), 0.7, 1.1, "in the fore part"),
    (re.compile(r"\b(amidships|midships|mid)\b"), 0.4, 0.65, "amidships"),
)


def check(ship: Ship) -> Iterator[Notice]:
    """Report marks that are elsewhere, or count from elsewhere."""
    if ship.package.particulars is not None:
        yield from _marks(ship, ship.package.particulars)


def _marks(ship: Ship, particulars: Particulars) -> Iterator[Notice]:
    length = particulars.dimensions.length_between_perpendiculars.si
    for mark in particulars.draft_marks:
        words = mark.name.lower()
        for pattern, low, high, where in _PLACES:
            if pattern.search(words) and not low * length <= mark.at.x <= high * length:
                message = f"the draft marks `{mark.name}` stand at {mark.at}, which is not {where}"
                yield Notice(CODE, mark.at.at, message, hints=(FRAME,))
    yield from _zeros(ship, particulars)


def _zeros(ship: Ship, particulars: Particulars) -> Iterator[Notice]:
    """Hold the zeros of the marks against the keel and each other."""
    zeros = [(mark.name, mark.datum) for mark in particulars.draft_marks if mark.datum is not None]
    if not zeros:
        return
    depth = particulars.keel.depth.si if particulars.keel.depth is not None else 0.0
    lines = float(ship.shell.form.keel_heights.min()) if ship.shell is not None else 0.0
    level = min((datum.si for _, datum in zeros), key=lambda zero: min(abs(zero), abs(zero + depth)))
    lowest = min(lines, 0.0) - depth
    against = f"marks count from the keel, between {like(lowest, zeros[0][1])} and its line"
    common = [one for one in zeros if abs(one[1].si - level) <= 0.05] or zeros
    yield from held(CODE, f"the zero of the draft marks `{common[0][0]}`", common[0][1], lowest - 0.06, 0.03, against)
    if lines < -0.02:
        return
    for name, datum in zeros:
        against = f"other marks count from {like(level, datum)}, as all do on a keel that is level"
        low, high = level - 0.05, level + 0.05
        yield from held(CODE, f"the zero of the draft marks `{name}`", datum, low, high, against, exact=True)
