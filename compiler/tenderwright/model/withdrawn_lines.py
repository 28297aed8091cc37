"""Lines that are withdrawn: their numbers stay taken, and nothing is priced, linked or calculated by them."""

from __future__ import annotations

from msgspec.structs import replace

from tenderwright.model.package import Package


def with_withdrawn_lines_apart(package: Package) -> Package:
    """Take the withdrawn lines out of their items, and keep them by the number of the item."""
    apart = {item.number: tuple(line for line in item.lines if line.withdrawn) for item in package.items}
    apart = {number: lines for number, lines in apart.items() if lines}
    items = (
        replace(item, lines=tuple(line for line in item.lines if not line.withdrawn)) if item.number in apart else item
        for item in package.items
    )
    return replace(package, items=tuple(items), withdrawn_lines=apart) if apart else package


def line_numbers(package: Package) -> set[str]:
    """Give the number of every line that the tender has or had, withdrawn ones among them."""
    lines = {item.number: item.lines for item in package.items}
    return {
        f"{number}.{line.line}"
        for by_item in (lines, package.withdrawn_lines)
        for number, found in by_item.items()
        for line in found
    }
