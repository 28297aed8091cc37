"""The stretch of the ship that an item names lies on the ship, and its side is that of its words.

Ground: geometry and the sense of words.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.coherence.ship.held import FRAME
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.notices import Notice

CODE = "off-the-hull"
_SIDE = re.compile(r"\b(port|starboard)\b")


def check(ship: Ship) -> Iterator[Notice]:
    """Report items whose place lies beyond the hull, runs backward or is to the other side."""
    for item in ship.package.items:
        where = item.where
        if item.withdrawn or where is None:
            continue
        extent = where.extent
        if extent is not None:
            what = f"item {item.number}: its place, {extent},"
            if extent.from_.x > extent.to.x:
                yield Notice(CODE, extent.here, f"{what} does not run forward", hints=(FRAME,))
            elif ship.shell is not None:
                over = 0.05 * ship.shell.length
                if not (ship.shell.within(extent.from_.x, over) and ship.shell.within(extent.to.x, over)):
                    yield Notice(CODE, extent.here, f"{what} reaches beyond the hull", hints=(FRAME,))
        words = f"{item.title} {where.text.text if where.text is not None else ''}"
        sides = set(_SIDE.findall(words.lower()))
        if len(sides) == 1 and where.side in ("port", "starboard") and where.side not in sides:
            message = f"item {item.number} is described to {sides.pop()}, and its side is {where.side}"
            yield Notice(CODE, item.here, message, hints=("mend the side or the words",))
