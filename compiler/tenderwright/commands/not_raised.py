"""Tell which items changed and bear the revision that yards have."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from tenderwright.model.item import Item


def told_not_raised(items: Sequence[Item]) -> bool:
    """List the items whose revision is to be raised, if there are any, and say that nothing was written."""
    if not items:
        return False
    for item in items:
        now = f"write `revision: {item.revision + 1}`"
        print(
            f"{item.here.path}: item {item.number} is no longer what yards have under revision {item.revision}; {now}",
            file=sys.stderr,
        )
    what = "1 revision is" if len(items) == 1 else f"{len(items)} revisions are"
    print(f"{what} to be raised; nothing was written", file=sys.stderr)
    return True
