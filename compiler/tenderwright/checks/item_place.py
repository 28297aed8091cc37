"""Find the place of one value of a work item, so that a notice stands at the line in fault."""

from __future__ import annotations

from tenderwright.model.item import Item
from tenderwright.notices import Place


def place_in(item: Item, *path: str | int) -> Place:
    """Find the place of a value of an item by its keys, or of the nearest thing that holds it."""
    return item.scope.source.place(path)


def key_in(item: Item, *path: str | int) -> Place:
    """Find the place of a key of an item."""
    return item.scope.source.key_place(path)


def place_of_word(item: Item, key: str, word: str) -> Place:
    """Find the place of a fixed word in one of an item's lists, such as `hot work` under `does`."""
    words: tuple[str, ...] = getattr(item, key)
    return place_in(item, key, words.index(word)) if word in words else key_in(item, key)
