"""Readings stand on strakes, frames and tanks that there are."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean

SIDES = ("port", "starboard", "both", "centreline", "")


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report each reading whose place does not exist; references of readings in the findings are told by linking."""
    package = context.package
    strakes, tanks = [one.strake for one in package.strakes], [one.tank for one in package.tanks]
    numbers = package.frames.numbers if package.frames else []
    first, last = min(numbers, default=None), max(numbers, default=None)
    for row in context.readings:
        inline = row.here.path == context.source.path
        if not inline and row.strake and row.strake not in strakes:
            hints = did_you_mean(row.strake, strakes)
            yield Notice("dead-reference", row.here, f"there is no strake `{row.strake}`", hints=hints)
        if not inline and row.tank and row.tank not in tanks:
            hints = did_you_mean(row.tank, tanks)
            yield Notice("dead-reference", row.here, f"there is no tank `{row.tank}`", hints=hints)
        if row.side not in SIDES:
            hints = did_you_mean(row.side, SIDES)
            yield Notice("wrong-choice", row.here, f"`{row.side}` is not a side of the ship", hints=hints)
        if row.frame is not None and first is not None and last is not None and not first <= row.frame <= last:
            hints = (f"her frames run from {first} to {last}",)
            yield Notice("bad-frame", row.here, f"frame {row.frame:g} does not exist on this ship", hints=hints)
