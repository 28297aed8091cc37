"""The words by which a line stands in the price form, and in what is told of it elsewhere."""

from __future__ import annotations

from tenderwright.model.item import Item, Line


def described(item: Item, line: Line) -> str:
    """Give the words of a line with those of its item, what it is a percentage of, and where it is."""
    of = f", as a percentage of {of_words(line)}" if line.of else ""
    where = f" ({line.where})" if line.where else ""
    return f"{item.title}: {line.text}{of}{where}"


def of_words(line: Line) -> str:
    """Give in words the lines that a percentage is of."""
    names = (name.name for name in line.of)
    return ", ".join(f"all lines of {name.removesuffix('.*')}" if name.endswith(".*") else name for name in names)
