"""No keel block stands under a keel bolt.

Ground: a bolt under a block cannot be drawn, and the weight on its head starts it (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.block_places import placed_keel_blocks
from tenderwright.calculations.ship.timber import wood
from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Warn of each keel bolt with a block of the plan under it."""
    timber = context.found(wood)
    if timber is None or not timber.keel_bolts or context.package.docking_plan is None:
        return
    blocks = context.found(placed_keel_blocks) or ()
    for bolt in timber.keel_bolts:
        over = [one for one in blocks if abs(one.x - bolt.at.x) <= 0.5 * (one.row.length.si + bolt.diameter.si)]
        if over:
            message = f"keel bolt {bolt.bolt} stands over the keel block at {over[0].row.at}"
            hint = "move the block clear of the bolt"
            yield Notice("block-under-keel-bolt", bolt.here, message, hints=(hint,))
