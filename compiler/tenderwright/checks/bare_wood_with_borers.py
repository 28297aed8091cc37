"""Where borers are in the wood, no sheathing stays torn.

Ground: bare wood in water with shipworm or gribble is eaten behind the sheathing, where nobody sees it (common
practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.timber import wood
from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Warn of each bare place that no item makes good, of a ship with borers."""
    timber = context.found(wood)
    if timber is None or timber.sheathing is None or not timber.borers:
        return
    kinds = " and ".join(dict.fromkeys(one.kind for one in timber.borers if one.kind != "not known")) or "borers"
    for place in timber.sheathing.torn:
        if place.item is None:
            message = f"the sheathing is torn at {place.where}, and {kinds} was found in her"
            hint = "name the item that makes it good"
            yield Notice("bare-wood-with-borers", place.here, message, hints=(hint,))
