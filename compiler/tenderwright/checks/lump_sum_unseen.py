"""No lump sum rests on a document that no bidder can see.

Ground: a bidder who cannot see what a lump sum rests on prices his doubt, or asks for more later (common practice, no
source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "lump-sum-unseen"


def check(context: Context) -> Iterator[Notice]:
    """Report each document of an item with a lump sum that neither goes along nor can be seen anywhere."""
    unseen = {one.drawing: one for one in context.package.drawings if not one.file and one.seen is None}
    for item in context.package.items:
        lumps = [line.line for line in item.lines if line.price == "lump"]
        if item.withdrawn or not lumps:
            continue
        for reference in item.references:
            if reference.name in unseen:
                lines = ", ".join(f"{item.number}.{line}" for line in lumps)
                message = f"the lump sum of {lines} rests on {reference.name.upper()}, which bidders cannot see"
                hint = "give the document its `file`, or say in `seen` where and when it can be seen, in drawings.yaml"
                yield Notice(CODE, reference.at, message, hints=(hint,))
