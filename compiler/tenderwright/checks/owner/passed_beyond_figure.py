"""What is recorded as passed is within the figure of the item.

Ground: the item says what passes, and the figure was read (derived). A figure is held against the words of the item
where they state one that measures the same; where they state none, or several, who signs judges it.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.inspection.results import misses


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each result that passed though the figure read at it is not what the item asks."""
    for result in context.inspected.points:
        for one in result.told:
            if one.result.startswith("passed") and (asked := misses(result.point, one)):
                message = f"{one.value} was read at item {result.point.name}, which passes at {asked}"
                hint = "have it put right and inspected again, and write `result: failed` with the day set for that"
                yield Notice("passed-beyond-figure", one.here, message, hints=(hint,))
