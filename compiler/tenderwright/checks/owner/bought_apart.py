"""What belongs together on one surface or opening is held together by `needs`, so that no rung leaves her worse.

Ground: a shell blasted and not coated, or an opening made and not closed, goes back afloat worse than it came (common
practice, no source). The ladder holds such items together whether or not `needs` says so; this tells the owner.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.belongs import missing


def check(context: OwnerContext) -> Iterator[Notice]:
    """Propose `needs` for items that touch the same surface or opening."""
    scope = context.papers.scope
    if scope is None:
        return
    for one in missing(context.package, scope):
        message = f"item {one.item} could be bought without item {one.other}, though {one.why}"
        hint = f'add "{one.other}" to `needs` of "{one.item}"; the ladder holds the two together in any case'
        yield Notice("bought-apart", scope.items[one.item].here, message, hints=(hint,))
