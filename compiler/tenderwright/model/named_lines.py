"""The lines that a name stands for: itself, all rows of a line, or all lines of an item."""

from __future__ import annotations

from collections.abc import Collection

from tenderwright.model.item import Item, Line
from tenderwright.model.package import Package


def live_lines(package: Package) -> dict[str, tuple[Item, Line]]:
    """Give every line of the items that are not withdrawn, by its number."""
    live = (item for item in package.items if not item.withdrawn)
    return {f"{item.number}.{line.line}": (item, line) for item in live for line in item.lines}


def named_lines(name: str, numbers: Collection[str]) -> list[str]:
    """Give the lines that a name such as `310.a` or `315.*` stands for; none where there are none."""
    if name in numbers:
        return [name]
    beginning = name.removesuffix("*") if name.endswith("*") else f"{name}."
    return [number for number in numbers if number.startswith(beginning)]
