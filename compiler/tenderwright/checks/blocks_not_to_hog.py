"""The keel blocks of a hogged ship are built to her measured line.

Ground: on a straight row of blocks a hogged hull of wood is bent as she lands, and opens; she is not straightened in
one docking without a structural plan (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.timber import hog_measured, wood
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

FLAT = 0.005
"""Off the straight line by no more than this, m, a keel is taken as straight (common practice, no source)."""


def check(context: Context) -> Iterator[Notice]:
    """Warn where she is hogged or sags, and the blocks are straight or nothing says how they are built."""
    timber = context.found(wood)
    if timber is None or timber.hog is None or timber.hog.blocks == "measured line":
        return
    found = context.found(hog_measured)
    if found is None or abs(found["greatest"]) <= FLAT:
        return
    bent = "hogged" if found["greatest"] > 0 else "sagged"
    said = "the blocks are built straight" if timber.hog.blocks else "nothing says to which line the blocks are built"
    message = f"her keel is {bent} by {show(abs(found['greatest']), 'thickness', more=-1)}, and {said}"
    hint = "have them built to the measured heights, and write `blocks: measured line`"
    yield Notice("blocks-not-to-hog", timber.hog.here, message, hints=(hint,))
