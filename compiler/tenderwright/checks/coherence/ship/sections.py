"""Her sections are fair: no half-breadth stands out of its section where the sections beside it do not show it too.

Ground: differences. Each section is held against the hull lofted without it; what is off along the whole section is
how far apart the sections stand, and only what stands out of the heights above and below is a slip (derived). The
limit is 15 % of the half-beam, twice that at the outermost sections, and never less than six readings.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from tenderwright.calculations.hydrostatics.lofting import Lofted, drawn_through
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.sections import READING, lofted
from tenderwright.checks.coherence.ship.held import LOOK, like, near
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.checks.coherence.ship.slip import slip_of
from tenderwright.notices import Notice

CODE = "offset-unfair"
SHARE = 0.15
READINGS = 6


def check(ship: Ship) -> Iterator[Notice]:
    """Report the half-breadth that stands farthest out of its section, where that is farther than readings go."""
    sections, found = ship.package.sections, ship.calculated.found(lofted)
    if sections is None or found is None or ship.shell is None:
        return
    reading = (sections.reading.si if sections.reading else READING) * sections.scale
    half = max(float(one.half_breadths.max()) for one in found.sections)
    ends = (0, len(found.sections) - 1)
    worst = (1.0, 0, 0, 0.0)
    for i in range(len(found.sections)):
        limit = max(SHARE * half * (2 if i in ends else 1), READINGS * reading)
        off = _standing_out(found, i, ship.shell.form.length)
        k = int(np.abs(off).argmax())
        worst = max(worst, (abs(float(off[k])) / limit, i, k, float(off[k])))
    size, i, k, out = worst
    if size <= 1.0:
        return
    one = sorted(sections.sections, key=lambda section: section.at.x)[i]
    stated = one.half_breadths[k]
    fair = max(stated.si - out, 0.0)
    message = (
        f"half-breadth {stated} of section {one.section or one.at} at {one.heights[k]} is not fair: the sections "
        f"beside it and the heights above and below give about {like(fair, stated)}"
    )
    low, high = near(fair, 0.0, max(0.35 * abs(out), 0.05 * half))
    yield Notice(CODE, stated.at, message, hints=slip_of(stated, low, high, exact=True) or (LOOK,))


def _standing_out(found: Lofted, i: int, length: float) -> Floats:
    """Give how far each half-breadth of a section as read stands out of those above and below, beside the hull lofted
    without that section [m]; nothing where that is no hull."""
    one, others = found.sections[i], [*found.sections[:i], *found.sections[i + 1 :]]
    read = one.half_breadths - found.residuals[i]
    try:
        form = drawn_through(length, others, found.stern, found.stem)
        heights = np.clip(one.heights, form.keel_at(one.x), form.deck_at(one.x) - 1e-9)
        off: Floats = read - form.half_breadth_at(one.x, heights)
    except OutOfRange:
        return np.zeros_like(read)
    beside = np.concatenate([off[1:2], (off[:-2] + off[2:]) / 2, off[-2:-1]])
    return np.asarray(off - beside, dtype=np.float64)
