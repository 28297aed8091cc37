"""Blocks under a hull of wood have caps of soft wood.

Ground: a hard cap presses into keel and planking; softer caps spread the load (common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.calculations.ship.timber import of_wood
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.retold import retold

_SOFT = re.compile(r"\b(softwood|soft wood|pine|fir|spruce|larch|deal|cedar|rubber)\b", re.IGNORECASE)


def check(context: Context) -> Iterator[Notice]:
    """Warn of each row of keel blocks whose top layer is not soft."""
    plan = context.package.docking_plan
    if not of_wood(context.package.particulars) or plan is None:
        return
    for row in plan.keel_blocks:
        if not row.layers:
            context.lacks("it needs `layers` of each row of blocks in vessel/docking-plan.yaml")
        elif not _SOFT.search(row.layers[-1].material):
            message = f"the keel block at {row.at} has a cap of {row.layers[-1].material} under a keel of wood"
            hint = retold("put a cap of soft wood on it, 75 mm or more")
            yield Notice("hard-caps-on-wood", row.here, message, hints=(hint,))
