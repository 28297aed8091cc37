"""The words by which a line stands in the price form, and in what is told of it elsewhere."""

from __future__ import annotations

from collections.abc import Iterable

from tenderwright.model.build import Name
from tenderwright.model.item import Item, Line


def described(item: Item, line: Line) -> str:
    """Give the words of a line with the title of its item."""
    return in_full(item.title, words(line))


def in_full(title: str, text: str) -> str:
    """Give the words of a line with the title of its item, as they stand where the line stands without its item."""
    return f"{title}: {text}"


def words(line: Line) -> str:
    """Give the words of a line, what it is of or instead of, and where it is."""
    of = f", as a percentage of {words_of(line.of)}" if line.of else ""
    if line.adds_to:
        of += f", added to the rate of {words_of(line.adds_to)}"
    if line.instead_of:
        of += f", instead of {words_of(line.instead_of)}"
    where = f" ({line.where})" if line.where else ""
    return f"{line.text}{of}{where}"


def words_of(lines: Iterable[Name]) -> str:
    """Give in words the lines that are named."""
    names = (name.name for name in lines)
    return ", ".join(f"all lines of {name.removesuffix('.*')}" if name.endswith(".*") else name for name in names)
