"""Enough fastenings are drawn below the water on each side to judge those that stay.

Ground: fastenings are drawn at random at each docking from below water, between wind and water, at stem and stern
(TB 55-1900-201-45/1); at least eight a side of each zone is from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.timber import wood
from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "fastening-sample-small"
LEAST = 8
"""Fastenings drawn on each side of a zone (from memory)."""


def check(context: Context) -> Iterator[Notice]:
    """Warn of each zone below water of which too few are drawn, and of a survey that drew none there."""
    timber = context.found(wood)
    if timber is None:
        return
    below = [zone for zone in timber.fastenings if zone.below_water]
    if not below:
        hint = "list the zones of fastenings below water, and draw eight on each side of each"
        yield Notice(CODE, timber.here, "no fastening below water is listed or drawn", hints=(hint,))
    for zone in below:
        drawn = {side: sum(one.side in (side, "both") for one in zone.drawn) for side in ("port", "starboard")}
        if min(drawn.values()) < LEAST:
            told = " and ".join(f"{number} to {side}" for side, number in drawn.items())
            message = f"of zone `{zone.zone}` {told} are drawn, and {LEAST} on each side are wanted"
            yield Notice(CODE, zone.here, message, hints=("have more drawn, by an item that is done before the gate",))
